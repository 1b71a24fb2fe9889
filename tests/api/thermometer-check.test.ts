import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anItem, aShed, itemBody, type TestItem, type TestShed } from '../support/equipment.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { refusalOf } from '../support/money-books.ts';

// It is Tuesday, 1 September 2026, 10:00 on the wall in Chicago.
const NOW = new Date('2026-09-01T15:00:00Z');
const DAY_MS = 86_400_000;
/** In ice water, four tenths too much. */
const GOOD = { knownTenths: 0, shownTenths: 4, limitTenths: 10 };
let app: TestApp;
let shed: TestShed;
let lead: TestHousehold;
let probe: TestItem;
let count = 0;
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
  lead = await aHousehold(app, shed, 'Lead', { duties: ['packing_lead'] });
});
afterAll(() => app.close());
beforeEach(async () => {
  app.clock.now = NOW;
  probe = await aThing({ isThermometer: true });
});

const aThing = (wish: Record<string, unknown>) =>
  anItem(shed, { name: `Thing ${++count}`, serviceEveryDays: null, ...wish }, []);
const pathOf = (item: TestItem, checks = 'thermometer-checks') =>
  `${shed.path}/equipment-units/${item.units[0]?.id}/${checks}`;
const check = (wish: Record<string, unknown> = {}, { caller } = shed.keeper, item = probe) =>
  caller.post(pathOf(item), { ...GOOD, ...wish });
const allOf = async (list: 'thermometers' | 'scales'): Promise<{ itemId: string }[]> =>
  bodyOf(await shed.hale.caller.get(`${shed.path}/${list}`))[list];
const standingOf = async (item = probe) =>
  (await allOf('thermometers')).find(({ itemId }) => itemId === item.id);
const checksOf = async (item = probe) =>
  bodyOf(await shed.hale.caller.get(`${item.path}/thermometer-checks`)).checks;

test('a thermometer that nobody checked says so, and one that was checked is true or off by its tenths', async () => {
  const nothing = {
    offByTenths: null,
    daysSince: null,
    checkedOn: null,
    knownTenths: null,
    limitTenths: null,
  };
  expect(await standingOf()).toMatchObject({ verdict: 'never-checked', unitNo: 1, ...nothing });
  bodyOf(await check(), 201);
  expect(await standingOf()).toMatchObject({
    ...{ verdict: 'true', offByTenths: 4, daysSince: 0, checkedOn: '2026-09-01', limitTenths: 10 },
  });
  // In water that boils at 95.0 °C, some 1,500 m up, it shows 1.1 °C too little.
  bodyOf(await check({ knownTenths: 950, shownTenths: 939 }, lead), 201);
  expect(await standingOf()).toMatchObject({ verdict: 'off', offByTenths: -11, knownTenths: 950 });
  expect(await checksOf()).toMatchObject([
    {
      knownTenths: 950,
      shownTenths: 939,
      offByTenths: -11,
      isTrue: false,
      checkedBy: 'Lead Person',
      unitNo: 1,
    },
    { knownTenths: 0, shownTenths: 4, offByTenths: 4, isTrue: true, checkedBy: 'Keeper Person' },
  ]);
});

test('a thermometer is no scale, whose list and checks know nothing of it', async () => {
  bodyOf(await check({ knownTenths: -180, shownTenths: -184 }), 201);
  expect(await standingOf()).toMatchObject({ verdict: 'true', offByTenths: -4 });
  expect((await allOf('scales')).map(({ itemId }) => itemId)).not.toContain(probe.id);
  expect(bodyOf(await shed.hale.caller.get(`${probe.path}/scale-checks`)).checks).toEqual([]);
  const scale = await aThing({ isScale: true });
  const weighed = { laidGrams: 10_000, shownGrams: 10_005, limitGrams: 10 };
  bodyOf(await shed.keeper.caller.post(pathOf(scale, 'scale-checks'), weighed), 201);
  expect(await checksOf(scale)).toEqual([]);
  expect(await standingOf(scale)).toBeUndefined();
});

test('a check is good for ninety days (job map 8), and one of an earlier day that is written down later does not count', async () => {
  bodyOf(await check(), 201);
  bodyOf(await check({ shownTenths: 50, checkedOn: '2026-08-31' }), 201);
  expect(await standingOf()).toMatchObject({ verdict: 'true', offByTenths: 4 });
  app.clock.now = new Date(NOW.getTime() + 90 * DAY_MS);
  expect(await standingOf()).toMatchObject({ verdict: 'true', daysSince: 90 });
  app.clock.now = new Date(NOW.getTime() + 91 * DAY_MS);
  expect(await standingOf()).toMatchObject({ verdict: 'check-is-old', daysSince: 91 });
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
    { wish: { knownTenths: -1001 }, field: 'knownTenths', because: 'no freezer is that cold' },
    { wish: { knownTenths: -2732 }, field: 'knownTenths', because: 'nothing is colder than absolute zero' },
    { wish: { shownTenths: 3001 }, field: 'shownTenths', because: 'no oven is that hot' },
    { wish: { shownTenths: 0.5 }, field: 'shownTenths', because: 'parts of a tenth are no tenths' },
    { wish: { shownTenths: undefined }, field: 'shownTenths', because: 'somebody has to read it' },
    { wish: { limitTenths: -1 }, field: 'limitTenths', because: 'a limit below zero lets nothing be true' },
    { wish: { limitTenths: 201 }, field: 'limitTenths', because: 'nobody goes by such a thermometer' },
    { wish: { limitTenths: undefined }, field: 'limitTenths', because: 'nobody makes a limit up' },
    { wish: { checkedOn: '2026-09-02' }, field: 'checkedOn', because: 'tomorrow has not been' },
    { wish: { checkedOn: '2026-02-30' }, field: 'checkedOn', because: 'there is no such day' },
  ])('$wish is refused, since $because', async ({ wish, field }) => {
    const refused = await refusalOf(app, () => check(wish));
    expect(refused).toMatchObject({ status: 400, code: 'invalid-input', isUnchanged: true });
    expect(refused.fields).toContain(field);
  });

  test('what is no thermometer is not checked as one, nor a thermometer as a scale', async () => {
    const scale = await aThing({ isScale: true });
    const refused = { status: 400, code: 'invalid-input', fields: ['unit'], isUnchanged: true };
    for (const item of [scale, await aThing({})])
      expect(await refusalOf(app, () => check({}, shed.keeper, item))).toMatchObject(refused);
    const weighed = { laidGrams: 10_000, shownGrams: 10_005, limitGrams: 10 };
    const asScale = () => shed.keeper.caller.post(pathOf(probe, 'scale-checks'), weighed);
    expect(await refusalOf(app, asScale)).toMatchObject(refused);
    const gone = { ...probe, units: [{ ...probe.units[0], id: probe.id }] } as TestItem;
    expect((await check({}, shed.keeper, gone)).body.code).toBe('thing-not-found');
  });

  test('a thing is a scale or a thermometer, and what was checked as one stays one', async () => {
    const { name } = probe;
    const refused = { status: 400, code: 'invalid-input', fields: ['isThermometer'], isUnchanged: true };
    const edit = (wish: Record<string, unknown>) =>
      refusalOf(app, () =>
        shed.keeper.caller.put(probe.path, { version: 2, ...itemBody({ name, ...wish }) }),
      );
    expect(await edit({ isScale: true, isThermometer: true })).toMatchObject(refused);
    const both = itemBody({ name: 'Both', isScale: true, isThermometer: true });
    expect(await refusalOf(app, () => shed.keeper.caller.post(`${shed.path}/equipment`, both))).toMatchObject(
      refused,
    );
    bodyOf(await check(), 201);
    expect(await edit({ isThermometer: false })).toMatchObject(refused);
    expect(await edit({ isScale: true })).toMatchObject(refused);
  });

  test('what was never checked may turn from a scale into a thermometer', async () => {
    const thing = await aThing({ isScale: true });
    const edit = { version: 2, ...itemBody({ name: thing.name, isThermometer: true }) };
    expect(bodyOf(await shed.keeper.caller.put(thing.path, edit))).toMatchObject({
      ...{ isScale: false, isThermometer: true },
    });
    bodyOf(await check({}, shed.keeper, thing), 201);
  });
});

test('a retry writes one check, and the database keeps each kind to its own things and figures', async () => {
  const key = { 'Idempotency-Key': 'the same reading twice' };
  bodyOf(await shed.keeper.caller.post(pathOf(probe), GOOD, key), 201);
  bodyOf(await shed.keeper.caller.post(pathOf(probe), GOOD, key), 201);
  expect(await checksOf()).toHaveLength(1);
  const dolly = await aThing({});
  const slip = (wish: Record<string, unknown>) => {
    const row = {
      item: probe.id,
      unit: probe.units[0]?.id ?? '',
      isScale: false,
      grams: null,
      limit: 10,
      ...wish,
    };
    return app.admin`insert into book.scale_check (storehouse_id, equipment_item_id, equipment_unit_id, is_scale,
        is_thermometer, laid_grams, known_tenths, shown_tenths, limit_tenths, checked_on, checked_by, recorded_at)
      select storehouse_id, ${row.item}, ${row.unit}, ${row.isScale}, true, ${row.grams}, known_tenths, shown_tenths,
        ${row.limit}, checked_on, checked_by, recorded_at from book.scale_check where equipment_item_id = ${probe.id}`;
  };
  const other = { item: dolly.id, unit: dolly.units[0]?.id ?? '' };
  await expect(slip(other)).rejects.toThrow(/scale_check_of_a_thermometer/);
  await expect(slip({ isScale: true })).rejects.toThrow(/scale_check_(of_one_kind|grams_of_a_scale)/);
  await expect(slip({ grams: 5 })).rejects.toThrow(/scale_check_grams_of_a_scale/);
  await expect(slip({ limit: null })).rejects.toThrow(/scale_check_degrees_of_a_thermometer/);
  await expect(slip({ limit: -1 })).rejects.toThrow(/scale_check_degrees_limit_known/);
});
