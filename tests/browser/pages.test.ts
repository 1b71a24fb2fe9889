import { afterAll, beforeAll, expect, test } from 'vitest';
import { aBuy, aPledge } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { A_PASSWORD, aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { openSite, type Site, type Visit } from './support/site.ts';

const DAY = 86_400_000;
const NEIGHBOURS = ['Corran', 'Dell', 'Eskdale', 'Fenner', 'Garrow', 'Hollis'];

let site: Site;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let pages: Record<string, string>;

beforeAll(async () => {
  site = await openSite();
  storehouse = await aStorehouse(site.app);
  birchall = await aHousehold(site.app, storehouse, 'Birchall');
  const eaters = `${storehouse.path}/households/${birchall.householdId}/eaters`;
  await birchall.caller.post(eaters, { name: 'Ana', birthOn: '1984' });
  await birchall.caller.post(eaters, { name: 'Cy', birthOn: '2017-05', excludedAllergens: ['wheat'] });
  const now = Date.now();
  const buy = await aBuy(site.app, storehouse, {
    name: 'Autumn grain',
    foods: ['wheat-hard-red-winter', 'rice-white-long'],
    gatheringClosesAt: new Date(now + 12 * DAY).toISOString(),
    orderOn: new Date(now + 14 * DAY).toISOString().slice(0, 10),
    quote: {
      validUntil: new Date(now + 40 * DAY).toISOString().slice(0, 10),
      offers: ['wheat-hard-red-winter', 'rice-white-long'].map((foodCode) => ({
        foodCode,
        bagSize: 50,
        breaks: [
          { fromBags: 1, bagPriceMinorUnits: 2400 },
          { fromBags: 10, bagPriceMinorUnits: 2100 },
        ],
      })),
    },
  });
  for (const name of NEIGHBOURS) {
    const neighbour = await aHousehold(site.app, storehouse, name);
    await aPledge(neighbour.caller, buy, { wanted: 60, least: 10, most: 90 });
  }
  const root = `/s/${storehouse.storehouseId}`;
  const wheat = buy.lines['wheat-hard-red-winter'] ?? '';
  pages = {
    home: root,
    welcome: `${root}/welcome`,
    buys: `${root}/buys`,
    buy: `${root}/buys/${buy.buyId}`,
    food: `${root}/buys/${buy.buyId}/lines/${wheat}`,
    statement: `${root}/statement`,
    household: `${root}/household`,
    'no page': '/nowhere',
  };
});
afterAll(() => site.close());

async function signIn({ page }: Visit): Promise<void> {
  await page.goto('/sign-in');
  await page.locator('input[name=email]').fill('birchall@example.org');
  await page.locator('input[name=password]').fill(A_PASSWORD);
  // By the keyboard: a pointer left over the page would count as reaching for the link that comes to lie under it.
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/s\//);
}

async function open({ page }: Visit, path: string): Promise<void> {
  await page.goto(path);
  await page.locator('h1').first().waitFor();
  await page.waitForLoadState('networkidle');
}

test('at most 150 kB of script come until the signed-in home page stands, and nothing from another host', async () => {
  const visit = await site.visit();
  await open(visit, '/');
  await signIn(visit);
  await visit.page.locator('.next').waitFor();
  await visit.page.waitForLoadState('networkidle');
  const kilobytes = visit.scriptBytes() / 1000;
  console.log(`Script until the home page: ${kilobytes.toFixed(1)} kB with gzip, signing in with it.`);
  expect(kilobytes).toBeGreaterThan(20);
  expect(kilobytes).toBeLessThanOrEqual(150);
  for (const path of Object.values(pages)) await open(visit, path);
  expect(visit.strays).toEqual([]);
}, 120_000);

test('a wrong password is refused at its field, and whoever is not signed in comes back to where they went', async () => {
  const { page } = await site.visit();
  await page.goto(pages.buys ?? '');
  await page.waitForURL(/sign-in/);
  await page.getByLabel('E-mail').fill('birchall@example.org');
  await page.getByLabel('Password').fill('not the password');
  await page.keyboard.press('Enter');
  const field = page.getByLabel('Password');
  await page.locator('.problem:not(:empty)').waitFor();
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  const described = (await field.getAttribute('aria-describedby'))?.split(' ').at(-1);
  expect(await page.locator(`[id="${described}"]`).textContent()).toContain('password is wrong');
  await field.fill(A_PASSWORD);
  await page.keyboard.press('Enter');
  await page.waitForURL(/\/buys$/);
}, 180_000);
