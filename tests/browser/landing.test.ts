import type { BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { anOrderedBuy, type TestGrainBuy } from '../support/fixed-buy.ts';
import { offersOf } from '../support/landed-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { grainNow } from './support/grain-now.ts';
import { signInAs } from './support/sign-in.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let buy: TestGrainBuy;
let offers: Awaited<ReturnType<typeof offersOf>>;
let page: Page;
let context: BrowserContext;

beforeAll(async () => {
  site = await openSite();
  storehouse = await aStorehouse(site.app);
  buy = await anOrderedBuy(site.app, storehouse, grainNow());
  offers = await offersOf(storehouse, buy);
  const visit = await site.visit();
  page = visit.page;
  context = page.context();
  await signInAs(page, 'coordinator@example.org');
  await page.evaluate('navigator.serviceWorker.ready.then(() => undefined)'); // from the next page on it keeps what comes
});
afterAll(() => site.close());

const at = (path: string) => `/s/${storehouse.storehouseId}/buys/${buy.buyId}/landing${path}`;
const sheet = async () => bodyOf(await storehouse.coordinator.get(`${buy.path}/landing`));
const bagsOf = async (food: 'wheat' | 'oats' | 'beans') =>
  (await sheet()).lines.find((line: { bagOfferId: string }) => line.bagOfferId === offers[food]).bags;

/** Types a number on the pad, key by key, as a thumb does. */
async function typeOnPad(keys: string): Promise<void> {
  for (const key of keys)
    await page.getByRole('button', { name: key === '.' ? 'Point' : key, exact: true }).click();
}

/** The page is told so, and the server is out of reach for the files that the phone keeps as well. */
async function loseSignal(isLost: boolean): Promise<void> {
  site.cut(isLost);
  await context.setOffline(isLost);
}

/** Until nothing waits on the phone any more. */
const allSent = () => page.locator('.waiting').first().waitFor({ state: 'detached' });

/** Controls that a glove would miss. */
const smallForGloves = () =>
  page.evaluate<
    string[]
  >(`[...document.querySelectorAll('.lorry button, .lorry a, .lorry input, .lorry select, .lorry summary')]
    .filter((one) => one.getClientRects().length > 0 && !one.closest('.check') && one.getBoundingClientRect().height < 71.5)
    .map((one) => one.outerHTML.slice(0, 140))`);

test('a lorry is begun and its bags are counted; what is short is said before anybody signs', async () => {
  await page.goto(at(''));
  await page.getByRole('heading', { name: 'Nothing has been counted yet' }).waitFor();
  await page.getByLabel('Carrier').fill('Valley Freight');
  await page.getByRole('button', { name: 'Start with this lorry' }).click();
  await page.getByRole('heading', { name: 'Count before anybody signs' }).waitFor();
  expect(await smallForGloves()).toEqual([]);
  const counts = page.locator('.counting input');
  await counts.nth(0).fill('six');
  await page.getByText('Write a whole number').waitFor();
  await counts.nth(0).fill('6');
  await counts.nth(1).fill('3');
  await page.getByRole('button', { name: /Beans.*one less|Black beans.*one less/ }).click();
  expect(await counts.nth(2).inputValue()).toBe('5');
  await page.getByRole('button', { name: /eans.*one less/ }).click();
  await page.getByText('1 bag short.').first().waitFor();
  await page.getByRole('button', { name: 'Write down the counts' }).click();
  await page.getByRole('link', { name: /^Weigh / }).waitFor();
  await allSent();
  expect((await sheet()).lines.map((line: { countedBags: number }) => line.countedBags)).toEqual([6, 3, 4]);
}, 180_000);

test('bags are weighed as the scale shows them; a torn one says what is short and is kept with a note', async () => {
  await page.getByRole('link', { name: /^Weigh / }).click();
  await page.getByRole('heading', { name: 'bag 1 of 6' }).waitFor();
  expect(await smallForGloves()).toEqual([]);
  expect(await overflowOf(page)).toBe(0);
  expect(await listViolations(page)).toEqual([]);
  await page.getByRole('button', { name: 'The scale shows kg' }).click();
  await typeOnPad('22.93');
  await page.getByText('so it is booked as declared').waitFor();
  await page.getByRole('button', { name: 'Keep bag 1' }).click();
  await page.getByRole('heading', { name: 'bag 2 of 6' }).waitFor();
  await page.getByText(/^Write .{7} on bag 1/).waitFor();
  await typeOnPad('20.662');
  await page.getByText('2.268 short of 22.680').waitFor();
  await page.getByRole('button', { name: 'torn' }).click();
  await page.getByRole('button', { name: 'Keep bag 2 with a note' }).click();
  await page.getByRole('heading', { name: 'bag 3 of 6' }).waitFor();
  await allSent();
  expect(await bagsOf('wheat')).toMatchObject([
    { bagNo: 1, netGrams: 22_680, condition: 'dry', decision: 'accepted' },
    {
      bagNo: 2,
      grossGrams: 20_662,
      netGrams: 20_412,
      condition: 'torn',
      decision: 'accepted-with-note',
      note: 'Torn.',
    },
  ]);
}, 180_000);

test('without a signal readings wait on the phone, outlive a closed tab, and go into the book in their order', async () => {
  await settle(page); // whatever the page asks for has come, and stays on the phone
  await loseSignal(true);
  for (const [bagNo, gross] of [
    [3, '22.91'],
    [4, '22.95'],
  ] as const) {
    await typeOnPad(gross);
    await page.getByRole('button', { name: `Keep bag ${bagNo}` }).click();
    await page.getByRole('heading', { name: `bag ${bagNo + 1} of 6` }).waitFor();
  }
  await page.getByText('2 things wait to be sent').waitFor();
  await typeOnPad('22.9'); // half typed when the tab closes
  expect(await bagsOf('wheat')).toHaveLength(2);
  await page.close();
  page = await context.newPage();
  page.setDefaultTimeout(40_000);
  await page.goto(at(`/${offers.wheat}`)); // still without a signal: the page itself is on the phone
  await page.getByText('2 things wait to be sent').waitFor();
  await page.getByRole('heading', { name: 'bag 5 of 6' }).waitFor();
  const stranger = `fetch('/api/storehouses/${crypto.randomUUID()}').then(() => 'answered', () => 'no signal')`;
  expect(await page.evaluate(stranger)).toBe('no signal'); // the kept page had no network of its own either
  await loseSignal(false);
  await page.getByRole('heading', { name: 'bag 5 of 6' }).waitFor();
  expect(await page.getByLabel('On the scale').inputValue()).toBe('22.9');
  await page.getByText(/^Write .{7} on bag 4/).waitFor();
  expect((await bagsOf('wheat')).map((bag: { grossGrams: number }) => bag.grossGrams)).toEqual([
    22_930, 20_662, 22_910, 22_950,
  ]);
}, 180_000);

test('a refused reading keeps its number and its place; put right, it goes in before the one behind it', async () => {
  await page.getByRole('button', { name: 'Rub out' }).click();
  await page.getByRole('button', { name: 'Rub out' }).click();
  await page.getByRole('button', { name: 'Rub out' }).click();
  await page.getByRole('button', { name: 'Rub out' }).click();
  await loseSignal(true);
  await typeOnPad('222.93'); // a slipped finger
  await page.getByRole('button', { name: 'Keep bag 5' }).click();
  await typeOnPad('22.94');
  await page.getByRole('button', { name: 'Keep bag 6' }).click();
  await page.getByRole('heading', { name: 'written down' }).waitFor();
  await loseSignal(false);
  await page.getByText('Refused:').waitFor();
  await page.getByText('more than twice what it declares').waitFor();
  await page.getByText('222.930 kg on the scale').waitFor();
  expect(await bagsOf('wheat')).toHaveLength(4);
  await page.reload(); // and a reload loses neither the number nor the reason
  await page.getByText('more than twice what it declares').waitFor();
  await page.getByRole('button', { name: 'Put it right' }).click();
  expect(await page.getByLabel('On the scale').inputValue()).toBe('222.930');
  await page.getByLabel('On the scale').fill('22.93');
  await page.getByRole('button', { name: 'Keep bag 5' }).click();
  await page.getByText(/^Write .{7} on bag 6/).waitFor();
  expect((await bagsOf('wheat')).map((bag: { grossGrams: number }) => bag.grossGrams).slice(4)).toEqual([
    22_930, 22_940,
  ]);
}, 180_000);

test('a wet bag goes on hold at once; a whole landing is ended and what is short claimed with one tap', async () => {
  await page.goto(at(`/${offers.oats}`));
  await page.getByRole('heading', { name: 'bag 1 of 3' }).waitFor();
  await page.getByRole('button', { name: 'The scale shows lb' }).waitFor(); // for it is the same scale, in kilograms
  await page.getByLabel('On the scale').fill('22.93'); // a real keyboard does as well
  await page.getByRole('button', { name: 'wet' }).click();
  await page.getByText('it goes on hold at once').waitFor();
  await page.getByLabel('On the scale').press('Enter');
  await page.getByRole('heading', { name: 'bag 2 of 3' }).waitFor();
  for (const bagNo of [2, 3]) {
    await page.getByRole('button', { name: 'Keep, not weighed' }).click();
    if (bagNo === 2) await page.getByRole('heading', { name: 'bag 3 of 3' }).waitFor();
  }
  await page.getByRole('heading', { name: 'written down' }).waitFor();
  await page.goto(at(`/${offers.beans}`));
  await page.getByRole('heading', { name: 'bag 1 of 4' }).waitFor();
  await page.getByText('With wet hands: say it').click();
  const say = page.getByLabel('Say or type the bag');
  await say.fill('bag two dry eleven point five nine keep'); // it is the first that stands on the scale
  await page.getByText('You said bag 2, but bag 1 is on the scale.').waitFor();
  expect(await smallForGloves()).toEqual([]);
  expect(await listViolations(page)).toEqual([]);
  for (const [bagNo, words] of [
    [1, 'bag one dry eleven point five nine keep'],
    [2, 'Bag 2, dry, 11.59 kg, keep'],
  ] as const) {
    await page.getByRole('heading', { name: `bag ${bagNo} of 4` }).waitFor();
    await say.fill(words);
  }
  for (const bagNo of [3, 4]) {
    await page.getByRole('heading', { name: `bag ${bagNo} of 4` }).waitFor();
    await page.getByLabel('On the scale').fill('11.59 kg');
    await page.getByRole('button', { name: `Keep bag ${bagNo}` }).click();
  }
  await page.getByRole('heading', { name: 'written down' }).waitFor();
  await page.getByRole('link', { name: 'Back to the lorry' }).click();
  await page.getByRole('button', { name: 'End the landing' }).click();
  await page.getByRole('heading', { name: '13 of 14 bags that were ordered came' }).waitFor();
  await page.getByRole('link', { name: 'Split what came' }).waitFor(); // the landing is ended in the book
  for (const amount of ['21.40', '3.60']) {
    await page.getByRole('button', { name: `Claim ${amount}` }).click();
    await page.getByRole('button', { name: `Claim ${amount}` }).waitFor({ state: 'detached' });
  }
  const landed = await sheet();
  expect(landed.stage).toBe('landed');
  expect((await bagsOf('beans')).map((bag: { grossGrams: number }) => bag.grossGrams)).toEqual([
    11_590, 11_590, 11_590, 11_590,
  ]);
  const kinds = landed.claims.map((claim: { kind: string; minorUnits: number }) => [
    claim.kind,
    claim.minorUnits,
  ]);
  expect(kinds).toEqual(
    expect.arrayContaining([
      ['short', 2140],
      ['damage', 360],
    ]),
  );
  expect(await smallForGloves()).toEqual([]);
  expect(await listViolations(page)).toEqual([]);
}, 180_000);

test('a bag is weighed again only with a reason; a hold is asked to end, and needs a second person', async () => {
  await page.getByLabel('Find a bag').fill('oats');
  await page.locator('.list a', { hasText: 'on hold' }).click();
  await page.getByText('On hold since').waitFor();
  await page.getByText('Weigh it again').click();
  await page.getByLabel(/^On the scale/).fill('50.4 lb');
  await page.getByText('Say why it is weighed again').waitFor();
  expect(await page.getByRole('button', { name: 'Write down the weight' }).isDisabled()).toBe(true);
  await page.getByLabel('Why again').fill('The scale stood on a stone.');
  await page.getByRole('button', { name: 'Write down the weight' }).click();
  await allSent();
  await page.getByLabel('What was found').fill('Only the sack was wet.');
  await page.getByRole('button', { name: 'Ask to release it' }).click();
  await page.getByText('A second person must agree').waitFor();
  const [held] = await bagsOf('oats');
  expect(held).toMatchObject({ grossGrams: 22_861, isOnHold: true }); // 50.4 lb
}, 180_000);
