import {
  acceptsAnything,
  type GiftLot,
  type Giveable,
  giftValue,
  LADDER,
  lastGiftDay,
  listCardRefusals,
  listLastingRefusals,
  matchGifts,
  mealsOf,
  nearestDoorFirst,
  type OnTheLadder,
  openSteps,
  type RuleCard,
  type Visit,
} from '@sheafbook/giving';
import { OUTCOMES } from '@sheafbook/keeping';
import { loadSolver } from '@sheafbook/solve';
import { addDays, sumOf, weekdayOf } from '@sheafbook/units';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const solver = await loadSolver();

// Job map 11.3, in cases of 5 lb; here a "gram" is a pound.
describe('the worked matching', () => {
  const visits: Visit[] = [
    { visitId: 'P1', capacityGrams: 70, distance: 3 },
    { visitId: 'P2', capacityGrams: 50, distance: 8 },
    { visitId: 'P3', capacityGrams: 40, distance: 5 },
  ];
  const lot = (lotId: string, pounds: number, to: readonly number[]): GiftLot => {
    return { lotId, containers: pounds / 5, containerGrams: 5, visits: to };
  };
  const lots = [lot('G1', 60, [0, 1, 2]), lot('G2', 45, [0]), lot('G3', 30, [0, 2]), lot('G4', 25, [1, 2])];

  test('places all 160 lb over 16 miles in 6 pieces', () => {
    const matching = matchGifts(solver, lots, visits);
    expect(matching.givenGrams).toBe(160);
    expect(matching.distance).toBe(16);
    expect(matching.leftContainers).toEqual([]);
    const pounds = matching.pieces.map(
      ({ lotId, visitId, containers }) => `${lotId} ${visitId} ${containers * 5}`,
    );
    expect(pounds).toEqual(['G1 P1 25', 'G1 P2 35', 'G2 P1 45', 'G3 P3 30', 'G4 P2 15', 'G4 P3 10']);
  });

  test('the nearest door first leaves 5 lb behind', () => {
    const inTurn = ['G3', 'G2', 'G1', 'G4'].map(
      (lotId) => lots.find((row) => row.lotId === lotId) as GiftLot,
    );
    const greedy = nearestDoorFirst(inTurn, visits);
    expect(greedy.givenGrams).toBe(155);
    expect(greedy.leftContainers).toEqual([{ lotId: 'G2', containers: 1 }]);
  });
});

describe('the matching against every possibility', () => {
  const someVisits = fc.array(fc.record({ capacityGrams: fc.nat(12), distance: fc.nat(9) }), {
    minLength: 1,
    maxLength: 2,
  });
  const someLots = fc.array(
    fc.record({
      containers: fc.nat(3),
      containerGrams: fc.integer({ min: 1, max: 4 }),
      to: fc.subarray([0, 1]),
    }),
    { minLength: 1, maxLength: 3 },
  );

  /** The best of all ways: most grams, then least distance, then fewest pieces. */
  function bruteForce(lots: readonly GiftLot[], visits: readonly Visit[]): readonly number[] {
    const arcs = lots.flatMap((lot) => lot.visits.map((visit) => ({ lot, visit })));
    let best = [0, 0, 0];
    const tryAll = (position: number, counts: readonly number[]): void => {
      const arc = arcs[position];
      if (!arc) {
        const key = keyOf(arcs, counts, { lots, visits });
        if (key && isLess(key, best)) best = key;
        return;
      }
      for (let count = 0; count <= arc.lot.containers; count += 1) tryAll(position + 1, [...counts, count]);
    };
    tryAll(0, []);
    return best;
  }

  const isLess = (a: readonly number[], b: readonly number[]) => {
    const differs = a.findIndex((value, position) => value !== b[position]);
    return differs >= 0 && (a[differs] ?? 0) < (b[differs] ?? 0);
  };

  function keyOf(
    arcs: readonly { readonly lot: GiftLot; readonly visit: number }[],
    counts: readonly number[],
    { lots, visits }: { readonly lots: readonly GiftLot[]; readonly visits: readonly Visit[] },
  ): number[] | null {
    const of = (isWanted: (arc: (typeof arcs)[number]) => boolean, weigh: (lot: GiftLot) => number) =>
      sumOf(arcs.map((arc, position) => (isWanted(arc) ? weigh(arc.lot) * (counts[position] ?? 0) : 0)));
    if (
      lots.some(
        (lot) =>
          of(
            (arc) => arc.lot === lot,
            () => 1,
          ) > lot.containers,
      )
    )
      return null;
    const loads = visits.map((_, visit) =>
      of(
        (arc) => arc.visit === visit,
        (lot) => lot.containerGrams,
      ),
    );
    if (loads.some((grams, visit) => grams > (visits[visit]?.capacityGrams ?? 0))) return null;
    const distance = sumOf(
      visits.map((visit, position) => ((loads[position] ?? 0) > 0 ? visit.distance : 0)),
    );
    return [0 - sumOf(loads), distance, counts.filter((count) => count > 0).length];
  }

  test('no way saves more food, goes less far or needs fewer pieces', () => {
    fc.assert(
      fc.property(someVisits, someLots, (doors, goods) => {
        const visits = doors.map((door, position) => ({ visitId: `v${position}`, ...door }));
        const lots = goods.map(({ to, ...lot }, position) => {
          return { lotId: `l${position}`, ...lot, visits: to.filter((visit) => visit < visits.length) };
        });
        const { givenGrams, distance, pieces } = matchGifts(solver, lots, visits);
        expect([0 - givenGrams, distance, pieces.length]).toEqual(bruteForce(lots, visits));
        expect(nearestDoorFirst(lots, visits).givenGrams).toBeLessThanOrEqual(givenGrams);
      }),
      { numRuns: 40 },
    );
  });
});

const card: RuleCard = {
  acceptsMakerSealed: true,
  acceptsHomePacked: null,
  acceptsLicensedKitchen: null,
  acceptsReducedOxygen: null,
  mostDaysPastBest: null,
  pastBestClasses: null,
  leastLifeDays: 90,
  containerKindCodes: null,
  labelFacts: ['product', 'pack-date', 'allergens'],
  foodCodesWanted: null,
  foodCodesNotWanted: ['salt'],
  allergensNotTaken: ['peanuts'],
  mostGramsPerVisit: 50_000,
};
const gift: Giveable = {
  code: 'A',
  foodCode: 'rice',
  keepingClass: 'white-rice',
  kindCode: 'can-no-10',
  grams: 2_500,
  sealedBy: 'maker',
  isReducedOxygen: false,
  eatFirstOn: '2027-09-30',
  allergens: [],
  labelFacts: ['product', 'pack-date', 'allergens', 'net-mass'],
  isOnHold: false,
  isTreatedSeed: false,
  isOpened: false,
};

describe('a rule card', () => {
  test('takes what it says', () => {
    expect(listCardRefusals(card, gift, '2027-07-02')).toEqual([]); // 90 days before
  });

  test.for([
    [{ sealedBy: 'home' }, ['home-packed-not-taken']], // what the card does not say is a no
    [{ sealedBy: 'unsealed' }, ['not-sealed']],
    [{ foodCode: 'salt' }, ['food-not-wanted']],
    [{ allergens: ['peanuts'] }, ['allergen']],
    [{ labelFacts: ['product'] }, ['label-lacks']],
    [{ eatFirstOn: '2027-09-29' }, ['too-little-life']],
    [{ eatFirstOn: '2027-07-01' }, ['past-its-date']],
    [{ grams: 50_001 }, ['heavier-than-a-visit']],
    [{ isOnHold: true, isTreatedSeed: true, isOpened: true }, ['on-hold', 'treated-seed', 'opened']],
  ] as const)('%j is refused for %j', ([change, refusals]) => {
    expect(listCardRefusals(card, { ...gift, ...change }, '2027-07-02')).toEqual(refusals);
  });

  // Job map 11.2: home-packed dry food in reduced oxygen is not accepted unless the card says so in writing.
  test('takes what was packed without oxygen at home only where it says so', () => {
    const canned: Giveable = { ...gift, sealedBy: 'home', isReducedOxygen: true };
    const home = { ...card, acceptsHomePacked: true };
    expect(listCardRefusals(home, canned, '2027-07-02')).toEqual(['reduced-oxygen-not-taken']);
    expect(listCardRefusals({ ...home, acceptsReducedOxygen: true }, canned, '2027-07-02')).toEqual([]);
    expect(listCardRefusals(card, { ...canned, sealedBy: 'maker' }, '2027-07-02')).toEqual([]);
  });

  test('nor what nobody knows how it was packed at home, and says that this is why', () => {
    const untold: Giveable = { ...gift, sealedBy: 'home', isReducedOxygen: null };
    const home = { ...card, acceptsHomePacked: true };
    expect(listCardRefusals(home, untold, '2027-07-02')).toEqual(['oxygen-unknown']);
    expect(listCardRefusals({ ...home, acceptsReducedOxygen: true }, untold, '2027-07-02')).toEqual([]);
    expect(listCardRefusals(card, { ...untold, sealedBy: 'maker' }, '2027-07-02')).toEqual([]);
  });

  test('takes food past its date by so many days, of the foods it says', () => {
    const late = { ...card, mostDaysPastBest: 30, pastBestClasses: ['white-rice'] };
    expect(listCardRefusals(late, gift, '2027-10-30')).toEqual([]);
    expect(listCardRefusals(late, gift, '2027-10-31')).toEqual(['past-its-date']);
    expect(listCardRefusals(late, { ...gift, keepingClass: 'whole-grain' }, '2027-10-01')).toEqual([
      'past-its-date',
    ]);
    expect(
      listCardRefusals({ ...late, pastBestClasses: null }, { ...gift, keepingClass: null }, '2027-10-30'),
    ).toEqual([]);
  });

  test('asks no life of what it takes past its date, and the life it wants of all else', () => {
    const late = { ...card, mostDaysPastBest: 30, pastBestClasses: ['white-rice'] };
    expect(listCardRefusals(late, gift, '2027-09-29')).toEqual([]); // a day left, and 90 are asked of others
    expect(listCardRefusals(late, { ...gift, keepingClass: 'dry-legume' }, '2027-09-29')).toEqual([
      'too-little-life',
    ]);
  });

  // Job map 10.3: eat-first 30 September 2027, 90 days, Tuesdays and Thursdays.
  test.for([
    [{}, 'white-rice', '2027-07-01'],
    [{ mostDaysPastBest: 30, pastBestClasses: ['white-rice'] }, 'white-rice', '2027-10-28'], // of 30 October
    [{ mostDaysPastBest: 30, pastBestClasses: ['white-rice'] }, 'dry-legume', '2027-07-01'],
    [{ mostDaysPastBest: 30, pastBestClasses: null }, 'dry-legume', '2027-10-28'],
    [{ mostDaysPastBest: 30, pastBestClasses: [] }, 'white-rice', '2027-07-01'],
  ] as const)('with %j its last day for %s is %s', ([change, keepingClass, day]) => {
    expect(lastGiftDay({ ...card, ...change }, { ...gift, keepingClass }, [2, 4])).toBe(day);
    expect(lastGiftDay({ ...card, ...change }, { ...gift, keepingClass }, [])).toBeNull();
  });

  test('takes something on its last day, and on no day after that on which its door is open', () => {
    const cards = fc.record({
      leastLifeDays: fc.nat(200),
      mostDaysPastBest: fc.option(fc.integer({ min: 1, max: 400 })),
      pastBestClasses: fc.option(fc.constantFrom(['white-rice'], ['dry-legume'], [])),
    });
    const weekdays = fc.subarray([0, 1, 2, 3, 4, 5, 6], { minLength: 1 });
    fc.assert(
      fc.property(cards, weekdays, fc.nat(400), (change, open, after) => {
        const own = { ...card, ...change };
        const last = lastGiftDay(own, gift, open) ?? '';
        expect(listCardRefusals(own, gift, last)).toEqual([]);
        const later = addDays(last, after + 1);
        if (open.includes(weekdayOf(later))) expect(listCardRefusals(own, gift, later)).not.toEqual([]);
      }),
    );
  });

  test('what no day changes is told without one', () => {
    expect(listLastingRefusals(card, { ...gift, sealedBy: 'home' })).toEqual(['home-packed-not-taken']);
    expect(listLastingRefusals(card, gift)).toEqual([]);
  });

  test('one that accepts nothing is told apart', () => {
    expect(acceptsAnything(card)).toBe(true);
    expect(acceptsAnything({ ...card, acceptsMakerSealed: false })).toBe(false);
    expect(acceptsAnything({ ...card, foodCodesWanted: ['salt'] })).toBe(false);
    expect(acceptsAnything({ ...card, containerKindCodes: [] })).toBe(false);
    expect(acceptsAnything({ ...card, mostGramsPerVisit: 0 })).toBe(false);
  });
});

describe('the ladder', () => {
  const sound: OnTheLadder = {
    inspected: 'table',
    isOnHold: false,
    isTreatedSeed: false,
    isPastEatFirst: false,
    isOfferOver: false,
    isGiftClosed: false,
    isMouldy: false,
  };
  test.for([
    [{}, [...LADDER]],
    [{ isOfferOver: true }, ['own-kitchen', 'pantry', 'animals', 'compost', 'discard']],
    [{ isGiftClosed: true, isOfferOver: true }, ['own-kitchen', 'animals', 'compost', 'discard']],
    [{ inspected: 'animals' }, ['animals', 'compost', 'discard']],
    [{ inspected: 'compost' }, ['compost', 'discard']],
    [{ isMouldy: true }, ['discard']],
    [{ isTreatedSeed: true }, ['discard']],
    [{ isOnHold: true }, []],
    [{ inspected: null, isPastEatFirst: true, isGiftClosed: true }, ['animals', 'compost', 'discard']],
    // A card may take some foods past their date, by so many days: not closed yet.
    [{ inspected: null, isPastEatFirst: true }, ['pantry', 'animals', 'compost', 'discard']],
  ] as const)('%j may go to %j', ([change, steps]) => {
    expect(openSteps({ ...sound, ...change })).toEqual(steps);
  });

  test('treated or mouldy stock never reaches people or animals', () => {
    const any = fc.record({
      inspected: fc.option(fc.constantFrom(...OUTCOMES)),
      isOnHold: fc.boolean(),
      isTreatedSeed: fc.boolean(),
      isPastEatFirst: fc.boolean(),
      isOfferOver: fc.boolean(),
      isGiftClosed: fc.boolean(),
      isMouldy: fc.boolean(),
    });
    fc.assert(
      fc.property(any, (thing) => {
        const steps = openSteps(thing);
        if (thing.isTreatedSeed || thing.isMouldy)
          expect(steps.filter((step) => step !== 'discard')).toEqual([]);
        if (thing.isOnHold) expect(steps).toEqual([]);
      }),
    );
  });
});

// 1.2 lb a meal and $1.97 a pound. Job map 11.4: 160 lb are 72,575 g and 133 meals of 544 g.
describe('what a gift is worth', () => {
  test('160 lb are about 133 meals', () => {
    expect(mealsOf(72_575)).toBe(133);
  });
  test.for([
    [113_398, 49_250], // 250 lb: $492.50
    [20_865, 9_062], // 46 lb: $90.62
  ] as const)('%d g are worth %d', ([grams, minorUnits]) => {
    expect(giftValue(grams)).toBe(minorUnits);
  });
  test('never more than it cost', () => {
    expect(giftValue(113_398, 12_000)).toBe(12_000);
    expect(giftValue(113_398, 60_000)).toBe(49_250);
  });
});
