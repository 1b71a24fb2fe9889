import type { Page } from 'playwright-core';
import decodeQR from 'qr/decode.js';
import { expect, test } from 'vitest';
import { DEMO_PASSWORD } from '../../db/src/demo/people.ts';
import { listViolations } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();

/** What a camera reads off the picture: its modules, drawn four pixels wide. */
async function readQr(page: Page): Promise<string> {
  const picture = page.getByRole('img', { name: 'A picture of it for the camera of a telephone' });
  const modules = Number((await picture.getAttribute('viewBox'))?.split(' ').at(-1));
  const drawn = (await picture.locator('path').getAttribute('d')) ?? '';
  const width = modules * 4;
  const data = new Uint8ClampedArray(width * width * 4).fill(255);
  for (const [, x, y] of drawn.matchAll(/M(\d+) (\d+)h1/g)) {
    for (let dot = 0; dot < 16; dot += 1) {
      const at = (Number(y) * 4 + Math.floor(dot / 4)) * width + Number(x) * 4 + (dot % 4);
      data.fill(0, at * 4, at * 4 + 3);
    }
  }
  return decodeQR({ width, height: width, data });
}

test('a coordinator makes a link that lets one person in, and withdraws it, without a mouse', async () => {
  const page = await site.visit('coordinator');
  await page.goto(`${site.root}/people`);
  await settle(page);
  await page.getByRole('link', { name: 'Invite somebody' }).focus();
  await page.keyboard.press('Enter');
  await page.getByLabel('Good for days').fill('100');
  await page.keyboard.press('Enter');
  await page.getByText('Write a whole number of days, from 1 to 90.').waitFor();
  await page.getByLabel('Its name, if you know it').fill('Oakley');
  await page.getByLabel('Good for days').fill('7');
  await page.keyboard.press('Enter');
  const whole = await page.getByLabel('The link').inputValue();
  expect(await readQr(page)).toBe(whole);
  const link = new URL(whole).pathname;
  const stranger = await site.visit(null);
  await stranger.goto(link);
  await stranger.getByText('Alder Row Storehouse invites you').waitFor();
  expect(await stranger.getByLabel('What is your household called?').inputValue()).toBe('Oakley');
  await page.getByRole('button', { name: 'Withdraw' }).first().click();
  await page.getByText(/^withdrawn, made by Cora/).waitFor();
  await stranger.reload();
  await stranger.getByText('This invitation has been used, withdrawn, or has run out.').waitFor();
}, 180_000);

test('duties that must be apart are refused in words, and given ones keep their dates', async () => {
  const page = await site.visit('coordinator');
  await page.goto(`${site.root}/people`);
  await settle(page);
  await page.getByLabel('Find by household').fill('treasurer');
  expect(await page.locator('.list li').count()).toBe(1);
  await page.locator('.list a').click();
  await page
    .getByText(/^Give .* a duty$/)
    .first()
    .click();
  await page.getByLabel('Duty').first().selectOption({ label: 'reviewer' });
  await page.getByRole('button', { name: 'Give it' }).first().click();
  await page.getByText('The reviewer may not be the treasurer').waitFor();
  await page.getByLabel('Duty').first().selectOption({ label: 'equipment keeper' });
  await page.getByRole('button', { name: 'Give it' }).first().click();
  await page.getByRole('button', { name: 'End: equipment keeper' }).click();
  await page.getByRole('button', { name: 'End: equipment keeper' }).waitFor({ state: 'detached' });
  await page.goto(`${site.root}/people/duties`);
  await page
    .getByRole('row', { name: /equipment keeper/ })
    .first()
    .waitFor();
}, 180_000);

test('a telephone is looked up for a purpose, and its household sees who looked and why', async () => {
  const owner = await site.visit('member');
  await owner.goto(`${site.root}/household/private`);
  await settle(owner);
  await owner.getByLabel('Telephone', { exact: true }).fill('555 0199');
  await owner.getByLabel('Members of the storehouse may see it').uncheck();
  await owner.getByRole('button', { name: 'Save' }).click();
  await owner.getByText('Saved.').waitFor();
  expect(await listViolations(owner)).toEqual([]);
  const page = await site.visit('coordinator');
  await page.goto(`${site.root}/people`);
  await settle(page);
  await page.getByLabel('Find by household').fill('Hollis');
  await page.locator('.list a').click();
  await page.getByRole('button', { name: 'Look it up' }).click();
  await page.getByText('Say what for, in three letters or more.').waitFor();
  await page.getByLabel('What do you need it for?').fill('the lorry is early');
  await page.keyboard.press('Enter');
  await page.getByText('555 0199').waitFor();
  await owner.reload();
  await owner.getByText(/contact, for the lorry is early/).waitFor();
}, 180_000);

test('a household is told what keeps it from leaving, and takes its data along', async () => {
  const page = await site.visit('member');
  await page.goto(`${site.root}/household/private`);
  await settle(page);
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: 'Download it' }).click(),
  ]);
  expect(file.suggestedFilename()).toBe('sheafbook-household.json');
  await page.getByText('Leaving the storehouse').click();
  await page.getByText('Before your household can leave:').waitFor();
  expect(await page.locator('details[open] li').count()).toBeGreaterThan(0);
}, 180_000);

test('a password is changed with the one in force, and other sessions end', async () => {
  const page = await site.visit('reviewer');
  const other = await site.visit('reviewer');
  await page.goto(`${site.root}/household`);
  await settle(page);
  await page.getByRole('link', { name: 'Change the password' }).click();
  await page.getByLabel('The password in force').fill('not this one');
  await page.getByLabel('The new one').fill('a new and longer one');
  await page.keyboard.press('Enter');
  await page.getByText('This is not the password in force.').waitFor();
  await page.getByLabel('The password in force').fill(DEMO_PASSWORD);
  await page.keyboard.press('Enter');
  await page.getByText('It is changed.').waitFor();
  await other.goto(site.root);
  await other.waitForURL(/\/sign-in/);
}, 180_000);
