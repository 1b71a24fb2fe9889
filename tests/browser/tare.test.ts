import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHall, aPackingSession, bringWheat, cansOf, type TestHall } from '../support/packing.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { TEN_ALIKE, TEN_UNLIKE } from '../support/tare.ts';
import { findFaults, NO_FAULTS } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

// Ten empties on the scale, and the day's pours typed with the can on it.
let site: Site;
let storehouse: TestStorehouse;
let hall: TestHall;
let day: string;
let lead: Page;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  hall = await aHall(site.app, storehouse);
  day = await aPackingSession(storehouse, hall, { name: 'Autumn canning' });
  const { caller } = hall.buy.households.Dell;
  bodyOf(await caller.put(`${day}/wishes`, { wishes: [cansOf(hall, { containers: 4, gramsEach: 2600 })] }));
  lead = (await site.enter('pat-corran@example.org')).page;
}, 180_000);
afterAll(() => site.close());

const settledFaults = async (page: Page) => {
  await settle(page);
  return findFaults(page);
};
const webAt = (path = '') =>
  day.replace('/api/storehouses', '/s').replace('/packing-sessions/', '/packing/') + path;
const key = (name: string | RegExp) => lead.getByRole('button', { name, exact: true });
const weigh = async (grams: number) => {
  for (const figure of String(grams)) await key(figure).click();
  await key('Next').click();
};

test('before the day the lead weighs ten empties with large keys, takes a slip out, and keeps their tare', async () => {
  await lead.goto(webAt());
  await lead.getByRole('link', { name: 'Weigh ten empties' }).click();
  await lead.getByRole('heading', { name: 'No. 10 can: nobody has weighed ten empty ones yet.' }).waitFor();
  expect(await settledFaults(lead)).toEqual(NO_FAULTS);
  const [first = 0, ...rest] = TEN_ALIKE;
  await weigh(first);
  await lead.getByText('1 of ten. 0 g between the lightest and the heaviest; 6 g are allowed.').waitFor();
  await lead.reload(); // a dead battery forgets nothing
  await key('The same again: 318 g').click();
  await lead.getByText('2 of ten.').waitFor();
  await key('Take out number 2: 318 g').click();
  for (const grams of rest.slice(0, -1)) await weigh(grams);
  await weigh(331);
  await lead.getByText(/^13 g between the lightest and the heaviest; more than 6 g is too much/).waitFor();
  expect(await settledFaults(lead)).toEqual(NO_FAULTS);
  await key('Take out number 10: 331 g').click();
  await weigh(rest.at(-1) ?? 0);
  await lead.getByText('321 g each, 6 g between the lightest and the heaviest.').waitFor();
  expect(await settledFaults(lead)).toEqual(NO_FAULTS);
  await key('Keep 321 g as the tare').click();
  await lead.getByRole('heading', { name: 'No. 10 can: an empty one weighs 321 g.' }).waitFor();
  await lead.getByText(/^Weighed .+ by .+, from 318 to 324 g\.$/).waitFor();
  const { tares } = bodyOf(await hall.lead.caller.get(`${storehouse.path}/container-tares`));
  expect(tares).toMatchObject([{ readings: TEN_ALIKE, kind: { code: 'can-no-10' } }]);
}, 120_000);

test('without a signal ten empties wait on the phone, count at once, and are sent once', async () => {
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  await lead.goto(webAt('/log'));
  await lead.getByRole('link', { name: 'Weigh ten empties' }).click();
  await lead.getByRole('heading', { name: 'No. 10 can: an empty one weighs 321 g.' }).waitFor();
  await lead.context().setOffline(true);
  await weigh(330);
  for (let at = 0; at < 9; at += 1) await key('The same again: 330 g').click();
  await key('Keep 330 g as the tare').click();
  await lead.getByRole('heading', { name: 'No. 10 can: an empty one weighs 330 g.' }).waitFor();
  await lead.getByText('Ten empties weighed: No. 10 can').waitFor();
  expect(await settledFaults(lead)).toEqual(NO_FAULTS);
  await lead.context().setOffline(false);
  await lead.getByText(/^Weighed .+ by .+, from 330 to 330 g\.$/).waitFor();
  const { tares } = bodyOf(await hall.lead.caller.get(`${storehouse.path}/container-tares`));
  expect(tares).toMatchObject([{ meanGrams: 330 }]);
}, 120_000);

test('at the line the can stands on the scale full: its tare is taken off, and the net is said before it is sent', async () => {
  await bringWheat(hall, day, 'Dell');
  await lead.goto(webAt('/log'));
  await lead.getByLabel('Each No. 10 can stands on the scale with its food').check();
  await lead.getByText('330 g are taken off for the container.').waitFor();
  await lead.getByText('the scale shows 2,930 g').waitFor();
  expect(await settledFaults(lead)).toEqual(NO_FAULTS);
  await lead
    .getByRole('button', { name: /^Number 1|2,600 g/ })
    .first()
    .click();
  await key('Take 1 back').waitFor();
  await key('Another figure').click();
  await lead.getByLabel('On the scale, with the container').fill('300');
  await lead
    .getByText('The empty container weighs 330 g, the full one 300 g. Read the scale again.')
    .waitFor();
  await lead.context().setOffline(true);
  await lead.getByLabel('On the scale, with the container').fill('2640');
  await lead.getByLabel('How many alike').fill('3');
  await lead.getByText('2,640 g less 330 g is 2,310 g net. 3 of them: 6,930 g.').waitFor();
  expect(await settledFaults(lead)).toEqual(NO_FAULTS);
  await lead.locator('.pour .key').click();
  await lead.getByText('3 containers, 6,930 g').waitFor();
  await lead.context().setOffline(false);
  await lead.getByText('3 containers, 6,930 g').waitFor({ state: 'detached' });
  const { pours } = bodyOf(await hall.lead.caller.get(`${day}/log`));
  expect(pours).toMatchObject([
    { grams: 2600, grossGrams: 2930, tareGrams: 330, weighedHow: 'tare-of-kind' },
    ...Array.from({ length: 3 }, () => ({ grams: 2310, grossGrams: 2640, weighedHow: 'tare-of-kind' })),
  ]);
}, 120_000);

test('where ten empties are too unlike, each can is weighed empty before it is poured', async () => {
  const readings = TEN_UNLIKE;
  const ten = { containerKindId: hall.shelves.kinds['can-no-10'], readings };
  bodyOf(await hall.lead.caller.post(`${storehouse.path}/container-tares`, ten), 201);
  await lead.reload();
  await lead.getByText('The ten empties were 7 g apart, so type what each weighs empty.').waitFor();
  await key('Weigh this one empty first').waitFor();
  await lead.getByLabel('This container empty, in grams').fill('325');
  await lead.getByText('the scale shows 2,925 g').waitFor();
  expect(await settledFaults(lead)).toEqual(NO_FAULTS);
  await lead.locator('.pour .key').click();
  await key('Weigh this one empty first').waitFor(); // the next one is another
  await lead.locator('summary', { hasText: 'All containers' }).click();
  await lead.getByText('2,925 g less 325 g is 2,600 g net.').waitFor();
}, 120_000);
