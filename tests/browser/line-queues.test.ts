import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { bodyOf } from '../support/buy.ts';
import { aHall, aPackingSession, cansOf, type TestHall } from '../support/packing.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { listViolations, overflowOf, smallTargets } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { openSite, type Site } from './support/site.ts';

let site: Site;
let storehouse: TestStorehouse;
let hall: TestHall;
let day: string;
let lead: Page;
let helper: Page;
beforeAll(async () => {
  site = await openSite('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(site.app);
  hall = await aHall(site.app, storehouse);
  day = await aPackingSession(storehouse, hall, { name: 'Autumn canning', peopleALine: 5 });
  const wishes = [cansOf(hall, { containers: 60, gramsEach: 220 })];
  bodyOf(await hall.buy.households.Dell.caller.put(`${day}/wishes`, { wishes }));
  lead = (await site.enter('pat-corran@example.org')).page;
  helper = (await site.enter('dell@example.org')).page;
});
afterAll(() => site.close());

const at = (path = '') => `/s/${storehouse.storehouseId}/packing/${day.split('/').at(-1)}${path}`;
const queues = async () => bodyOf(await hall.lead.caller.get(`${day}/log`)).queues;
const tap = (page: Page, station: string, key: string) =>
  page
    .getByRole('group', { name: `Waiting before: ${station}` })
    .getByRole('button', { name: key, exact: true })
    .click();
const isFit = async (page: Page) => {
  await settle(page);
  expect(await listViolations(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  await page.setViewportSize({ width: 320, height: 844 });
  expect(await overflowOf(page)).toBe(0);
  await page.setViewportSize({ width: 390, height: 844 });
};

test('who helps says to work seated or to be under 16, and is then not asked about the seamer', async () => {
  await helper.goto(at());
  await helper.getByLabel('I come to help').check();
  await helper.getByLabel('I am trained at the seamer').check();
  await helper.getByLabel('I am under 16').check();
  await helper.getByText(/^Nobody under 16 works the seamer/).waitFor();
  expect(await helper.getByLabel('I am trained at the seamer').count()).toBe(0);
  await helper.getByLabel('I can only work seated').check();
  const hand = async () => bodyOf(await hall.buy.households.Dell.caller.get(day)).hand;
  await expect.poll(hand).toMatchObject({ isUnder16: true, maySeam: false, seatedOnly: true });
  await isFit(helper);
  await lead.goto(at('/plan'));
  await lead.getByText('comes · works seated · under 16, never at the seamer').waitFor();
  await isFit(lead);
}, 180_000);

test('until somebody tells of a queue the running day names the plan’s bottleneck, and then the longest queue', async () => {
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  await lead.goto(at('/log'));
  await lead
    .getByText(
      'By the plan, fill, weigh, absorber: 27 s a container. Nobody has told of a queue over the last ten.',
    )
    .waitFor();
  await lead.getByText('Tell how many wait', { exact: true }).click();
  await tap(lead, 'seam', '5');
  // Sixty cans at 27 s; a second person at the machine changes nothing.
  await lead
    .getByText('Now: seam, about 5 waiting over the last ten. One person more there ends the day no sooner', {
      exact: false,
    })
    .waitFor();
  await tap(lead, 'weigh', '10+');
  // A third at the filling makes 24 s of 27: 60 × 3 s are three minutes.
  await lead
    .getByText(
      'Now: weigh, about 10 waiting over the last ten. One person more there ends the day 3 minutes sooner, by the plan’s times.',
    )
    .waitFor();
  await expect.poll(async () => (await queues()).length).toBe(2);
  await isFit(lead);
  await lead.goto(at().replace(/\/[^/]+$/, ''));
  await lead.getByText(/^Now: weigh, about 10 waiting over the last ten\./).waitFor();
}, 180_000);

test('a helper without a duty tells it too, also without a signal', async () => {
  await helper.goto(at());
  await helper.getByText('Tell how many wait', { exact: true }).click();
  await helper.context().setOffline(true);
  await tap(helper, 'box', '2');
  await helper.getByRole('group', { name: /^Waiting before: box 2 at / }).waitFor();
  expect((await queues()).length).toBe(2);
  await helper.context().setOffline(false);
  await expect.poll(async () => (await queues()).at(-1)).toMatchObject({ station: 'box', waiting: 2 });
  await isFit(helper);
}, 180_000);
