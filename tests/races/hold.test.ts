import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Answer, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { stockOf } from '../support/kitchen.ts';
import { aHall, aPackingSession, aPourBody, bringWheat, type TestHall } from '../support/packing.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  hall = await aHall(app, storehouse);
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const begin = (of: object) => hall.lead.caller.post(at('/holds'), { of, reason: 'A notice of the mill.' });
const isHeld = async (vesselId: string, holdId: string): Promise<boolean> => {
  const rows = await app.admin`select from book.hold_vessel
    where hold_id = ${holdId} and vessel_id = ${vesselId} and ended_at is null`;
  return rows.length === 1;
};

/** Until so many connections of this database wait for a lock. */
async function waitUntilBlocked(count: number): Promise<void> {
  for (let tries = 0; tries < 400; tries += 1) {
    const waiting = await app.admin`select from pg_stat_activity
      where datname = current_database() and wait_event_type = 'Lock'`;
    if (waiting.length >= count) return;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  throw new Error(`fewer than ${count} waited`);
}

/**
 * A hold and a writing at the worst moment: the hold has looked and waits for the book, then something is written down that
 * it did not see, which waits behind it, and the hold is done first.
 */
async function atOnce(hold: () => Promise<Answer>, write: () => Promise<Answer>): Promise<[Answer, Answer]> {
  let both: [Promise<Answer>, Promise<Answer>] | undefined;
  await app.admin.begin(async (tx) => {
    await tx`select from book.book_state where storehouse_id = ${storehouse.storehouseId} for update`;
    const held = hold();
    await waitUntilBlocked(1);
    both = [held, write()];
    await waitUntilBlocked(2);
  });
  if (!both) throw new Error('both were sent');
  return Promise.all(both);
}

test('what is brought in while a hold of its food begins is on hold, and is eaten by nobody', async () => {
  const { Dell } = hall.buy.households;
  const stock = await stockOf(storehouse, Dell);
  const rice = { food: 'rice-white-long', packedOn: '2026-08-10', gramsEach: 2_000 };
  await stock.bringCan(rice); // one that the hold sees
  const foodId = (await foodIdsOf(storehouse))['rice-white-long'];
  const body = {
    ...{ foodId, originNote: 'a neighbour’s', count: 1, gramsEach: 2_000, packedOn: '2026-08-11' },
    containerKindId: hall.shelves.kinds['can-no-10'],
  };
  const [hold, brought] = await atOnce(
    () => begin({ scope: 'food', foodId, fromOn: '2026-08-01', toOn: '2026-08-31' }),
    () => Dell.caller.post(at('/stock'), body),
  );
  const [can] = bodyOf(brought, 201).containers;
  expect(await isHeld(can.id, bodyOf(hold, 201).id)).toBe(true);
  expect((await stock.take(can)).body.code).toBe('on-hold');
});

test('a can that is closed while a hold of its packing day begins is on hold', async () => {
  const day = await aPackingSession(storehouse, hall);
  bodyOf(await hall.lead.caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Birchall');
  const pour = (serials: number) => {
    const grams = Array.from({ length: serials }, () => 2_000);
    return hall.lead.caller.post(`${day}/pours`, aPourBody(hall, { name: 'Birchall', grams }));
  };
  bodyOf(await pour(1), 201);
  const sessionId = day.split('/').at(-1) ?? '';
  const [hold, poured] = await atOnce(
    () => begin({ scope: 'session', sessionId }),
    () => pour(1),
  );
  const { id } = bodyOf(hold, 201);
  bodyOf(poured, 201);
  const closed = await app.admin<{ id: string }[]>`select container_id as id from book.packing_pour
    where packing_session_id = ${sessionId}`;
  expect(closed).toHaveLength(2);
  for (const can of closed) expect(await isHeld(can.id, id)).toBe(true);
});

test('a can that is set into a place while a hold of the place begins is on hold', async () => {
  const { Ashdown, Birchall } = hall.buy.households;
  const facts = { of: 'store', name: 'The damp corner', kind: 'room' };
  const said = { isLit: false, isDamp: true, isRodentProof: false };
  const placeId = bodyOf(await storehouse.coordinator.post(at('/places'), { ...facts, ...said }), 201).id;
  const oats = { food: 'oats-rolled', gramsEach: 1_000 };
  const [there, coming] = [
    await (await stockOf(storehouse, Ashdown)).bringCan(oats),
    await (await stockOf(storehouse, Birchall)).bringCan(oats),
  ];
  const moveOf = (containerId: string) => ({ containerIds: [containerId], placeId });
  bodyOf(await Ashdown.caller.post(at('/container-moves'), moveOf(there.id)), 201);
  const [hold, moved] = await atOnce(
    () => begin({ scope: 'place', placeId }),
    () => Birchall.caller.post(at('/container-moves'), moveOf(coming.id)),
  );
  expect(bodyOf(moved, 201).place.name).toBe('The damp corner');
  const { id } = bodyOf(hold, 201);
  for (const can of [there, coming]) expect(await isHeld(can.id, id)).toBe(true);
});

test('an emptied can that is filled anew where it stands while a hold of the place begins is on hold', async () => {
  const { Ashdown, Birchall } = hall.buy.households;
  const facts = { of: 'store', name: 'The flooded corner', kind: 'room' };
  const said = { isLit: false, isDamp: true, isRodentProof: false };
  const placeId = bodyOf(await storehouse.coordinator.post(at('/places'), { ...facts, ...said }), 201).id;
  const [there, emptied] = [
    await (await stockOf(storehouse, Ashdown)).bringCan({ food: 'oats-rolled', gramsEach: 1_000 }),
    await hall.shelves.aCan(Birchall.caller, hall.wheat.Birchall),
  ];
  for (const [{ caller }, { id }] of [
    [Ashdown, there],
    [Birchall, emptied],
  ] as const)
    bodyOf(await caller.post(at('/container-moves'), { containerIds: [id], placeId }), 201);
  const eaten = { grams: emptied.grams, to: 'eaten' };
  bodyOf(await Birchall.caller.post(at(`/containers/${emptied.id}/uses`), eaten), 201);
  const pour = { bagId: hall.wheat.Birchall.bagId, grams: 500 };
  const [hold, poured] = await atOnce(
    () => begin({ scope: 'place', placeId }),
    () => Birchall.caller.post(at(`/containers/${emptied.id}/pours`), pour),
  );
  bodyOf(poured, 201);
  const { id } = bodyOf(hold, 201);
  for (const can of [there, emptied]) expect(await isHeld(can.id, id)).toBe(true);
});

test('a can is on hold whichever of its filling and its hold comes first, filled by many hands at once', async () => {
  const { Birchall } = hall.buy.households;
  const facts = { of: 'store', name: 'The leaking shed', kind: 'room' };
  const said = { isLit: false, isDamp: true, isRodentProof: false };
  const placeId = bodyOf(await storehouse.coordinator.post(at('/places'), { ...facts, ...said }), 201).id;
  const oats = await (await stockOf(storehouse, Birchall)).bringCan({
    food: 'oats-rolled',
    gramsEach: 1_000,
  });
  const cans = await Promise.all(
    Array.from({ length: 5 }, () => hall.shelves.aCan(Birchall.caller, hall.wheat.Birchall, 100)),
  );
  const containerIds = [oats, ...cans].map(({ id }) => id);
  bodyOf(await Birchall.caller.post(at('/container-moves'), { containerIds, placeId }), 201);
  const usesOf = (id: string) => at(`/containers/${id}/uses`);
  for (const { id } of cans) bodyOf(await Birchall.caller.post(usesOf(id), { grams: 100, to: 'eaten' }), 201);
  const pour = { bagId: hall.wheat.Birchall.bagId, grams: 50 };
  const pourInto = ({ id }: { id: string }) => Birchall.caller.post(at(`/containers/${id}/pours`), pour);
  const [first, second, ...rest] = cans;
  if (!first || !second) throw new Error('five were filled');
  const answers = await Promise.all([
    pourInto(first),
    pourInto(second),
    begin({ scope: 'place', placeId }),
    ...rest.map(pourInto),
  ]);
  expect(answers.map(({ status }) => status)).toEqual([201, 201, 201, 201, 201, 201]);
  const holdId = bodyOf(answers[2] as Answer, 201).id;
  for (const can of cans) expect(await isHeld(can.id, holdId)).toBe(true);
});

test('a bag that lands while its lot, its delivery or its mark is put on hold is on hold, in the database itself', async () => {
  const [row] = await app.admin<{ lotId: string; deliveryId: string; supplierId: string; bagId: string }[]>`
    update book.lot l set supplier_mark = 'K-77' from book.bag b
    where b.lot_id = l.lot_id and b.bag_id = ${hall.wheat.Ashdown.bagId}
    returning l.lot_id as "lotId", b.delivery_id as "deliveryId", l.supplier_id as "supplierId", b.bag_id as "bagId"`;
  if (!row) throw new Error('the bag has a lot');
  const { lotId, deliveryId, supplierId, bagId } = row;
  const scopes = [
    { scope: 'lot', lotId },
    { scope: 'delivery', deliveryId },
    { scope: 'mark', supplierId, mark: 'K-77' },
  ];
  for (const [turn, of] of scopes.entries()) {
    let landing = '';
    const hold = await app.admin.begin(async (tx) => {
      await tx`select set_config('app.storehouse', ${storehouse.storehouseId}, true)`;
      const [vessel] = await tx<{ id: string }[]>`insert into book.vessel (storehouse_id, vessel_id, kind)
        values (${storehouse.storehouseId}, uuidv7(), 'bag') returning vessel_id as id`;
      landing = vessel?.id ?? '';
      await tx`insert into book.bag select (jsonb_populate_record(b, jsonb_build_object('bag_id', ${landing}::text,
        'bag_no', ${900 + turn}::int, 'bag_code', ${`RACE0${turn}`}::text))).* from book.bag b where b.bag_id = ${bagId}`;
      return bodyOf(await begin(of), 201); // done before the bag is
    });
    expect(await isHeld(landing, hold.id)).toBe(true);
  }
});

test('the book holds up to its audit after all of this', async () => {
  const audit = bodyOf(await hall.buy.treasurer.get(at('/audit')));
  expect(audit.findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
});
