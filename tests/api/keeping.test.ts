import { addDays, daysBetween, weekdayOf } from '@sheafbook/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { listKeptContainers, listMoves } from '../../apps/api/src/features/keeping/queries.ts';
import { withTx } from '../../apps/api/src/platform/with-tx.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPantryWish, commonCans } from '../support/giving.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aContext } from '../support/posting.ts';
import { kindIdsOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let kinds: Record<string, string>;
let foods: Record<string, string>;
let birchall: TestHousehold;
let cellar: string;
let garage: string;
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  kinds = await kindIdsOf(storehouse);
  foods = await foodIdsOf(storehouse);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  cellar = await aPlace(birchall, 'Cellar', 120);
  garage = await aPlace(birchall, 'Garage', 300);
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;

/** A dark place that was as warm as this in every month since March 2024, or that nobody measured. */
async function aPlace({ caller }: TestHousehold, name: string, tenthsCelsius?: number): Promise<string> {
  const facts = { kind: 'other', isLit: false, isDamp: null, isRodentProof: true };
  const { id } = bodyOf(await caller.post(at('/places'), { of: 'household', name, ...facts }), 201);
  const months = Array.from({ length: 30 }, (_, since) => {
    const [years, month] = [Math.floor((since + 2) / 12), ((since + 2) % 12) + 1];
    return { month: `${2024 + years}-${String(month).padStart(2, '0')}`, tenthsCelsius };
  });
  if (tenthsCelsius !== undefined) bodyOf(await caller.put(at(`/places/${id}/months`), { months }));
  return id;
}

type Wish = {
  gramsEach?: number;
  food?: string;
  packedOn?: string;
  treatment?: string | null;
  count?: number;
  kind?: string;
};
async function stock({ caller }: TestHousehold, wish: Wish = {}): Promise<string[]> {
  const { food = 'wheat-hard-red-winter', kind = 'can-no-10', ...rest } = wish;
  const facts = { count: 1, packedOn: '2024-03-01', treatment: 'oxygen-absorber', moistureTenths: 95 };
  const named = { foodId: foods[food], containerKindId: kinds[kind], gramsEach: 2_000, originNote: 'bought' };
  const { containers } = bodyOf(await caller.post(at('/stock'), { ...named, ...facts, ...rest }), 201);
  return containers.map(({ id }: { id: string }) => id);
}

const move = async (
  { caller }: TestHousehold,
  containerIds: string[],
  placeId: string | null,
  more: Record<string, unknown> = { movedOn: '2024-03-01' },
) => bodyOf(await caller.post(at('/container-moves'), { containerIds, placeId, ...more }), 201);
const keepingOf = async ({ caller }: TestHousehold, id = '') =>
  bodyOf(await caller.get(at(`/containers/${id}/keeping`)));

describe('a container’s sheet', () => {
  // 914 days at 30 °C, where food ages 2^1.6 = 3.03 times as fast as at 70 °F, use up 2,770.7 of a can's 10,957.5 days; the
  // other 8,186.8 last 2,700 days there, and more than the band's own 30 years in the cellar.
  test('says what the garage used up, what is left there, and what the cellar would give back', async () => {
    const [id] = await stock(birchall);
    await move(birchall, [id ?? ''], garage);
    expect(await keepingOf(birchall, id)).toEqual({
      ...{ containerId: id, code: expect.any(String), grams: 2_000, isHeld: false },
      place: { id: garage, name: 'Garage', kind: 'other', isStores: false },
      keeping: {
        ...{ lowDays: 2700, likelyDays: 2700, highDays: 2700 },
        ...{ eatFirstYear: 2034, soonestYear: 2034, latestYear: 2034, isEstimate: false, isOfferTime: false },
        ...{ pastDays: 0, isUnfit: false },
      },
      why: {
        ...{ usedPart: expect.closeTo(0.2529, 3), packClass: 'can-oxygen-free', weakestLink: 'food' },
        ...{ reasons: ['food', 'warm-past'], source: expect.stringMatching(/No. 10 can/) },
      },
      stays: [
        {
          ...{ fromOn: '2024-03-01', toOn: '2026-09-01', days: 914, steadyTenths: 300, usedDays: 2771 },
          ...{ known: 'read', place: { id: garage, name: 'Garage', kind: 'other', isStores: false } },
        },
      ],
      helps: [
        {
          ...{ way: 'move', gainDays: 10_957 - 2700 },
          place: { id: cellar, name: 'Cellar', kind: 'other', isStores: false },
        },
      ],
    });
  });

  test('a move to the cellar leaves what the garage cost, and slows what is to come', async () => {
    const [id = ''] = await stock(birchall);
    await move(birchall, [id], garage);
    await move(birchall, [id], cellar, { movedOn: '2025-03-01' });
    const { stays, keeping, helps } = await keepingOf(birchall, id);
    // 365 days at 3.03 and 549 days at 2^−1.64 = 0.321.
    expect(stays.map(({ days, usedDays }: Record<string, number>) => [days, usedDays])).toEqual([
      [365, 1106],
      [549, 176],
    ]);
    expect([keeping.likelyDays, helps]).toEqual([10_957, []]);
  });

  test('a place that nobody knows or measured is cautious and says so, and one that is told is an estimate', async () => {
    const [nowhere = '', unmeasured = '', told = ''] = await stock(birchall, { count: 3 });
    await move(birchall, [unmeasured], await aPlace(birchall, 'Attic'));
    await move(birchall, [told], null, { movedOn: '2024-03-01', toldTenths: 250 });
    const [a, b, c] = [
      await keepingOf(birchall, nowhere),
      await keepingOf(birchall, unmeasured),
      await keepingOf(birchall, told),
    ];
    for (const sheet of [a, b]) {
      expect(sheet.why.reasons).toContain('unknown-history');
      expect(sheet.stays).toMatchObject([{ steadyTenths: 250, known: 'unknown' }]);
      expect(sheet.keeping.isEstimate).toBe(true);
    }
    expect(c.why.reasons).toEqual(['food', 'warm-past', 'told-history']);
    expect(c.keeping).toMatchObject({ likelyDays: a.keeping.likelyDays, isEstimate: true });
  });

  test('a can packed today in a place that nobody knows is not taken as fresh', async () => {
    const [id] = await stock(birchall, { packedOn: '2026-09-01', food: 'flour-white', gramsEach: 1_500 });
    const { keeping, why } = await keepingOf(birchall, id);
    expect(why.reasons).toContain('unknown-history');
    expect(keeping.likelyDays).toBe(keeping.lowDays);
    expect(keeping.lowDays).toBeLessThan(keeping.highDays);
  });

  test('of a pail without an absorber names the can that would do most', async () => {
    const [id = ''] = await stock(birchall, {
      kind: 'pail-6-gallon-bare',
      treatment: 'none',
      packedOn: '2026-08-01',
    });
    await move(birchall, [id], garage, { movedOn: '2026-08-01' });
    const { helps } = await keepingOf(birchall, id);
    expect(helps.map(({ way }: { way: string }) => way)).toEqual(['repack-in-can', 'move']);
  });

  test('is nobody else’s to read', async () => {
    const [id] = await stock(birchall);
    const corran = await aHousehold(app, storehouse, 'Corran');
    const answer = await corran.caller.get(at(`/containers/${id}/keeping`));
    expect([answer.status, answer.body.code]).toEqual([404, 'thing-not-found']);
  });
});

test('what last summer cost is told by place, with what moving would give back, to its household alone', async () => {
  const fenner = await aHousehold(app, storehouse, 'Fenner');
  const [hot, cool] = [await aPlace(fenner, 'Shed', 320), await aPlace(fenner, 'Cellar', 120)];
  const cans = await stock(fenner, { count: 2 });
  await move(fenner, cans, hot);
  const { places } = bodyOf(await fenner.caller.get(at('/hot-places')));
  expect(places.map(({ place }: { place: { id: string } }) => place.id)).toEqual([hot, cool]);
  const [shed, cellar] = places;
  // 92 days at 32.0 °C age 2^((320 − 211.1) / 55.6) = 3.89 times as fast, at 12.0 °C 0.32 times: 358 less 30.
  expect(shed).toMatchObject({ days: 92, usedDays: 358, lostDays: 328, isMeasured: true });
  expect(shed.cooler.id).toBe(cool);
  expect(shed.standing.count).toBe(2);
  const { helps } = await keepingOf(fenner, cans[0] ?? '');
  const move1 = helps.find(({ way }: { way: string }) => way === 'move');
  expect(shed.gains).toMatchObject([{ count: 2, leastDays: move1.gainDays, mostDays: move1.gainDays }]);
  expect(cellar).toMatchObject({ usedDays: 30, lostDays: 0, cooler: null, gains: [] });
  expect(bodyOf(await storehouse.coordinator.get(at('/hot-places?of=common'))).places).toEqual(
    expect.not.arrayContaining([expect.objectContaining({ place: expect.objectContaining({ id: hot }) })]),
  );
  expect((await fenner.caller.get(at('/hot-places?of=common'))).body.code).toBe('duty-missing');
});

test('the shelf says of each container where it stands and how long it keeps, on paper too', async () => {
  const dell = await aHousehold(app, storehouse, 'Dell');
  const cool = await aPlace(dell, 'Pantry', 120);
  const [first = '', second = ''] = await stock(dell, { count: 2 });
  await move(dell, [first], cool);
  const { containers } = bodyOf(await dell.caller.get(at('/containers')));
  expect(containers).toMatchObject([
    {
      id: first,
      place: { name: 'Pantry' },
      isHeld: false,
      keeping: { likelyDays: 10_957, isEstimate: false },
    },
    { id: second, place: null, keeping: { isEstimate: true } },
  ]);
  const { keeping } = bodyOf(await dell.caller.get(at(`/containers/${first}`)));
  expect(keeping).toEqual(containers[0].keeping);
  const sheet = await dell.caller.get(at('/containers?format=csv'));
  expect(String(sheet.body)).toContain('Pantry');
});

test('food that wants eating soon feeds nobody after', async () => {
  const eskdale = await aHousehold(app, storehouse, 'Eskdale');
  const { caller, householdId } = eskdale;
  const eater = { name: 'Ana', birthOn: '1980-01-01', sex: 'female', activity: 'moderate' };
  bodyOf(await caller.post(at(`/households/${householdId}/eaters`), { ...eater, presentPercent: 100 }), 201);
  const [rice = ''] = await stock(eskdale, {
    ...{ food: 'rice-brown-long', packedOn: '2026-08-01', treatment: 'none', kind: 'pail-6-gallon-bare' },
    ...{ gramsEach: 15_000, count: 4 },
  });
  const daysOfGrains = async () => {
    const { groups } = bodyOf(await caller.get(at('/coverage')));
    return groups.find(({ group }: { group: string }) => group === 'grains').wholeDays;
  };
  // 60 kg are 120 days at 497 g. Brown rice keeps half a year at 70 °F, and ages 1.625 times as fast at the 25 °C that an unknown
  // place is taken for: 182.6 / 1.625 − 31 = 81 days are left. In the cellar it keeps longer than the rice lasts.
  expect((await keepingOf(eskdale, rice)).keeping.likelyDays).toBe(81);
  expect(await daysOfGrains()).toBe(81);
  const ids = bodyOf(await caller.get(at('/containers'))).containers.map(({ id }: { id: string }) => id);
  await move(eskdale, ids, await aPlace(eskdale, 'Cellar', 120), { movedOn: '2026-08-01' });
  expect(await daysOfGrains()).toBe(120);
});

test('a storehouse with more containers than a statement takes parameters is read all the same', async () => {
  const [own = ''] = await stock(birchall);
  const { storehouseId } = storehouse;
  const many = [own, ...Array.from({ length: 70_000 }, () => crypto.randomUUID())]; // 65,535 at the most
  const [kept, moves] = await withTx(aContext(app, storehouse, birchall), async (tx) => [
    await listKeptContainers(tx, storehouseId, { containerIds: many }),
    await listMoves(tx, storehouseId, many),
  ]);
  expect(kept.map(({ container }) => container.containerId)).toEqual([own]);
  expect(moves).toEqual([]);
});

describe('the days that a group sets for the dates of its containers', () => {
  let glen: TestHousehold;
  let rice: string;
  let canCode: string;
  beforeAll(async () => {
    glen = await aHousehold(app, storehouse, 'Glen');
    [rice = ''] = await stock(glen, {
      ...{ food: 'rice-brown-long', packedOn: '2026-08-01', treatment: 'none', kind: 'pail-6-gallon-bare' },
    });
    const [can] = await commonCans(storehouse, [
      { food: 'rice-white-long', grams: 2_400, count: 1, stored: '2020-01' },
    ]);
    canCode = can?.code ?? '';
  });

  const coordinator = () => storehouse.coordinator;
  const inForce = async () => {
    const { decidedAt: _, ...rules } = bodyOf(await coordinator().get(storehouse.path)).rules;
    return rules as { rulesVersion: number } & Record<string, number | string>;
  };
  const set = async (days: Record<string, number>) =>
    bodyOf(await coordinator().post(at('/rules'), { ...(await inForce()), ...days }), 201);
  const refusalWith = async (change: Record<string, unknown>, caller = coordinator()) => {
    const body = { ...(await inForce()), ...change };
    return refusalOf(app, () => caller.post(at('/rules'), body));
  };
  /** The three dates of the common can as whoever gives sees them. */
  const datesOf = async () => {
    const { containers } = bodyOf(await coordinator().get(at('/giving-queue')));
    const { eatFirstOn, offerOn, giftClosesOn } = containers.find(
      ({ code }: { code: string }) => code === canCode,
    );
    return { eatFirstOn, offerOn, giftClosesOn };
  };
  const isOfferTime = async () => {
    const { containers } = bodyOf(await glen.caller.get(at('/containers')));
    const { keeping } = await keepingOf(glen, rice);
    expect(containers[0].keeping).toEqual(keeping);
    return keeping.isOfferTime as boolean;
  };
  const isToldNear = async () => {
    const { items } = bodyOf(await glen.caller.get(at('/next-steps')));
    return items.some(({ kind }: { kind: string }) => kind === 'dates-near');
  };

  test('are the coordinator’s and the treasurer’s to set, and nobody else’s', async () => {
    const days = { offerDays: 45 };
    expect(await refusalWith(days, glen.caller)).toEqual(refused(403, 'duty-missing'));
    const treasurer = await aHousehold(app, storehouse, 'Hollis', { duties: ['treasurer'] });
    const body = { ...(await inForce()), ...days };
    expect(bodyOf(await treasurer.caller.post(at('/rules'), body), 201)).toMatchObject(days);
    expect(await inForce()).toMatchObject({ ...days, rulesVersion: body.rulesVersion + 1 });
  });

  test.for([
    ['offerDays', -1],
    ['offerDays', 1001],
    ['offerDaysWithoutPantry', 1.5],
    ['offerDaysWithoutPantry', 1001],
    ['giftWindowDays', 0],
    ['giftWindowDays', 366],
    ['eatFirstMarginDays', 0],
    ['eatFirstMarginDays', 'soon'],
  ])('%s of %s is refused by name', async ([field, days]) => {
    expect(await refusalWith({ [String(field)]: days })).toEqual(
      refused(400, 'invalid-input', String(field)),
    );
  });

  test('over rules that somebody changed since are refused, and what is left out stays as it was', async () => {
    const { rulesVersion, offerDays } = await inForce();
    expect(await refusalWith({ rulesVersion: rulesVersion - 1, offerDays: 10 })).toEqual(
      refused(409, 'stale-version'),
    );
    const { offerDays: _, ...others } = await inForce();
    const body = { ...others, giftWindowDays: 20 };
    expect(bodyOf(await coordinator().post(at('/rules'), body), 201)).toMatchObject({
      ...{ offerDays, giftWindowDays: 20 },
    });
  });

  test('without a pantry: the offer of a household’s pail and of the common can move with them, eat-first does not', async () => {
    const { eatFirstOn } = await datesOf();
    const days = (await keepingOf(glen, rice)).keeping.likelyDays;
    await set({ offerDaysWithoutPantry: days });
    expect(await isOfferTime()).toBe(true);
    expect(await datesOf()).toEqual({
      ...{ eatFirstOn, offerOn: addDays(eatFirstOn, -days), giftClosesOn: null },
    });
    await set({ offerDaysWithoutPantry: days - 1 });
    expect(await isOfferTime()).toBe(false);
    expect((await datesOf()).offerOn).toBe(addDays(eatFirstOn, 1 - days));
  });

  test('the margin before eat-first is when its household is told', async () => {
    const days = (await keepingOf(glen, rice)).keeping.likelyDays;
    await set({ offerDaysWithoutPantry: 0, giftWindowDays: 1, eatFirstMarginDays: days - 1 });
    expect(await isToldNear()).toBe(false);
    await set({ eatFirstMarginDays: days });
    expect(await isToldNear()).toBe(true);
  });

  test('with a pantry: gifts close by its card, and the offer comes the group’s days before that', async () => {
    const { eatFirstOn } = await datesOf();
    // Thirty days of life on a day on which it is open: a Tuesday or a Thursday.
    bodyOf(await coordinator().post(at('/pantries'), aPantryWish('Mill Lane', { leastLifeDays: 30 })), 201);
    await set({ offerDays: 60, offerDaysWithoutPantry: 90 });
    const before = await datesOf();
    expect(before.eatFirstOn).toBe(eatFirstOn);
    const { giftClosesOn } = before;
    expect([2, 4]).toContain(weekdayOf(giftClosesOn));
    const early = daysBetween(giftClosesOn, addDays(eatFirstOn, -30));
    expect([0, 1, 2, 3, 4]).toContain(early);
    expect(before.offerOn).toBe(addDays(giftClosesOn, -60));
    await set({ offerDays: 15 });
    expect(await datesOf()).toEqual({ eatFirstOn, giftClosesOn, offerOn: addDays(giftClosesOn, -15) });
  });
});
