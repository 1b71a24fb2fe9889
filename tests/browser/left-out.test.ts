import { afterAll, beforeAll, expect, test } from 'vitest';
import { aBuy, bodyOf, type TestBuy } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { signInAs } from './support/sign-in.ts';
import { openSite, type Site } from './support/site.ts';

const DAY = 86_400_000;
const WHEAT = 'wheat-hard-red-winter';
const BEANS = 'beans-black';

let site: Site;
let storehouse: TestStorehouse;
let eskdale: TestHousehold;
let buy: TestBuy;
beforeAll(async () => {
  site = await openSite();
  storehouse = await aStorehouse(site.app);
  eskdale = await aHousehold(site.app, storehouse, 'Eskdale');
  await aHousehold(site.app, storehouse, 'Fenwick');
  const now = Date.now();
  buy = await aBuy(site.app, storehouse, {
    foods: [WHEAT, BEANS],
    gatheringClosesAt: new Date(now + 12 * DAY).toISOString(),
    orderOn: new Date(now + 14 * DAY).toISOString().slice(0, 10),
    quote: { validUntil: new Date(now + 40 * DAY).toISOString().slice(0, 10) },
  });
  const eaters = `${storehouse.path}/households/${eskdale.householdId}/eaters`;
  const eater = { birthOn: '1990-05-01', sex: 'unstated', activity: 'moderate' };
  for (const facts of [
    { name: 'Mia', excludedAllergens: ['wheat'], excludedFoodCodes: [], avoidsGluten: false },
    { name: 'Nils', excludedAllergens: [], excludedFoodCodes: [BEANS], avoidsGluten: false },
    { name: 'Olga', excludedAllergens: [], excludedFoodCodes: [], avoidsGluten: false },
  ])
    bodyOf(await eskdale.caller.post(eaters, { ...eater, ...facts }), 201);
}, 180_000);
afterAll(() => site.close());

const lineAt = (code: string) => `/s/${storehouse.storehouseId}/buys/${buy.buyId}/lines/${buy.lines[code]}`;

test('before pledging, a household is told whom of its own the food is not for, and why', async () => {
  const { page } = await site.visit({ width: 320 });
  await signInAs(page, 'eskdale@example.org');
  await page.goto(lineAt(WHEAT));
  await page.getByText('Mia does not eat Hard red winter wheat: no wheat.').waitFor();
  expect(await page.getByText(/Nils does not eat|Olga does not eat/).count()).toBe(0);
  await page.getByText('2 of 3 eaters would be fed by it.').waitFor();
  expect(await listViolations(page)).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  await page.goto(lineAt(BEANS));
  await page.getByText('Nils does not eat Black beans: no black beans.').waitFor();
}, 180_000);

test('nobody else is told', async () => {
  const { page } = await site.visit();
  await signInAs(page, 'fenwick@example.org');
  await page.goto(lineAt(WHEAT));
  await page.getByLabel('Wanted').first().waitFor();
  await page.waitForLoadState('networkidle');
  expect(await page.getByText(/does not eat/).count()).toBe(0);
}, 180_000);
