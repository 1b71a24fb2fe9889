import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { changeRules } from '../support/fixed-buy.ts';
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
let treasurer: Page;

const DAY = 86_400_000;

beforeAll(async () => {
  site = await openSite();
  storehouse = await aStorehouse(site.app);
  await changeRules(storehouse, { uncollectedDays: 7 });
  buy = await aSharedBuy(site.app, storehouse, grainNow());
  coordinator = (await site.visit()).page;
  await signInAs(coordinator, 'coordinator@example.org');
  treasurer = (await site.visit({ width: 1280 })).page;
  await signInAs(treasurer, 'birchall@example.org');
});
afterAll(() => site.close());

const at = (path: string) => `/s/${storehouse.storehouseId}/buys/${buy.buyId}/${path}`;
const waitingOf = async (name: keyof TestSharedBuy['households']) => {
  const { waiting } = bodyOf(await storehouse.coordinator.get(`${buy.path}/pick-ups`));
  const { householdId } = buy.households[name];
  return waiting.filter((piece: { householdId: string }) => piece.householdId === householdId);
};

test('a household that stands at the door signs; without a name nothing leaves', async () => {
  await coordinator.goto(at('handing-over'));
  await coordinator.getByRole('heading', { name: '4 of 4 households have still to fetch' }).waitFor();
  await coordinator.getByLabel('Find a household').fill('corr');
  await coordinator.locator('summary', { hasText: 'Corran' }).click();
  await coordinator.getByRole('button', { name: /^Sign/ }).click();
  await coordinator.getByText('Whoever takes it signs with a name.').waitFor();
  expect((await waitingOf('Corran')).length).toBeGreaterThan(0);
  expect(await listViolations(coordinator)).toEqual([]);
  expect(await smallTargets(coordinator)).toEqual([]);
  await coordinator.getByLabel('Who of Corran takes it').fill('Cy Corran');
  await coordinator.getByRole('button', { name: /^Sign/ }).click();
  await coordinator.getByText('Cy Corran signed').waitFor();
  expect(await waitingOf('Corran')).toEqual([]);
  const { pickUps } = bodyOf(await storehouse.coordinator.get(`${buy.path}/pick-ups`));
  expect(pickUps).toMatchObject([{ signedBy: 'Cy Corran' }]); // one appointment, however often it was tapped
}, 180_000);

test('what keeps a buy from closing is listed; the coordinator sees it, and leaves the closing to the treasurer', async () => {
  await coordinator.goto(at('closing'));
  await coordinator.getByRole('heading', { name: '1 thing keeps the buy from closing' }).waitFor();
  expect(await coordinator.locator('.lacking li').allTextContents()).toEqual([
    'A claim is neither granted nor refused yet. (2) ',
  ]);
  const table = coordinator.locator('table');
  for (const charge of ['165.48', '150.53', '127.92', '54.57', '498.50'])
    expect(await table.textContent()).toContain(charge);
  expect(await listViolations(coordinator)).toEqual([]);
  await coordinator.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(coordinator)).toBe(0);
}, 180_000);

test('a claim granted in part puts the charges behind; charging anew sets them right', async () => {
  const { torn } = buy.claims ?? { torn: '' };
  bodyOf(await buy.treasurer.post(`${storehouse.path}/claims/${torn}/credit`, { minorUnits: 160 }), 201);
  bodyOf(
    await buy.treasurer.post(`${storehouse.path}/claims/${buy.claims?.short}/credit`, { minorUnits: 2140 }),
    201,
  );
  await treasurer.goto(at('closing'));
  await treasurer.getByRole('button', { name: 'Charge anew' }).click();
  await treasurer.getByRole('heading', { name: 'the buy stands at 0.00 and can be closed' }).waitFor();
  const charges = bodyOf(await storehouse.coordinator.get(`${buy.path}/charges`));
  expect(charges.chargedMinorUnits).toBe(50_050); // 498.50 and the 2.00 that were not granted
  expect(await treasurer.locator('tr.sum').textContent()).toContain('500.50');
}, 180_000);

test('the treasurer closes at 0.00, and it stays there', async () => {
  await treasurer.getByRole('button', { name: 'Close the buy' }).click();
  await treasurer.getByRole('heading', { name: 'Closed at 0.00' }).waitFor();
  expect(bodyOf(await storehouse.coordinator.get(buy.path)).stage).toBe('closed');
  expect(await listViolations(treasurer)).toEqual([]);
  expect(await smallTargets(treasurer)).toEqual([]);
}, 180_000);

test('after the group’s days the coordinator takes what nobody fetched to common stock', async () => {
  site.app.clock.now = new Date(site.app.clock.now.getTime() + 9 * DAY);
  await coordinator.clock.setFixedTime(site.app.clock.now);
  await coordinator.setViewportSize({ width: 390, height: 844 });
  await coordinator.goto(at('handing-over'));
  await coordinator.locator('summary', { hasText: 'Dell' }).click();
  await coordinator.getByRole('button', { name: 'Take it to common stock' }).first().click();
  await coordinator.getByRole('heading', { name: '2 of ' }).waitFor();
  expect(await waitingOf('Dell')).toEqual([]);
}, 180_000);

test('a member is told whose page the closing is', async () => {
  const { page } = await site.visit();
  await signInAs(page, 'dell@example.org');
  await page.goto(at('closing'));
  await page.getByText('Your own part stands in your statement').waitFor();
}, 180_000);
