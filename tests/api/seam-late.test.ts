import { spellCode } from '@sheafbook/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import { aSeamer, type TestSeamer, THICK } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
});
afterAll(() => app.close());

const MINUTE = 60_000;
let days = 0;

/** A day that began half an hour ago, with a seamer of its own; what it is told happened so many minutes after it began. */
async function aLateDay() {
  const seamer: TestSeamer = await aSeamer(storehouse, hall, `Seamer ${++days}`);
  const day = await aPackingSession(storehouse, hall);
  const begun = app.clock.now.getTime();
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Ashdown');
  app.clock.now = new Date(begun + 30 * MINUTE);
  const at = (minute: number) => new Date(begun + minute * MINUTE).toISOString();
  const wish = { name: 'Ashdown', targetGrams: 10 } as const;
  return {
    ...{ day, seamer, at },
    pour: (minute: number, ...grams: number[]) =>
      hall.lead.caller.post(`${day}/pours`, { ...aPourBody(hall, { ...wish, grams }), pouredAt: at(minute) }),
    check: (minute: number, said: Record<string, unknown> = {}) =>
      seamer.check(day, { checkedAt: at(minute), ...said }),
    /** The grams of what is in doubt and was not cleared: what tells the containers apart, whatever number they got. */
    doubted: async (): Promise<number[]> =>
      bodyOf(await hall.lead.caller.get(`${day}/seals`))
        .windows.flatMap(({ suspects }: { suspects: { grams: number; state: string }[] }) => suspects)
        .filter(({ state }: { state: string }) => state !== 'cleared')
        .map(({ grams }: { grams: number }) => grams)
        .toSorted((a: number, b: number) => a - b),
    unchecked: async () => bodyOf(await hall.lead.caller.get(`${day}/log`)).unchecked,
  };
}
type LateDay = Awaited<ReturnType<typeof aLateDay>>;

describe('a good check that waited', () => {
  test('vouches for what was closed before it was made, not for what was closed until it arrived', async () => {
    const late = await aLateDay();
    bodyOf(await late.pour(5, 11, 12), 201);
    bodyOf(await late.pour(15, 13), 201);
    const { check } = bodyOf(await late.check(10), 201);
    expect([check.checkedAt, check.recordedAt]).toEqual([late.at(10), app.clock.now.toISOString()]);
    expect(await late.unchecked()).toMatchObject([{ fromSerial: 3, toSerial: 3 }]);
    bodyOf(await late.check(20, { measures: THICK }), 201);
    expect(await late.doubted()).toEqual([13]);
  });

  test('that names a number vouches for nothing beyond it', async () => {
    const late = await aLateDay();
    bodyOf(await late.pour(5, 11, 12, 13), 201);
    bodyOf(await late.check(10, { serial: 2 }), 201);
    bodyOf(await late.check(20, { measures: THICK }), 201);
    expect(await late.doubted()).toEqual([13]);
  });

  test('vouches for nothing of its own minute, since nobody knows which was first', async () => {
    const late = await aLateDay();
    bodyOf(await late.pour(10, 11), 201);
    bodyOf(await late.check(10), 201);
    expect(await late.unchecked()).toMatchObject([{ fromSerial: 1, toSerial: 1 }]);
  });
});

test('a failed check that waited holds what was closed after it too, and stops the machine since then', async () => {
  const late = await aLateDay();
  bodyOf(await late.check(1), 201);
  bodyOf(await late.pour(5, 11), 201);
  bodyOf(await late.pour(15, 12), 201);
  bodyOf(await late.check(20), 201);
  const { machine, check } = bodyOf(await late.check(10, { measures: THICK }), 201);
  expect(machine.outSince).toBe(late.at(10));
  expect(check.suspects).toEqual({ fromSerial: 1, toSerial: 2 });
  expect(await late.doubted()).toEqual([11, 12]);
  expect((await late.pour(25, 13)).body.code).toBe('line-is-stopped');
});

test('what was poured before its machine stopped and is told late is held with the rest, and its owner is told', async () => {
  const late = await aLateDay();
  const { caller } = hall.buy.households.Ashdown;
  const heard = async () => bodyOf(await caller.get(`${storehouse.path}/notices`)).notices;
  bodyOf(await late.pour(5, 11), 201);
  bodyOf(await late.check(10, { measures: THICK }), 201);
  const before = (await heard()).length;
  const { containers } = bodyOf(await late.pour(8, 12), 201);
  expect(await late.doubted()).toEqual([11, 12]);
  const notices = await heard();
  expect(notices).toHaveLength(before + 1);
  const [{ code }] = containers;
  expect(notices[0]).toMatchObject({ kind: 'held', isSafety: true });
  expect(notices[0].words).toBe(
    `What was closed before a seal failed its check, and was written down only now, is in doubt too. Yours: ${spellCode(code)}. Do not open them, eat from them or give them away until you hear more.`,
  );
});

test('three good trials that came before the failed one they follow let the machine run, and what was closed between is held', async () => {
  const late = await aLateDay();
  bodyOf(await late.pour(5, 11), 201);
  bodyOf(await late.pour(12, 12), 201);
  for (const minute of [14, 15, 16]) bodyOf(await late.check(minute), 201);
  bodyOf(await late.pour(18, 13), 201);
  expect(bodyOf(await late.check(10, { measures: THICK }), 201).machine.outSince).toBeNull();
  expect(await late.doubted()).toEqual([11, 12]);
});

test('a check that is still to come, or was made before the day began, is none', async () => {
  const late = await aLateDay();
  for (const minute of [40, -2])
    expect(await refusalOf(app, () => late.check(minute))).toEqual(
      refused(400, 'invalid-input', 'checkedAt'),
    );
});

type Said = (late: LateDay) => Promise<{ status: number }>;
const ordersOf = <One>(all: readonly One[]): One[][] =>
  all.length === 0
    ? [[]]
    : all.flatMap((one, at) => ordersOf(all.toSpliced(at, 1)).map((rest) => [one, ...rest]));

// Job map 15, number 20.
const STORIES: readonly { because: string; said: readonly Said[]; doubted: number[] }[] = [
  {
    because: 'a good check between two pours, then a fault',
    said: [
      (late) => late.pour(5, 11),
      (late) => late.check(10),
      (late) => late.pour(12, 12),
      (late) => late.check(20, { measures: THICK }),
    ],
    doubted: [12],
  },
  {
    because: 'two faults, and a good check between them that lets nothing go which the first has found',
    said: [
      (late) => late.pour(5, 11),
      (late) => late.check(10, { measures: THICK }),
      (late) => late.check(12),
      (late) => late.check(14, { measures: THICK }),
    ],
    doubted: [11],
  },
];
test.for(STORIES)(
  'whatever order two phones’ words arrive in, the same is in doubt: $because',
  {
    timeout: 120_000,
  },
  async ({ said, doubted }) => {
    for (const order of ordersOf(said)) {
      const late = await aLateDay();
      for (const say of order) expect((await say(late)).status).toBe(201);
      expect(await late.doubted()).toEqual(doubted);
    }
  },
);
