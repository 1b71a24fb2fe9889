import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf } from '../support/fingerprint.ts';
import { aPackingSession, cansOf, openHall, type TestHall } from '../support/packing.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let canId: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  const { id } = bodyOf(
    await hall.lead.caller.post(at('/supplies'), {
      ...{ name: 'No. 10 cans', kind: 'container', containerKindId: canKind() },
      ...{ packPieces: 6, packMinorUnits: 720 },
    }),
    201,
  );
  canId = id;
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const canKind = () => hall.shelves.kinds['can-no-10'] ?? '';
const lead = () => hall.lead.caller;
const buy = (body: unknown, caller = lead()) => caller.post(at('/supply-purchases'), body);
const byHousehold = (pieces: number, minorUnits: number, supplyId = canId) => ({
  paidBy: { who: 'household', householdId: hall.buy.households.Corran.householdId },
  lines: [{ supplyId, pieces, minorUnits }],
});
const canNow = async () => {
  const { supplies } = bodyOf(await lead().get(at('/supplies')));
  return supplies.find(({ id }: { id: string }) => id === canId);
};
const balanceOf = async (number: string): Promise<number> => {
  const { rows } = bodyOf(await hall.buy.treasurer.get(at('/trial-balance')));
  const row = rows.find((one: { number: string }) => one.number === number);
  return row ? row.debitMinorUnits - row.creditMinorUnits : 0;
};

test('what a household paid in the shop is on the shelf, stands at cost, and is owed to it', async () => {
  const owed = await balanceOf('1100');
  expect(bodyOf(await buy(byHousehold(12, 1_440)), 201)).toMatchObject({
    ...{ what: 'supplies-bought', minorUnits: 1_440 },
  });
  expect(await canNow()).toMatchObject({ onHandPieces: 12, worthMinorUnits: 1_440 });
  expect([await balanceOf('1300'), (await balanceOf('1100')) - owed]).toEqual([1_440, -1_440]);
});

test('a supplier waits for what it sold; the bank and the tin are the treasurer’s', async () => {
  const line = { supplyId: canId, pieces: 6, minorUnits: 690 };
  const owed = await balanceOf('2000');
  bodyOf(await buy({ paidBy: { who: 'supplier', supplierId: hall.buy.supplierId }, lines: [line] }), 201);
  expect((await balanceOf('2000')) - owed).toBe(-690);
  const fromBank = { paidBy: { who: 'till', till: 'bank' }, lines: [line] };
  expect(await refusalOf(app, () => buy(fromBank))).toMatchObject({ status: 403, code: 'duty-missing' });
  const bank = await balanceOf('1000');
  bodyOf(await buy(fromBank, hall.buy.treasurer), 201);
  expect((await balanceOf('1000')) - bank).toBe(-690);
});

test('a count says what the book said; what is missing is a loss at average cost', async () => {
  const { onHandPieces, worthMinorUnits } = await canNow();
  expect([onHandPieces, worthMinorUnits]).toEqual([24, 2_820]);
  const count = (countedPieces: number, bookPieces: number) =>
    lead().post(at(`/supplies/${canId}/counts`), { countedPieces, bookPieces, reason: 'dented' });
  expect(await refusalOf(app, () => count(22, 23))).toMatchObject({ status: 409, code: 'stale-version' });
  expect(await refusalOf(app, () => count(24, 24))).toMatchObject({ code: 'nothing-to-post' });
  bodyOf(await count(22, 24), 201);
  expect(await canNow()).toMatchObject({ onHandPieces: 22, worthMinorUnits: 2_585 });
  expect(await balanceOf('5000')).toBe(235);
  bodyOf(await count(24, 22), 201);
  expect(await canNow()).toMatchObject({ onHandPieces: 24, worthMinorUnits: 2_820 });
});

test('a purchase is taken back as any entry is, but not once its pieces are gone', async () => {
  const { entryId } = bodyOf(await buy(byHousehold(6, 600)), 201);
  const undo = () =>
    hall.buy.treasurer.post(at(`/entries/${entryId}/reversal`), { reason: 'the wrong shop' });
  const { onHandPieces } = await canNow();
  const count = (countedPieces: number, bookPieces: number) =>
    lead().post(at(`/supplies/${canId}/counts`), { countedPieces, bookPieces, reason: 'rust' });
  bodyOf(await count(3, onHandPieces), 201);
  expect(await refusalOf(app, undo)).toMatchObject({ code: 'cannot-reverse' });
  expect((await undo()).body.detail).toContain('on hand: No. 10 cans');
  bodyOf(await count(onHandPieces, 3), 201);
  bodyOf(await undo(), 201);
  expect((await canNow()).onHandPieces).toBe(24);
});

test('one supply of a sort is kept, and one that is on hand is not put away', async () => {
  const again = {
    name: 'Cans of another maker',
    kind: 'container',
    containerKindId: canKind(),
    packPieces: 1,
  };
  expect(await refusalOf(app, () => lead().post(at('/supplies'), again))).toMatchObject({
    code: 'already-there',
    fields: ['kind'],
  });
  const noKind = { name: 'Lids', kind: 'lid', packPieces: 50 };
  expect(await refusalOf(app, () => lead().post(at('/supplies'), noKind))).toMatchObject({
    code: 'invalid-input',
    fields: ['containerKindId'],
  });
  const away = { version: 1, name: 'No. 10 cans', packPieces: 6, packMinorUnits: 720, isRetired: true };
  expect(await refusalOf(app, () => lead().put(at(`/supplies/${canId}`), away))).toMatchObject({
    code: 'in-use',
  });
});

test('the list of a session tells to the piece what is needed, what is there, and the packs to buy', async () => {
  const day = await aPackingSession(storehouse, hall);
  for (const body of [
    { name: 'Absorbers', kind: 'absorber', sizeMillilitres: 300, packPieces: 100, packMinorUnits: 1_250 },
    { name: 'Lids', kind: 'lid', containerKindId: canKind(), packPieces: 50, packMinorUnits: 400 },
    {
      ...{ name: 'Boxes', kind: 'carton', containerKindId: canKind(), piecesEach: 6 },
      ...{ packPieces: 5, packMinorUnits: 500 },
    },
  ])
    bodyOf(await lead().post(at('/supplies'), body), 201);
  const { Ashdown, Birchall } = hall.buy.households;
  bodyOf(await Ashdown.caller.put(`${day}/wishes`, { wishes: [cansOf(hall, { containers: 15 })] }));
  bodyOf(await Birchall.caller.put(`${day}/wishes`, { wishes: [cansOf(hall, { containers: 13 })] }));
  const body = bodyOf(await lead().get(`${day}/supplies`));
  type Line = { supply: { name: string }; neededPieces: number; packsToBuy: number; costMinorUnits: number };
  expect(
    body.lines.map(({ supply, neededPieces, packsToBuy, costMinorUnits }: Line) => [
      ...[supply.name, neededPieces, packsToBuy, costMinorUnits],
    ]),
  ).toEqual([
    ['Absorbers', 30, 1, 1_250],
    ['Boxes', 5, 1, 500], // 28 cans, six in each
    ['No. 10 cans', 29, 1, 720],
    ['Lids', 29, 1, 400],
  ]);
  expect(body).toMatchObject({ containers: 28, costMinorUnits: 2_870, unkept: [] });
  const noKind = { name: 'Boxes of nothing', kind: 'carton', piecesEach: 6, packPieces: 5 };
  expect(await refusalOf(app, () => lead().post(at('/supplies'), noKind))).toMatchObject({
    ...{ code: 'invalid-input', fields: ['containerKindId'], isUnchanged: true },
  });
  // 24 s a can and 20 minutes in the open: 50 packets, so a pack of 100 goes into two jars (job map 7.1).
  expect(body.lines[0].pack).toEqual({
    servedInWindow: 50,
    jars: 2,
    packSeconds: 2_400,
    windowSeconds: 1_200,
  });
  expect((await hall.buy.households.Dell.caller.get(`${day}/supplies`)).status).toBe(403);
});
