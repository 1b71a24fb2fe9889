import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { printed } from '../support/pdf.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { grainNow } from './support/grain-now.ts';
import { signInAs } from './support/sign-in.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let coordinator: Page;
beforeAll(async () => {
  site = await openSite();
  storehouse = await aStorehouse(site.app);
  buy = await aSharedBuy(site.app, storehouse, grainNow());
  coordinator = (await site.visit({ width: 320 })).page;
  await signInAs(coordinator, 'coordinator@example.org');
}, 180_000);
afterAll(() => site.close());

const at = (path: string) => `/s/${storehouse.storehouseId}/${path}`;
const minutesAgo = (minutes: number) =>
  new Date(site.app.clock.now.getTime() - minutes * 60_000).toLocaleString('sv-SE', {
    timeZone: 'America/Chicago',
  });

test('the split page and the list of who owes have their papers', async () => {
  await coordinator.goto(at(`buys/${buy.buyId}/split/${buy.wheat}`));
  await coordinator.getByText('Paper', { exact: true }).click();
  const sheet = await coordinator.getByRole('link', { name: 'Split sheet' }).getAttribute('href');
  expect((await printed(storehouse.coordinator, sheet ?? '')).text).toContain('Hard red winter wheat');
  expect(await listViolations(coordinator)).toEqual([]);
  expect(await overflowOf(coordinator)).toBe(0);
  const { page } = await site.visit();
  await signInAs(page, 'birchall@example.org');
  for (const place of ['books/ageing', 'books/owing']) {
    await page.goto(at(place));
    await page.getByText('Paper', { exact: true }).click();
    const list = await page.getByRole('link', { name: 'Who owes' }).last().getAttribute('href');
    expect((await printed(buy.treasurer, list ?? '')).text).toContain('Ashdown');
  }
}, 180_000);

test('a split sheet that was signed at the door is keyed in, and the hour of the pen stands at the pick-up', async () => {
  const paper = await printed(
    storehouse.coordinator,
    `${storehouse.path}/splits/${buy.splitIds.wheat}/paper`,
  );
  const code = paper.pages[0]?.qr.split('/').at(-1) ?? '';
  site.app.clock.now = new Date(site.app.clock.now.getTime() + 10 * 60_000);
  await coordinator.goto(at(`papers/${code}`));
  const key = coordinator.getByRole('button', { name: 'Key in what the pen wrote' });
  await coordinator.getByLabel('For household').selectOption({ label: 'Dell' });
  expect(await key.isDisabled()).toBe(true);
  const [day = '', time = ''] = minutesAgo(-60).split(' ');
  await coordinator.getByLabel('Name of whoever signed').fill('Dora Dell');
  await coordinator.getByLabel('Day on the paper').fill(day);
  await coordinator.getByLabel('Hour on the paper').fill(time.slice(0, 5));
  await coordinator.getByText(/all that waited, .* left with Dell/).waitFor();
  await key.click();
  await coordinator.getByText('This is still to come').first().waitFor(); // refused, and nothing has left
  const before = bodyOf(await storehouse.coordinator.get(`${buy.path}/pick-ups`));
  expect(
    before.pickUps.every(({ collectedAt }: { collectedAt: string | null }) => collectedAt === null),
  ).toBe(true);
  const [, earlier = ''] = minutesAgo(4).split(' ');
  await coordinator.getByLabel('Hour on the paper').fill(earlier.slice(0, 5));
  await coordinator.getByLabel('Day on the paper').fill(minutesAgo(4).slice(0, 10));
  expect(await listViolations(coordinator)).toEqual([]);
  expect(await smallTargets(coordinator)).toEqual([]);
  expect(await overflowOf(coordinator)).toBe(0);
  await key.click();
  await coordinator.getByText('The pick-up of Dell is keyed in.').waitFor();
  const { pickUps, waiting } = bodyOf(await storehouse.coordinator.get(`${buy.path}/pick-ups`));
  const { householdId, caller } = buy.households.Dell;
  expect(pickUps).toMatchObject([{ householdId, signedBy: 'Dora Dell' }]); // one, though the first try was refused
  expect(waiting.some((piece: { householdId: string }) => piece.householdId === householdId)).toBe(false);
  const { keyings } = bodyOf(await caller.get(`${buy.path}/keyings`));
  expect(keyings).toMatchObject([
    { what: 'pick-up', subjectId: pickUps[0].id, paperCode: code, isEnteredFor: true },
  ]);
  await coordinator.goto(at(`buys/${buy.buyId}/handing-over`));
  await coordinator.locator('summary', { hasText: 'Dell' }).click();
  await coordinator.getByText(/Pick-up: by pen on .*, keyed in on .* by Ada Ashdown/).waitFor();
  const { page } = await site.visit();
  await signInAs(page, 'dell@example.org');
  await page.goto(at(`buys/${buy.buyId}`));
  await page.getByText(/Pick-up: by pen on .* by Ada Ashdown, entered for the household/).waitFor();
}, 180_000);
