import { expect, test } from 'vitest';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();

const listWishes = () => site.database.admin`
  select p.name as "enteredBy", w.grams::int as grams
  from book.container_wish w
  join book.person p on p.storehouse_id = w.storehouse_id and p.person_id = w.entered_by
  join book.household h on h.storehouse_id = w.storehouse_id and h.household_id = w.household_id
  where h.name = 'Hollis' order by w.container_wish_id`;

test('a helper acts for a household under a band, enters for it by name, and stops with one tap', async () => {
  const owner = await site.visit('member');
  await owner.goto(`${site.root}/household/private`);
  await settle(owner);
  await owner.locator('summary', { hasText: 'Let them help' }).click();
  await owner.getByLabel('Who', { exact: true }).selectOption({ label: 'Cora Corran' });
  await owner.getByRole('button', { name: 'Let them help' }).click();
  await owner.getByText(/^Cora Corran, until/).waitFor();

  const helper = await site.visit('coordinator');
  await helper.goto(`${site.root}/household`);
  await settle(helper);
  await helper.getByRole('button', { name: 'Act for Hollis' }).click();
  await helper.getByText('You act for Hollis (entered by Cora Corran).').waitFor();
  await settle(helper);
  expect(await listViolations(helper)).toEqual([]);
  expect(await helper.getByRole('link', { name: 'Run the buys' }).count()).toBe(0);

  await helper.getByRole('link', { name: 'Buys' }).click();
  await helper
    .locator('.list a')
    .filter({ hasText: /gathering|fixed|ordered|landed|shared out/ })
    .first()
    .click();
  await helper.waitForURL(/\/buys\/[0-9a-f-]{36}$/);
  await settle(helper);
  await helper.locator('.list a').first().click();
  await helper.getByRole('link', { name: 'What I want mine packed in' }).click();
  await settle(helper);
  while ((await helper.getByRole('button', { name: /^Drop line/ }).count()) > 0)
    await helper
      .getByRole('button', { name: /^Drop line/ })
      .first()
      .click();
  await helper.getByRole('button', { name: 'One more kind' }).click();
  await helper.getByRole('button', { name: 'One more kind' }).click();
  await helper.getByLabel('How much of it, line 1').fill('some');
  await helper.getByRole('button', { name: 'Keep these wishes' }).click();
  await helper.getByText('Write a weight, such as 120 lb or 50 kg.').waitFor();
  await helper.getByLabel('How much of it, line 1').fill('12 kg');
  await helper.getByRole('button', { name: 'Keep these wishes' }).click();
  await helper.getByRole('heading', { name: 'What that comes to' }).waitFor();
  expect(await listViolations(helper)).toEqual([]);
  await helper.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(helper)).toBe(0);
  const wishes = await listWishes();
  expect(wishes.slice(-2)).toEqual([
    { enteredBy: 'Cora Corran', grams: 12_000 },
    { enteredBy: 'Cora Corran', grams: null },
  ]);

  await helper.getByRole('button', { name: 'Stop acting' }).click();
  await helper.getByText('You act for Hollis').waitFor({ state: 'detached' });
  await settle(helper);
  expect(await helper.locator('header').first().textContent()).toContain('Corran');
}, 180_000);

test('a helper whose right was ended is told so, and gets back to their own household', async () => {
  const helper = await site.visit('coordinator');
  await helper.goto(`${site.root}/household`);
  await settle(helper);
  await helper.getByRole('button', { name: 'Act for Hollis' }).click();
  await helper.getByText('You act for Hollis').waitFor();
  const owner = await site.visit('member');
  await owner.goto(`${site.root}/household/private`);
  await settle(owner);
  await owner.getByRole('button', { name: 'End it' }).first().click();
  await owner.getByText(/^Cora Corran, ended/).waitFor();
  await helper.reload();
  await helper.getByRole('heading', { name: 'Your right to act for this household has ended.' }).waitFor();
  expect(await listViolations(helper)).toEqual([]);
  await helper.getByRole('button', { name: 'Stop acting' }).click();
  await helper.getByText('You act for Hollis').waitFor({ state: 'detached' });
  await helper.goto(`${site.root}/household`);
  await settle(helper);
  expect(await helper.getByRole('button', { name: 'Act for Hollis' }).count()).toBe(0);
}, 180_000);

test('a food that one eater leaves out is said in words, and how far each food alone goes stands beside the groups', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/household`);
  await settle(page);
  await page
    .getByRole('button', { name: /^Change/ })
    .first()
    .click();
  await page.getByLabel('Find a food').fill('pasta');
  await page.getByRole('button', { name: 'Add dry pasta' }).click();
  await page.getByRole('button', { name: 'Remove Dry pasta' }).waitFor();
  expect(await listViolations(page)).toEqual([]);
  await page
    .getByRole('form', { name: /^Change/ })
    .getByRole('button', { name: 'Save' })
    .click();
  await page.getByRole('button', { name: 'Remove Dry pasta' }).waitFor({ state: 'detached' });
  await page.getByText(/no dry pasta/).waitFor();
  await page.goto(`${site.root}/coverage`);
  await settle(page);
  const table = page.getByRole('region', { name: 'Food by food' });
  expect(await table.getByRole('row').count()).toBeGreaterThan(1);
  expect(await listViolations(page)).toEqual([]);
}, 180_000);
