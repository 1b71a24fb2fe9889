import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anItem, aShed, itemBody, type TestItem, type TestShed } from '../support/equipment.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { refusalOf } from '../support/money-books.ts';

// It is Tuesday, 1 September 2026, 10:00 on the wall in Chicago.
const NOW = new Date('2026-09-01T15:00:00Z');
const DAY_MS = 86_400_000;
const GOOD = { laidGrams: 10_000, shownGrams: 10_005, limitGrams: 10 };
let app: TestApp;
let shed: TestShed;
let lead: TestHousehold;
let scale: TestItem;
let count = 0;
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
  lead = await aHousehold(app, shed, 'Lead', { duties: ['packing_lead'] });
});
afterAll(() => app.close());
beforeEach(async () => {
  app.clock.now = NOW;
  scale = await aScale();
});

const aScale = (wish: Record<string, unknown> = {}) =>
  anItem(shed, { ...{ name: `Scale ${++count}`, isScale: true, serviceEveryDays: null }, ...wish }, []);
const check = (wish: Record<string, unknown> = {}, { caller } = shed.keeper, item = scale) =>
  caller.post(`${shed.path}/equipment-units/${item.units[0]?.id}/scale-checks`, { ...GOOD, ...wish });
const standingOf = async (item = scale) =>
  bodyOf(await shed.hale.caller.get(`${shed.path}/scales`)).scales.find(
    ({ itemId }: { itemId: string }) => itemId === item.id,
  );

test('a scale that nobody checked says so, and one that was checked is true or off by its grams', async () => {
  const nothing = { offByGrams: null, daysSince: null, checkedOn: null, limitGrams: null };
  expect(await standingOf()).toMatchObject({ verdict: 'never-checked', unitNo: 1, ...nothing });
  bodyOf(await check(), 201);
  expect(await standingOf()).toMatchObject({
    ...{ verdict: 'true', offByGrams: 5, daysSince: 0, checkedOn: '2026-09-01', limitGrams: 10 },
  });
  bodyOf(await check({ shownGrams: 9_989 }), 201);
  expect(await standingOf()).toMatchObject({ verdict: 'off', offByGrams: -11 });
  const { checks } = bodyOf(await shed.hale.caller.get(`${scale.path}/scale-checks`));
  expect(checks).toMatchObject([
    { shownGrams: 9_989, offByGrams: -11, isTrue: false, checkedBy: 'Keeper Person', unitNo: 1 },
    { shownGrams: 10_005, offByGrams: 5, isTrue: true },
  ]);
});

test('a check is good for thirty days, and one of an earlier day that is written down later does not count', async () => {
  bodyOf(await check(), 201);
  bodyOf(await check({ shownGrams: 9_000, checkedOn: '2026-08-31' }), 201);
  expect(await standingOf()).toMatchObject({ verdict: 'true', offByGrams: 5 });
  app.clock.now = new Date(NOW.getTime() + 30 * DAY_MS);
  expect(await standingOf()).toMatchObject({ verdict: 'true', daysSince: 30 });
  app.clock.now = new Date(NOW.getTime() + 31 * DAY_MS);
  expect(await standingOf()).toMatchObject({ verdict: 'check-is-old', daysSince: 31 });
});

test('the keeper, the packing lead and the coordinator check; a member only reads', async () => {
  for (const caller of [shed.keeper.caller, lead.caller, shed.coordinator])
    bodyOf(await check({}, { ...shed.keeper, caller }), 201);
  expect(await refusalOf(app, () => check({}, shed.hale))).toMatchObject({
    ...{ status: 403, code: 'duty-missing', isUnchanged: true },
  });
});

describe('bad input', () => {
  test.for([
    { wish: { laidGrams: 0 }, field: 'laidGrams', because: 'no weight was laid on' },
    { wish: { laidGrams: -5 }, field: 'laidGrams', because: 'no weight is below zero' },
    { wish: { shownGrams: -1 }, field: 'shownGrams', because: 'what is shown is below zero' },
    { wish: { shownGrams: 10.5 }, field: 'shownGrams', because: 'half grams are no grams' },
    { wish: { limitGrams: -1 }, field: 'limitGrams', because: 'a limit below zero lets nothing be true' },
    { wish: { limitGrams: undefined }, field: 'limitGrams', because: 'nobody makes a limit up' },
    { wish: { laidGrams: 2_000_001 }, field: 'laidGrams', because: 'nobody lifts two tonnes' },
    { wish: { checkedOn: '2026-09-02' }, field: 'checkedOn', because: 'tomorrow has not been' },
    { wish: { checkedOn: '2026-02-30' }, field: 'checkedOn', because: 'there is no such day' },
  ])('$wish is refused, since $because', async ({ wish, field }) => {
    const refused = await refusalOf(app, () => check(wish));
    expect(refused).toMatchObject({ status: 400, code: 'invalid-input', isUnchanged: true });
    expect(refused.fields).toContain(field);
  });

  test('what is no scale is not checked as one, and a piece that is not there is not found', async () => {
    const dolly = await aScale({ isScale: false });
    const wrong = await refusalOf(app, () => check({}, shed.keeper, dolly));
    expect(wrong).toMatchObject({ status: 400, code: 'invalid-input', fields: ['unit'], isUnchanged: true });
    const gone = { ...scale, units: [{ ...scale.units[0], id: scale.id }] } as TestItem;
    expect((await check({}, shed.keeper, gone)).body.code).toBe('thing-not-found');
    expect(await standingOf(dolly)).toBeUndefined();
  });

  test('what was checked as a scale stays one', async () => {
    const edit = { version: 2, ...itemBody({ name: scale.name, isScale: false }) };
    bodyOf(await check(), 201);
    const refused = await refusalOf(app, () => shed.keeper.caller.put(scale.path, edit));
    expect(refused).toMatchObject({ code: 'invalid-input', fields: ['isScale'], isUnchanged: true });
  });
});

test('a retry writes one check, and the database lets nobody change one or check what is no scale', async () => {
  const path = `${shed.path}/equipment-units/${scale.units[0]?.id}/scale-checks`;
  const key = { 'Idempotency-Key': 'the same check twice' };
  bodyOf(await shed.keeper.caller.post(path, GOOD, key), 201);
  bodyOf(await shed.keeper.caller.post(path, GOOD, key), 201);
  expect(bodyOf(await shed.hale.caller.get(`${scale.path}/scale-checks`)).checks).toHaveLength(1);
  const dolly = await aScale({ isScale: false });
  const slipped = app.admin`insert into book.scale_check (storehouse_id, equipment_item_id, equipment_unit_id,
      laid_grams, shown_grams, limit_grams, checked_on, checked_by, recorded_at)
    select storehouse_id, ${dolly.id}, ${dolly.units[0]?.id ?? ''}, laid_grams, shown_grams, limit_grams, checked_on,
      checked_by, recorded_at from book.scale_check where equipment_item_id = ${scale.id}`;
  await expect(slipped).rejects.toThrow(/scale_check_of_a_scale/);
});

describe('a packing day', () => {
  const aDay = async (startsAt: string) => {
    const facts = { name: `Canning ${++count}`, place: 'the hall', lines: 2, startsAt };
    const endsAt = new Date(Date.parse(startsAt) + 6 * 3_600_000).toISOString();
    const { id } = bodyOf(await lead.caller.post(`${shed.path}/packing-sessions`, { ...facts, endsAt }), 201);
    return `${shed.path}/packing-sessions/${id}`;
  };
  const scalesOf = async (day: string) => {
    const { scales, lines } = bodyOf(await lead.caller.get(`${day}/plan`));
    return {
      scales,
      lines: lines.map((line: { scale: { code: string } | null }) => line.scale?.code ?? null),
    };
  };
  const bookFor = async (day: string, item: TestItem) =>
    bodyOf(await lead.caller.post(`${day}/equipment`, { itemId: item.id }), 201);

  test('without a scale says so, and with one tells of each line what it is weighed on', async () => {
    const day = await aDay('2026-09-12T14:00:00Z');
    expect(await scalesOf(day)).toEqual({ scales: [], lines: [null, null] });
    await bookFor(day, scale);
    const first = scale.units[0]?.code;
    expect(await scalesOf(day)).toMatchObject({
      scales: [{ verdict: 'never-checked', code: first }],
      lines: [first, first],
    });
    const other = await aScale();
    await bookFor(day, other);
    expect((await scalesOf(day)).lines).toEqual([first, other.units[0]?.code]);
  });

  test('reckons the thirty days to its own day, and finds a scale that is off off', async () => {
    bodyOf(await check(), 201);
    const [last, after] = [await aDay('2026-10-01T14:00:00Z'), await aDay('2026-10-02T14:00:00Z')];
    await bookFor(last, scale);
    await bookFor(after, scale);
    expect((await scalesOf(last)).scales).toMatchObject([{ verdict: 'true', daysSince: 30 }]);
    expect((await scalesOf(after)).scales).toMatchObject([{ verdict: 'check-is-old', daysSince: 31 }]);
    bodyOf(await check({ shownGrams: 10_011 }), 201);
    expect((await scalesOf(last)).scales).toMatchObject([{ verdict: 'off', offByGrams: 11 }]);
  });
});
