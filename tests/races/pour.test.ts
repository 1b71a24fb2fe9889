import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { type Shelves, shelvesOf, type TestPiece, wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let shelves: Shelves;
let bag: TestPiece;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
  shelves = await shelvesOf(app, storehouse);
  bag = await wheatOf(storehouse, buy, buy.households.Birchall);
});
afterAll(() => app.close());

const PAIL = 'pail-6-gallon-lined';
const own = () => shelves.gramsIn(bag.bagId, buy.households.Birchall.householdId);
const statuses = (answers: readonly { status: number }[]) => answers.map(({ status }) => status).toSorted();

test('of many who pour the same last grams at once exactly one wins, and no bag falls below nothing', async () => {
  const { caller } = buy.households.Birchall;
  const all = await own();
  expect(all).toBe(22_680);
  // Half of the bag and a gram: no two of these fit together.
  const answers = await Promise.all(
    Array.from({ length: 12 }, () => shelves.pour(caller, bag, { kind: PAIL, gramsEach: 11_341 })),
  );
  expect(statuses(answers)).toEqual([201, ...Array.from({ length: 11 }, () => 409)]);
  expect(new Set(answers.filter(({ status }) => status === 409).map(({ body }) => body.code))).toEqual(
    new Set(['not-enough-left']),
  );
  expect(await own()).toBe(11_339);
});

test('one pour sent many times at once under one key is one pour', async () => {
  const { caller } = buy.households.Birchall;
  const before = await own();
  const body = shelves.pourBody(bag);
  const answers = await Promise.all(
    Array.from({ length: 12 }, () =>
      caller.post(`${storehouse.path}/containers`, body, { 'Idempotency-Key': 'a patchy signal' }),
    ),
  );
  for (const { body: answered } of answers) expect(answered).toEqual(answers[0]?.body);
  expect(statuses(answers)).toEqual(Array.from({ length: 12 }, () => 201));
  expect(await own()).toBe(before - 1000);
});

test('a can that is eaten from and poured back at once ends as one of the two', async () => {
  const { caller } = buy.households.Birchall;
  const can = await shelves.aCan(caller, bag);
  const before = await own();
  const [eaten, undone] = await Promise.all([
    caller.post(`${storehouse.path}/containers/${can.id}/uses`, { grams: 1000, to: 'eaten' }),
    caller.post(`${storehouse.path}/pours/${can.entryId}/undoing`, { reason: 'too late' }),
  ]);
  expect(statuses([eaten, undone])).toEqual([201, 409]);
  expect(await own()).toBe(undone.status === 201 ? before + 1000 : before);
  const shown = bodyOf(await caller.get(`${storehouse.path}/containers/${can.id}`));
  expect(shown.grams).toBe(0);
});

test('two phones that take the same can to the kitchen take it once, and an undo at once ends as one of the two', async () => {
  const { caller, householdId } = buy.households.Birchall;
  const can = await shelves.aCan(caller, bag);
  const take = () => caller.post(`${storehouse.path}/containers/${can.id}/kitchen`, {});
  const taken = await Promise.all([take(), take(), take(), take()]);
  expect(statuses(taken)).toEqual([201, 409, 409, 409]);
  expect(await shelves.gramsIn(householdId, householdId)).toBe(1000);
  const first = taken.find(({ status }) => status === 201)?.body;
  const [eaten, undone] = await Promise.all([
    caller.post(`${storehouse.path}/kitchen/uses`, {
      lotId: first.container.lotId,
      grams: 1000,
      to: 'eaten',
    }),
    caller.post(`${storehouse.path}/kitchen/takes/${first.entryId}/undoing`, {}),
  ]);
  // Whoever eats after the undo is over finds nothing of the lot in the kitchen; in the midst of it, not enough.
  const late = undone.status === 201 && eaten.status === 404 ? 404 : 409;
  expect(statuses([eaten, undone])).toEqual([201, late]);
  expect(await shelves.gramsIn(householdId, householdId)).toBe(0);
  expect(await shelves.gramsIn(can.id, householdId)).toBe(undone.status === 201 ? 1000 : 0);
});

test('a bag is put on hold and poured from at once: whatever was poured was poured before the hold', async () => {
  const { caller } = buy.households.Birchall;
  const [held, ...pours] = await Promise.all([
    storehouse.coordinator.post(`${storehouse.path}/bags/${bag.bagId}/holds`, { reason: 'A smell.' }),
    ...Array.from({ length: 6 }, () => shelves.pour(caller, bag, { gramsEach: 500 })),
  ]);
  expect(held?.status).toBe(201);
  const codes = pours.map(({ status, body }) => (status === 201 ? 'poured' : body.code));
  expect(codes.filter((code) => code !== 'poured' && code !== 'bag-on-hold')).toEqual([]);
  expect((await shelves.pour(caller, bag)).body.code).toBe('bag-on-hold');
  const audit = bodyOf(await buy.treasurer.get(`${storehouse.path}/audit`));
  expect(audit.findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
});
