import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CAN_LINE } from './line-crew.ts';
import { type LineWish, planLine, slotMinutes } from './line-plan.ts';

const DAY = { stations: CAN_LINE, people: 6, setupMinutes: 30, breakMinutes: 15, cleanDownMinutes: 45 };

const aWish = (wish: Partial<LineWish> & Pick<LineWish, 'wishId'>): LineWish => ({
  householdId: 'ashdown',
  seat: 1,
  foodCode: 'wheat',
  carries: [],
  mustNotMeet: [],
  containers: 10,
  ...wish,
});

// The day of the job map, sections 7.3 and 7.4: four foods, 228 cans, six people.
const FOUR_FOODS = [
  aWish({ wishId: 'wheat', foodCode: 'wheat', carries: ['wheat'], containers: 120 }),
  aWish({ wishId: 'soy', foodCode: 'soy', carries: ['soy'], containers: 24 }),
  aWish({ wishId: 'rice', foodCode: 'rice', containers: 48 }),
  aWish({ wishId: 'beans', foodCode: 'beans', containers: 36 }),
];

test('a day of four foods runs in the order of its changeovers and ends when the line clock says', () => {
  const plan = planLine([FOUR_FOODS], DAY);
  expect(plan.runs.map(({ wishId, fromSerial, toSerial }) => [wishId, fromSerial, toSerial])).toEqual([
    ['beans', 1, 36],
    ['rice', 37, 84],
    ['soy', 85, 108],
    ['wheat', 109, 228],
  ]);
  expect(plan.changeoverMinutes).toBe(30);
  expect(plan.finishSeconds).toBe(211.2 * 60); // 09:00 and 211.2 minutes: 12:31:12
  expect(plan.runs[0]).toMatchObject({ startsAtSecond: 30 * 60, endsAtSecond: 30 * 60 + 36 * 24 });
});

test('one person more is worth what the bottleneck lets it be: at five the filling, at six nothing', () => {
  const five = planLine([FOUR_FOODS], { ...DAY, people: 5 });
  expect(five.withOneMore).toEqual({ finishSeconds: 211.2 * 60, at: ['fill', 'weigh', 'absorber'] });
  expect(planLine([FOUR_FOODS], DAY).withOneMore).toBeNull();
});

test('households take turns by their slots, and within a food by their seats', () => {
  const turns = [
    [aWish({ wishId: 'late seat', seat: 9 }), aWish({ wishId: 'early seat', seat: 2 })],
    [aWish({ wishId: 'next slot', seat: 1 })],
  ];
  expect(planLine(turns, DAY).runs.map(({ wishId }) => wishId)).toEqual([
    'early seat',
    'late seat',
    'next slot',
  ]);
});

// Ready at 30 minutes: 10 cans of 24 s, then 10 that come at 60 and 10 more that were booked for 61 and are in their turn.
test('a run begins no sooner than its household comes, and the day ends as much later', () => {
  const turns = [
    [aWish({ wishId: 'early', notBeforeSecond: 0 })],
    [aWish({ wishId: 'at ten', notBeforeSecond: 60 * 60 })],
    [aWish({ wishId: 'behind', notBeforeSecond: 61 * 60 })],
  ];
  const plan = planLine(turns, DAY);
  expect(plan.runs.map(({ startsAtSecond }) => startsAtSecond)).toEqual([1800, 3600, 3840]);
  expect(plan.waitSeconds).toBe(3600 - (1800 + 240));
  // The wait of 26 minutes holds the rest of 15: the last run ends at 68 minutes, and 45 are for cleaning down.
  expect(plan.finishSeconds).toBe((68 + 45) * 60);
  // A wait of 6 minutes holds 6 of the 15: 30 + 4 + 6 + 4, then 9 of rest and 45.
  const soon = planLine([turns[0] ?? [], [aWish({ wishId: 'at ten', notBeforeSecond: 40 * 60 })]], DAY);
  expect(soon.finishSeconds).toBe((44 + 9 + 45) * 60);
});

test('where the line waits for who comes late, one person more ends nothing sooner than that', () => {
  const late = [[aWish({ wishId: 'early', containers: 1, notBeforeSecond: 0 })]];
  const five = { ...DAY, people: 5 };
  expect(planLine(late, five).withOneMore).not.toBeNull();
  const last = aWish({ wishId: 'late', containers: 1, notBeforeSecond: 7200 });
  const plan = planLine([...late, [last]], five);
  // The last can takes 27 s with five and 24 s with six.
  expect(plan.withOneMore?.finishSeconds).toBe((plan.finishSeconds ?? 0) - 3);
});

// Ten cans of 24 s from minute 30 end at 34, and 15 minutes of rest and 45 of cleaning at 94; an hour from 34 and the rest is 109.
test('a day ends no sooner than the last lid over dry ice may be closed', () => {
  const pails = aWish({ wishId: 'pails', lidWaitMinutes: 60 });
  expect(planLine([[pails]], DAY)).toMatchObject({
    finishSeconds: 109 * 60,
    lids: { lastSecond: 109 * 60, longerSeconds: 15 * 60 },
  });
  // A hundred cans after them take 40 minutes more, in which the lids have waited: 74, and 60 on top.
  const after = [[pails], [aWish({ wishId: 'cans', containers: 100 })]];
  expect(planLine(after, DAY)).toMatchObject({
    finishSeconds: 134 * 60,
    lids: { lastSecond: 109 * 60, longerSeconds: 0 },
  });
  expect(planLine([FOUR_FOODS], DAY).lids).toBeNull();
  // At five a can takes 27 s, which is 30 s more for ten: so much sooner one person more ends the day, lids and all.
  const five = planLine([[pails]], { ...DAY, people: 5 });
  expect(five.withOneMore?.finishSeconds).toBe((five.finishSeconds ?? 0) - 30);
});

test('a food is changed over while the line waits for who brings it', () => {
  const wheat = aWish({ wishId: 'wheat', carries: ['wheat'] });
  const rice = aWish({ wishId: 'rice', foodCode: 'rice', notBeforeSecond: 60 * 60 });
  const plan = planLine([[wheat], [rice]], DAY);
  expect(plan.runs[1]).toMatchObject({ changeoverMinutes: 20, startsAtSecond: 3600 });
  expect(plan.waitSeconds).toBe((60 - 30 - 4 - 20) * 60);
});

test('a food for an allergic eater runs first, and where turns forbid that the clash is told', () => {
  const oats = aWish({ wishId: 'oats', foodCode: 'oats', mustNotMeet: ['wheat'], containers: 500 });
  const wheat = aWish({ wishId: 'wheat', carries: ['wheat'], containers: 1 });
  expect(planLine([[wheat, oats]], DAY)).toMatchObject({ clashes: [], runs: [{ wishId: 'oats' }, {}] });
  expect(planLine([[wheat], [oats]], DAY).clashes).toEqual([
    { wishId: 'oats', allergen: 'wheat', afterWishId: 'wheat' },
  ]);
});

test('foods that can’t be kept apart in any order are shown with their clash', () => {
  const oats = aWish({ wishId: 'oats', foodCode: 'oats', carries: ['gluten'], mustNotMeet: ['wheat'] });
  const wheat = aWish({ wishId: 'wheat', carries: ['wheat'], mustNotMeet: ['gluten'] });
  expect(planLine([[oats, wheat]], DAY).clashes).toHaveLength(1);
});

test('fewer people than a line needs have no finish, and one more may be what is missing', () => {
  const plan = planLine([FOUR_FOODS], { ...DAY, people: 2 });
  expect(plan).toMatchObject({ crew: null, finishSeconds: null });
  expect(plan.withOneMore?.finishSeconds).toBeGreaterThan(0);
});

test('a slot lasts as long as its own containers and the changes between its foods', () => {
  expect(slotMinutes(FOUR_FOODS, DAY)).toBe(Math.ceil((228 * 24) / 60) + 30); // 91.2 minutes, then 30
  expect(slotMinutes([aWish({ wishId: 'one', containers: 1 })], DAY)).toBe(1);
});

const someTurns = fc.array(
  fc.array(
    fc.record({
      seat: fc.integer({ min: 1, max: 9 }),
      foodCode: fc.constantFrom('beans', 'oats', 'rice', 'wheat'),
      mustNotMeet: fc.subarray(['milk', 'wheat']),
      containers: fc.integer({ min: 1, max: 60 }),
    }),
    { maxLength: 5 },
  ),
  { maxLength: 4 },
);

test('every container has one serial, runs follow each other, and nobody overtakes a turn', () => {
  fc.assert(
    fc.property(someTurns, (turns) => {
      const named = turns.map((turn, t) =>
        turn.map((wish, w) =>
          aWish({ ...wish, wishId: `${t}/${w}`, carries: wish.foodCode === 'wheat' ? ['wheat'] : [] }),
        ),
      );
      const { runs, containers } = planLine(named, DAY);
      expect(runs.map(({ wishId }) => wishId).toSorted()).toEqual(
        named
          .flat()
          .map(({ wishId }) => wishId)
          .toSorted(),
      );
      let last = { toSerial: 0, endsAtSecond: 0, turn: 0 };
      for (const run of runs) {
        expect(run.fromSerial).toBe(last.toSerial + 1);
        expect(run.startsAtSecond).toBeGreaterThanOrEqual(last.endsAtSecond);
        expect(Number(run.wishId.split('/')[0])).toBeGreaterThanOrEqual(last.turn);
        last = { ...run, turn: Number(run.wishId.split('/')[0]) };
      }
      expect(last.toSerial).toBe(containers);
    }),
  );
});
