import { addDays, weekdayOf } from '@sheafbook/units';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf } from '../support/fingerprint.ts';
import { aPantryWish, commonCans, type GivenCan } from '../support/giving.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

// A pantry takes white rice up to 100 days past its date and all else with 30 days left; its door is open Tuesdays and Thursdays.
const CARD = { leastLifeDays: 30, mostDaysPastBest: 100, pastBestClasses: ['white-rice'] };

let app: TestApp;
let storehouse: TestStorehouse;
let pantryId: string;
let rice: GivenCan;
let beans: GivenCan;
beforeAll(async () => {
  app = await openTestApp(); // Tuesday, 1 September 2026
  storehouse = await aStorehouse(app);
  const cans = await commonCans(storehouse, [
    { food: 'rice-white-long', grams: 2_400, count: 1, stored: '2026-01' },
    { food: 'beans-pinto', grams: 2_200, count: 1, stored: '2026-01' },
  ]);
  const can = (grams: number) => cans.find((one) => one.grams === grams) as GivenCan;
  [rice, beans] = [can(2_400), can(2_200)];
  pantryId = bodyOf(await post('/pantries', aPantryWish('Mill Lane', CARD)), 201).id;
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const post = (rest: string, body: unknown) => storehouse.coordinator.post(at(rest), body);
type Row = {
  code: string;
  eatFirstOn: string;
  giftClosesOn: string | null;
  steps: string[];
  isDue: boolean;
  afterLook: string[];
};
const queued = async ({ code }: GivenCan): Promise<Row> =>
  bodyOf(await storehouse.coordinator.get(at('/giving-queue'))).containers.find(
    (row: Row) => row.code === code,
  );
const back = (day: string): string => ([2, 4].includes(weekdayOf(day)) ? day : back(addDays(day, -1)));
const goTo = (day: string) => {
  app.clock.now = new Date(`${day}T15:00:00Z`);
};
const match = async (onDay: string) =>
  bodyOf(await post('/gift-matchings', { trips: [{ pantryId, onDay, capacityGrams: 50_000 }] }), 201);
type Lot = { containers: { code: string }[]; refusals: string[][] };
const refusalsOf = ({ lots }: { lots: Lot[] }, { code }: GivenCan) =>
  lots.find(({ containers }) => containers.some((one) => one.code === code))?.refusals;

test('what a card takes past its date is still to be given then, by the queue and by the matching alike', async () => {
  const [ofRice, ofBeans] = [await queued(rice), await queued(beans)];
  expect(ofRice.giftClosesOn).toBe(back(addDays(ofRice.eatFirstOn, 100)));
  expect(ofBeans.giftClosesOn).toBe(back(addDays(ofBeans.eatFirstOn, -30)));

  const later = [ofRice.eatFirstOn, ofBeans.eatFirstOn].toSorted().at(-1) ?? '';
  goTo(addDays(later, 7));
  expect((await queued(rice)).eatFirstOn).toBe(ofRice.eatFirstOn); // a date does not move once it is past
  const [past, beansPast] = [await queued(rice), await queued(beans)];
  expect([past.isDue, past.steps.includes('pantry')]).toEqual([true, true]);
  expect(beansPast.steps).not.toContain('pantry');
  // Past its day nobody eats it unseen; a look that finds it sound opens the table again.
  expect(beansPast.steps).not.toContain('own-kitchen');
  expect(beansPast.afterLook).toContain('own-kitchen');
  const tuesday = [1, 2, 3, 4, 5, 6, 7]
    .map((days) => addDays(addDays(later, 7), days))
    .find((day) => weekdayOf(day) === 2);
  const matching = await match(tuesday ?? '');
  expect(refusalsOf(matching, rice)).toEqual([[]]);
  expect(refusalsOf(matching, beans)).toEqual([['past-its-date']]);
  expect(matching.givenGrams).toBe(2_400);
});

test('no pantry’s day is a day of what its card takes from nobody who packs at home', async () => {
  const { card } = bodyOf(await storehouse.coordinator.get(at(`/pantries/${pantryId}`)));
  const { version, writtenAt: _at, writtenBy: _by, ...said } = card;
  const put = (change: object, read: number) =>
    storehouse.coordinator.put(at(`/pantries/${pantryId}/card`), {
      ...{ version: read, card: { ...said, ...change } },
    });
  const newer = bodyOf(await put({ acceptsHomePacked: false }, version));
  expect(await queued(rice)).toMatchObject({ giftClosesOn: null });
  expect((await queued(rice)).steps).not.toContain('pantry');
  // Nobody said how these were packed, and the card has to say in writing that it takes food without oxygen.
  bodyOf(await put({ acceptsReducedOxygen: null }, newer.card.version));
  expect(await queued(rice)).toMatchObject({ giftClosesOn: null });
  const day = back(addDays(app.clock.now.toISOString().slice(0, 10), 7));
  expect(refusalsOf(await match(day), rice)).toEqual([['oxygen-unknown']]);
});

test('what is matched under a card and comes late at its door is refused by its own last day', async () => {
  const { card } = bodyOf(await storehouse.coordinator.get(at(`/pantries/${pantryId}`)));
  const { version, writtenAt: _at, writtenBy: _by, ...said } = card;
  bodyOf(
    await storehouse.coordinator.put(at(`/pantries/${pantryId}/card`), {
      version,
      card: { ...said, acceptsReducedOxygen: true, mostDaysPastBest: 30 },
    }),
  );
  const today = app.clock.now.toISOString().slice(0, 10);
  const onDay = [1, 2, 3, 4, 5, 6, 7].map((days) => addDays(today, days)).find((day) => day === back(day));
  const { id } = await match(onDay ?? '');
  const manifest = await post('/gift-manifests', { matchingId: id, trip: 0, driver: 'Ruth' });
  const [line] = bodyOf(manifest, 201).lines;
  expect(line.giftClosesOn).toBe(back(addDays(line.eatFirstOn, 30)));
  const late = addDays(line.giftClosesOn, 1);
  goTo(addDays(late, 1));
  const receive = () =>
    post(`/gift-manifests/${manifest.body.id}/receipt`, {
      ...{ version: 1, receivedOn: late, receiverDuty: 'intake desk', note: '', refused: [] },
    });
  expect(await refusalOf(app, receive)).toMatchObject({ code: 'gift-refused', isUnchanged: true });
});
