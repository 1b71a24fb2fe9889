import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { openHall, type TestHall } from '../support/packing.ts';
import { aFilledDay, aSupply } from '../support/settlement.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
}, 60_000);
afterAll(() => app.close());

const countOf = async (what: string) => {
  const [row] = await app.admin`select count(*)::int as count from book.entry where what = ${what}`;
  return row?.count;
};

test('of two who settle a day at once one posts, and the other is told that it is settled', async () => {
  const can = { name: 'No. 10 cans', kind: 'container', containerKindId: hall.shelves.kinds['can-no-10'] };
  const supplyId = await aSupply(storehouse, hall, can, { pieces: 50, minorUnits: 5_000 });
  const day = await aFilledDay(storehouse, hall, { Ashdown: 3, Dell: 4 });
  const wish = { supplies: [{ supplyId, usedPieces: 7 }] };
  const { seen } = bodyOf(await hall.lead.caller.post(`${day}/settlement-previews`, wish));
  const callers = [hall.lead.caller, storehouse.coordinator, hall.buy.treasurer, hall.lead.caller];
  const answers = await Promise.all(callers.map((one) => one.post(`${day}/settlement`, { ...wish, seen })));
  expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409, 409, 409]);
  expect(await countOf('session-settled')).toBe(1);
  const [pieces] = await app.admin`select (inflow - outflow)::int as left from book.account
    where kind = 'pieces' and owner_id is not null`;
  expect(pieces?.left).toBe(43);
});

test('a purchase and a settlement of the same supply go one after the other, and no cent is lost', async () => {
  const lid = { name: 'Lids', kind: 'lid', containerKindId: hall.shelves.kinds['can-no-10'] };
  const supplyId = await aSupply(storehouse, hall, lid, { pieces: 10, minorUnits: 101 });
  const day = await aFilledDay(storehouse, hall, { Birchall: 3 });
  const wish = { supplies: [{ supplyId, usedPieces: 3 }] };
  const { seen } = bodyOf(await hall.lead.caller.post(`${day}/settlement-previews`, wish));
  const paidBy = { who: 'household', householdId: hall.buy.households.Corran.householdId };
  const bought = { paidBy, lines: [{ supplyId, pieces: 5, minorUnits: 77 }] };
  const [settled, ...purchases] = await Promise.all([
    hall.lead.caller.post(`${day}/settlement`, { ...wish, seen }),
    ...[1, 2, 3].map(() => storehouse.coordinator.post(`${storehouse.path}/supply-purchases`, bought)),
  ]);
  expect(purchases.map(({ status }) => status)).toEqual([201, 201, 201]);
  // Whether it came first or was told to look again, charges and what is left add up to what was paid.
  expect([201, 409]).toContain(settled.status);
  const used = settled.status === 201 ? settled.body.totalMinorUnits : 0;
  const { supplies } = bodyOf(await hall.lead.caller.get(`${storehouse.path}/supplies`));
  const lids = supplies.find(({ id }: { id: string }) => id === supplyId);
  expect(lids.worthMinorUnits + used).toBe(101 + 3 * 77);
});
