import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { stockOf, type TestStock } from '../support/kitchen.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let dell: TestHousehold;
let stock: TestStock;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  dell = await aHousehold(app, storehouse, 'Dell');
  stock = await stockOf(storehouse, dell);
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const lotOf = async (can: { id: string }) => (await stock.shown(can)).lotId;
const inKitchen = async (lotId: string) =>
  (await stock.kitchen()).lots.find((lot: { lotId: string }) => lot.lotId === lotId);

describe('taking a container to the kitchen', () => {
  test('moves all of it in one step and opens it; it stays stock at home and feeds as long as before', async () => {
    await dell.caller.post(at(`/households/${dell.householdId}/eaters`), { name: 'Ida', birthOn: '1990' });
    const can = await stock.bringCan();
    const covered = async () => bodyOf(await dell.caller.get(at('/coverage')));
    const before = await covered();
    expect(before.wholeDays ?? before.byMass).not.toBeNull();
    const taken = bodyOf(await stock.take(can), 201);
    expect(taken).toMatchObject({
      takenGrams: 2400,
      food: { code: 'wheat-hard-red-winter' },
      container: { code: can.code, grams: 0, openedOn: '2026-09-01' },
    });
    expect(await stock.kitchen()).toMatchObject({
      lots: [{ grams: 2400, sinceOn: '2026-09-01', food: { nameEn: 'Hard red winter wheat' } }],
      takes: [{ entryId: taken.entryId, grams: 2400, container: { code: can.code } }],
    });
    expect(await covered()).toEqual(before);
    const { tables } = bodyOf(await dell.caller.get(at(`/households/${dell.householdId}/take-along`)));
    expect(tables.holdings).toMatchObject([{ vesselKind: 'kitchen', grams: 2400, containerCode: null }]);
  });

  test('or some of it, and the rest another day: the kitchen has it since the oldest taking that is left', async () => {
    const can = await stock.bringCan();
    const lotId = await lotOf(can);
    bodyOf(await stock.take(can, 400), 201);
    app.clock.now = new Date('2026-09-11T15:00:00Z');
    bodyOf(await stock.take(can), 201);
    expect(await inKitchen(lotId)).toMatchObject({ grams: 2400, sinceOn: '2026-09-01' });
    expect(bodyOf(await stock.eat(lotId, 400), 201)).toEqual({ lotId, grams: 2000 });
    expect(await inKitchen(lotId)).toMatchObject({ grams: 2000, sinceOn: '2026-09-11' });
    expect(await stock.shown(can)).toMatchObject({ grams: 0, openedOn: '2026-09-01' });
  });

  test('is refused once a look found it unfit for a table', async () => {
    const can = await stock.bringCan();
    const look = { how: 'opened', findings: ['rancid-smell'], outcome: 'animals' };
    bodyOf(await dell.caller.post(at(`/containers/${can.id}/inspections`), look), 201);
    expect(await refusalOf(app, () => stock.take(can))).toEqual(refused(409, 'inspection-forbids', 'to'));
  });

  test('is refused for more than is in it, for an empty one, and for a neighbour’s', async () => {
    const can = await stock.bringCan();
    expect(await refusalOf(app, () => stock.take(can, 2401))).toEqual(
      refused(409, 'not-enough-left', 'grams'),
    );
    bodyOf(await stock.take(can), 201);
    expect((await stock.take(can)).body.detail).toBe(`There are 0 g left in ${can.code}.`);
    expect(await refusalOf(app, () => stock.take(can))).toEqual(refused(409, 'not-enough-left', 'grams'));
    const another = await stockOf(storehouse, await aHousehold(app, storehouse, 'Elder'));
    const full = await stock.bringCan();
    expect(await refusalOf(app, () => another.take(full))).toEqual(refused(404, 'thing-not-found'));
    expect((await another.kitchen()).lots).toEqual([]);
  });
});

describe('undoing it', () => {
  test('puts it back, shut, when that taking opened it', async () => {
    const can = await stock.bringCan();
    const lotId = await lotOf(can);
    const { entryId } = bodyOf(await stock.take(can), 201);
    const back = bodyOf(await stock.undo(entryId), 201);
    expect(back.container).toMatchObject({ grams: 2400, openedOn: null });
    expect(await inKitchen(lotId)).toBeUndefined();
    expect(await refusalOf(app, () => stock.undo(entryId))).toEqual(refused(409, 'already-reversed'));
  });

  test('leaves open what was opened before, or taken from since', async () => {
    const opened = await stock.bringCan();
    bodyOf(await dell.caller.post(at(`/containers/${opened.id}/uses`), { grams: 100, to: 'eaten' }), 201);
    const second = bodyOf(await stock.take(opened), 201);
    expect(bodyOf(await stock.undo(second.entryId), 201).container.openedOn).toBe('2026-09-11');
    const since = await stock.bringCan();
    const first = bodyOf(await stock.take(since, 100), 201);
    bodyOf(await stock.take(since, 200), 201);
    expect(bodyOf(await stock.undo(first.entryId), 201).container).toMatchObject({
      grams: 2200,
      openedOn: '2026-09-11',
    });
  });

  test('is refused once it was eaten from, and to whoever did not take it', async () => {
    const can = await stock.bringCan();
    const lotId = await lotOf(can);
    const { entryId } = bodyOf(await stock.take(can), 201);
    bodyOf(await stock.eat(lotId, 1), 201);
    expect(await refusalOf(app, () => stock.undo(entryId))).toEqual(refused(409, 'cannot-reverse'));
    const shown: { entryId: string }[] = (await stock.kitchen()).takes;
    expect(shown.map((take) => take.entryId)).not.toContain(entryId);
    const another = await stockOf(storehouse, await aHousehold(app, storehouse, 'Fenn'));
    expect(await refusalOf(app, () => another.undo(entryId))).toEqual(refused(404, 'thing-not-found'));
  });
});

test('eating from the kitchen is refused past what is there, and for what never was there', async () => {
  const can = await stock.bringCan();
  const lotId = await lotOf(can);
  expect(await refusalOf(app, () => stock.eat(lotId, 1))).toEqual(refused(404, 'thing-not-found'));
  bodyOf(await stock.take(can, 500), 201);
  expect(await refusalOf(app, () => stock.eat(lotId, 501))).toEqual(refused(409, 'not-enough-left', 'grams'));
  expect(await refusalOf(app, () => stock.eat(lotId, 500, 'moon'))).toEqual(
    refused(400, 'invalid-input', 'to'),
  );
  expect(bodyOf(await stock.eat(lotId, 500, 'composted'), 201).grams).toBe(0);
});

test('a household that leaves takes its kitchen along, and the audit still balances', async () => {
  const garth = await aHousehold(app, storehouse, 'Garth');
  const own = await stockOf(storehouse, garth);
  const can = await own.bringCan();
  bodyOf(await own.take(can, 900), 201);
  const left = bodyOf(
    await garth.caller.post(at(`/households/${garth.householdId}/leaving`), { version: 1 }),
  );
  expect(left.takenAlong.map(({ grams, vesselCode }: never) => [grams, vesselCode]).toSorted()).toEqual([
    [1500, can.code],
    [900, null],
  ]);
  const held = await app.admin`select 1 from book.account where owner_id = ${garth.householdId}
    and vessel_kind in ('bag', 'container', 'kitchen') and inflow <> outflow`;
  expect(held).toHaveLength(0);
  const { householdId } = dell;
  const [sums] = await app.admin<{ out: number; inside: number }[]>`
    select coalesce(sum(inflow - outflow) filter (where vessel_kind not in ('bag', 'container', 'kitchen')), 0)::int as out,
      coalesce(sum(inflow - outflow) filter (where vessel_kind in ('bag', 'container', 'kitchen')), 0)::int as inside
    from book.account where kind = 'mass' and owner_id = ${householdId}`;
  const [came] = await app.admin<{ grams: number }[]>`select count(*)::int * 2400 as grams
    from book.container where household_id = ${householdId}`;
  expect((sums?.out ?? 0) + (sums?.inside ?? 0)).toBe(came?.grams);
});
