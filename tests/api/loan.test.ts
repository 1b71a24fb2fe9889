import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import {
  anItem,
  aShed,
  book,
  bringBack,
  handOut,
  type TestItem,
  type TestShed,
  ticksOf,
} from '../support/equipment.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { refusalOf } from '../support/money-books.ts';

const NOW = new Date('2026-09-01T15:00:00Z');
const SATURDAY = ['2026-09-05T09:00', '2026-09-05T18:00'] as const;
const [START, DUE] = [new Date('2026-09-05T14:00:00Z'), new Date('2026-09-05T23:00:00Z')];
const HOUR = 3_600_000;
let app: TestApp;
let shed: TestShed;
let treasurer: TestHousehold;
let sealer: TestItem;
let count = 0;
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
  treasurer = await aHousehold(app, shed, 'Treasurer', { duties: ['treasurer'] });
});
afterAll(() => app.close());
beforeEach(async () => {
  app.clock.now = NOW;
  sealer = await anItem(shed, { name: `Sealer ${++count}` });
});

const at = (instant: Date, hoursLater = 0) => {
  app.clock.now = new Date(instant.getTime() + hoursLater * HOUR);
};
const balanceOf = async ({ householdId }: TestHousehold): Promise<number> =>
  bodyOf(await treasurer.caller.get(`${shed.path}/households/${householdId}/balance`)).balanceMinorUnits;
async function accountOf(kind: string, causeId: string): Promise<number> {
  const [row] = await app.admin<{ balance: string }[]>`select coalesce(sum(inflow - outflow), 0) as balance
    from book.account where kind = ${kind} and cause_id = ${causeId}`;
  return Number(row?.balance);
}

/** A loan of Hale's for Saturday that is out. */
async function aLoan(more: Record<string, unknown> = {}, of: TestItem = sealer): Promise<string> {
  const { id } = bodyOf(await book(shed.hale.caller, of, SATURDAY), 201);
  at(START);
  return bodyOf(await handOut(shed.keeper.caller, shed, id, of, more), 201).id;
}

test('the keeper hands out what was booked, and its deposit goes into the tin', async () => {
  const before = await balanceOf(shed.hale);
  const id = await aLoan({ depositFrom: 'cash' });
  const loan = bodyOf(await shed.hale.caller.get(`${shed.path}/loans/${id}`));
  expect(loan).toMatchObject({
    outAt: START.toISOString(),
    dueAt: DUE.toISOString(),
    depositMinorUnits: 5000,
  });
  expect(loan.parts.map(({ name, outPieces }: Record<string, unknown>) => [name, outPieces])).toEqual([
    ['Chuck', 1],
    ['Hex key', 2],
    ['Seam gauge', 1],
  ]);
  expect([await accountOf('loan_deposit', id), (await balanceOf(shed.hale)) - before]).toEqual([-5000, 0]);
  const held = bodyOf(await treasurer.caller.get(`${shed.path}/deposits-held`));
  expect(held.loanDeposits.find(({ loanId }: { loanId: string }) => loanId === id)).toMatchObject({
    ...{ household: 'Hale', item: sealer.name, heldMinorUnits: 5000, isOverdue: false },
  });
});

test('a borrower takes it alone, the deposit standing on the balance; money over the counter takes the keeper', async () => {
  const before = await balanceOf(shed.hale);
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  at(START);
  const cash = () => handOut(shed.hale.caller, shed, id, sealer, { depositFrom: 'cash' });
  expect(await refusalOf(app, cash)).toMatchObject({
    ...{ status: 403, code: 'duty-missing', fields: ['depositFrom'], isUnchanged: true },
  });
  const neighbour = () => handOut(shed.moss.caller, shed, id, sealer);
  expect(await refusalOf(app, neighbour)).toMatchObject({ code: 'not-your-household', isUnchanged: true });
  bodyOf(await handOut(shed.hale.caller, shed, id, sealer), 201);
  expect((await balanceOf(shed.hale)) - before).toBe(5000);
});

test('every part is ticked, no more than there is, and nothing goes without a critical one', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  at(START);
  const hand = (parts: unknown) =>
    refusalOf(app, () => handOut(shed.keeper.caller, shed, id, sealer, { parts }));
  expect(await hand(ticksOf(sealer).slice(1))).toMatchObject({
    ...{ code: 'invalid-input', fields: ['parts'], isUnchanged: true },
  });
  expect(await hand(ticksOf(sealer, { 'Hex key': 3 }))).toMatchObject({
    ...{ code: 'invalid-input', fields: ['parts.2.pieces'], isUnchanged: true },
  });
  expect(await hand(ticksOf(sealer, { Chuck: 0 }))).toMatchObject({
    code: 'equipment-unfit',
    isUnchanged: true,
  });
});

test('what was missing before a loan is nobody’s who takes it now', async () => {
  const id = await aLoan({ parts: ticksOf(sealer, { 'Hex key': 1 }) });
  at(DUE);
  const back = await bringBack(shed.keeper.caller, shed, id, sealer, {
    parts: ticksOf(sealer, { 'Hex key': 1 }),
  });
  expect(bodyOf(back, 201)).toMatchObject({ partsMinorUnits: 0, refundMinorUnits: 5000 });
  const [unit] = bodyOf(await shed.keeper.caller.get(sealer.path)).units;
  expect(unit.missing).toMatchObject([{ name: 'Hex key', pieces: 1 }]);
});

test('the deposit pays for what is late, missing and damaged, and the rest goes back', async () => {
  const before = await balanceOf(shed.hale);
  const id = await aLoan({ depositFrom: 'cash' });
  bodyOf(await book(shed.moss.caller, sealer, ['2026-09-07T09:00', '2026-09-07T12:00']), 201);
  // Due on Saturday at 18:00; Monday at 8:00 is 38 hours, 36 after the grace: two days were begun.
  at(DUE, 38);
  const back = await bringBack(shed.keeper.caller, shed, id, sealer, {
    ...{ parts: ticksOf(sealer, { 'Hex key': 1 }), condition: 'dirty', damageMinorUnits: 1000 },
    refundTo: 'cash',
  });
  // 5000 − 2 × 200 − 150 − 1000 = 3450.
  expect(bodyOf(back, 201)).toMatchObject({
    ...{ lateMinorUnits: 400, isLateWaived: false, partsMinorUnits: 150, damageMinorUnits: 1000 },
    ...{ keptMinorUnits: 1550, refundMinorUnits: 3450, feeMinorUnits: 300 },
  });
  expect(await accountOf('loan_deposit', id)).toBe(0);
  expect((await balanceOf(shed.hale)) - before).toBe(300); // its fee; the deposit paid the rest
  expect([await accountOf('equipment_fees', sealer.id), await accountOf('repairs', sealer.id)]).toEqual([
    -700, -1150,
  ]);
});

test('what the deposit does not cover stands on the balance', async () => {
  const before = await balanceOf(shed.hale);
  const id = await aLoan({ depositFrom: 'cash' });
  at(DUE);
  const back = await bringBack(shed.keeper.caller, shed, id, sealer, {
    ...{ condition: 'broken', damageMinorUnits: 6200 },
  });
  expect(bodyOf(back, 201)).toMatchObject({ keptMinorUnits: 5000, refundMinorUnits: 0 });
  expect((await balanceOf(shed.hale)) - before).toBe(300 + 1200);
  const again = await book(shed.moss.caller, sealer, ['2026-09-09T09:00', '2026-09-09T12:00']);
  expect(again.body).toMatchObject({ code: 'equipment-unfit', blockers: ['broken'] });
});

test.for([
  { hours: 2, isWaited: true, late: 0, isWaived: false, because: 'two hours are the grace' },
  { hours: 2.02, isWaited: true, late: 200, isWaived: false, because: 'a day was begun' },
  { hours: 26, isWaited: true, late: 200, isWaived: false, because: 'one day after the grace is one' },
  { hours: 26.02, isWaited: true, late: 400, isWaived: false, because: 'a second day was begun' },
  { hours: 26, isWaited: false, late: 0, isWaived: true, because: 'nobody was waiting' },
])('$hours hours late costs $late, since $because', async ({ hours, isWaited, late, isWaived }) => {
  const id = await aLoan();
  if (isWaited) bodyOf(await book(shed.moss.caller, sealer, ['2026-09-06T06:00', '2026-09-07T09:00']), 201);
  at(DUE, hours);
  const back = bodyOf(await bringBack(shed.hale.caller, shed, id, sealer), 201);
  expect([back.lateMinorUnits, back.isLateWaived]).toEqual([late, isWaived]);
});

test('what is not out is not brought back, and no more of it than went out', async () => {
  const id = await aLoan({ parts: ticksOf(sealer, { 'Hex key': 1 }) });
  const more = () => bringBack(shed.keeper.caller, shed, id, sealer);
  expect(await refusalOf(app, more)).toMatchObject({
    ...{ code: 'invalid-input', fields: ['parts.2.pieces'], isUnchanged: true },
  });
  const neighbour = () => bringBack(shed.moss.caller, shed, id, sealer);
  expect(await refusalOf(app, neighbour)).toMatchObject({ code: 'not-your-household', isUnchanged: true });
  const price = () => bringBack(shed.hale.caller, shed, id, sealer, { damageMinorUnits: 5 });
  expect(await refusalOf(app, price)).toMatchObject({ code: 'duty-missing', isUnchanged: true });
  const fine = { parts: ticksOf(sealer, { 'Hex key': 1 }) };
  bodyOf(await bringBack(shed.hale.caller, shed, id, sealer, fine), 201);
  const twice = () => bringBack(shed.hale.caller, shed, id, sealer, fine);
  expect(await refusalOf(app, twice)).toMatchObject({ status: 409, code: 'not-out', isUnchanged: true });
  const { id: bookingId } = bodyOf(
    await book(shed.moss.caller, sealer, ['2026-09-20T09:00', '2026-09-20T12:00']),
    201,
  );
  await shed.moss.caller.post(`${shed.path}/bookings/${bookingId}/cancelling`);
  const cancelled = () => handOut(shed.keeper.caller, shed, bookingId, sealer);
  expect(await refusalOf(app, cancelled)).toMatchObject({ code: 'booking-not-open', isUnchanged: true });
});

test('a loan under one key is one loan, however often it is sent', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  at(START);
  const body = { parts: ticksOf(sealer), takenBy: 'Ida Hale', note: '' };
  const send = () =>
    shed.hale.caller.post(`${shed.path}/bookings/${id}/loan`, body, { 'Idempotency-Key': `patchy ${id}` });
  const [first, second] = [await send(), await send()];
  expect([first.status, second.status, second.body]).toEqual([201, 201, first.body]);
  expect(await accountOf('loan_deposit', first.body.id)).toBe(-5000);
});

test('a lost critical part takes the piece out of service until it is replaced', async () => {
  const id = await aLoan();
  at(DUE);
  const back = await bringBack(shed.hale.caller, shed, id, sealer, { parts: ticksOf(sealer, { Chuck: 0 }) });
  expect(bodyOf(back, 201)).toMatchObject({ partsMinorUnits: 3800, refundMinorUnits: 1200 });
  const wish = ['2026-09-10T09:00', '2026-09-10T12:00'] as const;
  expect((await book(shed.moss.caller, sealer, wish)).body.blockers).toEqual(['critical-part-missing']);
  const [unit] = bodyOf(await shed.keeper.caller.get(sealer.path)).units;
  bodyOf(
    await shed.keeper.caller.put(`${shed.path}/equipment-units/${unit.id}`, {
      ...{ version: unit.version, condition: 'ready', conditionNote: '', missing: [] },
    }),
  );
  expect((await book(shed.moss.caller, sealer, wish)).status).toBe(201);
});

test('brought back early, the rest of its time is offered to whoever waits for it', async () => {
  const id = await aLoan();
  const wish = { from: '2026-09-06T00:00', until: '2026-09-06T05:00' };
  bodyOf(await shed.moss.caller.post(`${sealer.path}/waiting`, wish), 201);
  at(START, 1); // twelve hours of cleaning end at 22:00
  bodyOf(await bringBack(shed.hale.caller, shed, id, sealer), 201);
  const { bookings } = bodyOf(await shed.moss.caller.get(`${shed.path}/bookings`));
  const offered = bookings.filter(({ itemId }: { itemId: string }) => itemId === sealer.id);
  expect(offered).toMatchObject([{ state: 'offered', startsAt: '2026-09-06T05:00:00.000Z' }]);
});

test('whoever comes next while it is late is shown another piece, and takes that', async () => {
  const dollies = await anItem(shed, { name: `Dolly ${count}`, units: 2, postMinutes: 0 }, []);
  await aLoan({}, dollies);
  const next = bodyOf(await book(shed.moss.caller, dollies, ['2026-09-06T09:00', '2026-09-06T12:00']), 201);
  // Unit 1 came back never; the book gave Moss the piece that was free longest.
  expect(next.unitNo).toBe(2);
  const { id, version, unitNo } = bodyOf(
    await book(shed.keeper.caller, dollies, ['2026-09-05T18:00', '2026-09-05T20:00']),
    201,
  );
  expect(unitNo).toBe(2);
  at(DUE, 0.5);
  await app.admin`update book.booking set equipment_unit_id = (select equipment_unit_id from book.equipment_unit
    where equipment_item_id = ${dollies.id} and unit_no = 1) where booking_id = ${id}`;
  const refused = await handOut(shed.keeper.caller, shed, id, dollies);
  expect(refused.body).toMatchObject({ code: 'equipment-unfit', blockers: ['out'], swap: { unitNo: 2 } });
  const swapped = await shed.keeper.caller.post(`${shed.path}/bookings/${id}/swap`, { version });
  bodyOf(swapped);
  expect((await handOut(shed.keeper.caller, shed, id, dollies)).status).toBe(201);
});

test('of one alone that is late, whoever comes next is shown no other time, since nobody knows when it is back', async () => {
  await aLoan();
  const { id } = bodyOf(await book(shed.moss.caller, sealer, ['2026-09-06T06:00', '2026-09-06T12:00']), 201);
  at(new Date('2026-09-06T11:00:00Z'));
  const refused = await refusalOf(app, () => handOut(shed.moss.caller, shed, id, sealer));
  expect(refused).toMatchObject({ code: 'equipment-unfit', isUnchanged: true });
  const shown = bodyOf(await shed.moss.caller.get(`${shed.path}/bookings/${id}/swap`));
  expect(shown.swap).toBeNull();
  expect(shown.freeTimes).toEqual([]);
  const desk = bodyOf(await shed.keeper.caller.get(`${shed.path}/equipment-desk`));
  const late = desk.out.find(({ itemId }: { itemId: string }) => itemId === sealer.id);
  expect(late).toMatchObject({ isLate: true, blocks: true, lateMinorUnitsNow: 200 });
  expect(late.next.household.name).toBe('Moss');
  // The loan that is out still holds the sealer while it is cleaned, when Moss was to have it.
  expect(desk.peaks).toContainEqual(expect.objectContaining({ itemId: sealer.id, units: 1 }));
  expect((await shed.moss.caller.get(`${shed.path}/equipment-desk`)).body.code).toBe('duty-missing');
});

test('one borrower hands straight to the next: one loan ends, one begins, and what was lost is the first one’s', async () => {
  const before = [await balanceOf(shed.hale), await balanceOf(shed.moss)];
  const first = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  const asked = bodyOf(
    await book(shed.moss.caller, sealer, ['2026-09-05T18:00', '2026-09-06T12:00'], { byRelay: true }),
    201,
  );
  const relay = (more: Record<string, unknown> = {}) =>
    shed.moss.caller.post(`${shed.path}/bookings/${asked.id}/relay`, {
      ...{ parts: ticksOf(sealer, { 'Hex key': 1 }), takenBy: 'Ann Moss', broughtBy: 'Ida Hale' },
      ...{ isCleaned: true, note: '', uses: 40, ...more },
    });
  const answer = `${shed.path}/bookings/${asked.id}/relay-answer`;
  bodyOf(await shed.hale.caller.post(answer, { version: asked.version, agrees: true }));
  at(START);
  bodyOf(await handOut(shed.hale.caller, shed, first.id, sealer), 201);
  at(DUE);
  const dirty = await refusalOf(app, () => relay({ isCleaned: false }));
  expect(dirty).toMatchObject({ code: 'invalid-input', fields: ['isCleaned'], isUnchanged: true });
  const crippled = await refusalOf(app, () => relay({ parts: ticksOf(sealer, { Chuck: 0 }) }));
  expect(crippled).toMatchObject({ code: 'equipment-unfit', isUnchanged: true });
  const second = bodyOf(await relay(), 201);
  expect(second.household.name).toBe('Moss');
  const { loans } = bodyOf(await shed.keeper.caller.get(`${sealer.path}/loans`));
  expect(loans).toMatchObject([
    { id: second.id, inAt: null, relayedFromId: loans[1].id },
    { inAt: DUE.toISOString(), partsMinorUnits: 150, lateMinorUnits: 0, uses: 40, refundMinorUnits: 4850 },
  ]);
  // Hale: the fee and the key; Moss: the deposit that stands until it comes back.
  expect([
    (await balanceOf(shed.hale)) - (before[0] ?? 0),
    (await balanceOf(shed.moss)) - (before[1] ?? 0),
  ]).toEqual([450, 5000]);
  expect((await relay()).body.code).toBe('booking-not-open');
});

test('after so many uses it is due for service, finishes its loan, and is lent again once that was done', async () => {
  const id = await aLoan();
  at(DUE);
  bodyOf(await bringBack(shed.keeper.caller, shed, id, sealer, { uses: 500 }), 201);
  const wish = ['2026-09-10T09:00', '2026-09-10T12:00'] as const;
  expect((await book(shed.moss.caller, sealer, wish)).body.blockers).toEqual(['service-due']);
  const path = `${shed.path}/equipment-units/${sealer.units[0]?.id}/maintenance`;
  const wrong = await refusalOf(app, () =>
    shed.keeper.caller.post(path, { doneOn: '2026-09-09', what: 'Oiled.', isService: true }),
  );
  expect(wrong).toMatchObject({ code: 'invalid-input', fields: ['doneOn'], isUnchanged: true });
  bodyOf(await shed.keeper.caller.post(path, { what: 'Belt looked at.', isService: false }), 201);
  expect((await book(shed.moss.caller, sealer, wish)).body.blockers).toEqual(['service-due']);
  bodyOf(
    await shed.keeper.caller.post(path, { what: 'Oiled, chuck and rolls checked.', isService: true }),
    201,
  );
  expect((await book(shed.moss.caller, sealer, wish)).status).toBe(201);
  const [unit] = bodyOf(await shed.keeper.caller.get(sealer.path)).units;
  expect(unit.service).toMatchObject({ sinceOn: '2026-09-05', usesSince: 0, isDue: false, usesLeft: 500 });
});

test('the desk says when a piece will want service, by what is booked ahead', async () => {
  const id = await aLoan();
  at(DUE);
  bodyOf(await bringBack(shed.keeper.caller, shed, id, sealer, { uses: 300 }), 201);
  const aheadOf = async () =>
    bodyOf(await shed.keeper.caller.get(`${shed.path}/equipment-desk`)).units.find(
      ({ itemId }: { itemId: string }) => itemId === sealer.id,
    ).serviceAhead;
  expect(await aheadOf()).toBeNull(); // 200 of 500 uses are left, and nothing is booked; 180 days are far
  bodyOf(await book(shed.moss.caller, sealer, ['2026-09-10T09:00', '2026-09-10T12:00']), 201);
  expect(await aheadOf()).toEqual({ onDay: '2026-09-10', because: 'uses' }); // one more like the last
});

test('a dirty piece is cleaned before it goes out again', async () => {
  const id = await aLoan();
  at(DUE);
  bodyOf(await bringBack(shed.hale.caller, shed, id, sealer, { condition: 'dirty' }), 201);
  const next = bodyOf(await book(shed.moss.caller, sealer, ['2026-09-06T06:00', '2026-09-06T12:00']), 201);
  at(new Date('2026-09-06T11:00:00Z'));
  const refused = await handOut(shed.moss.caller, shed, next.id, sealer);
  expect(refused.body).toMatchObject({ code: 'equipment-unfit', blockers: ['dirty'] });
});

test('a thing is fetched early where nobody else holds it then, and not otherwise', async () => {
  const next = bodyOf(await book(shed.moss.caller, sealer, ['2026-09-06T06:00', '2026-09-06T12:00']), 201);
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  at(START, -3);
  bodyOf(await handOut(shed.hale.caller, shed, id, sealer), 201);
  at(START, -2);
  const early = await handOut(shed.moss.caller, shed, next.id, sealer);
  expect(early.body.blockers).toEqual(['out']);
  const other = await anItem(shed, { name: `Other ${count}` });
  bodyOf(await book(shed.hale.caller, other, SATURDAY), 201);
  const after = bodyOf(await book(shed.moss.caller, other, ['2026-09-06T06:00', '2026-09-06T12:00']), 201);
  expect((await handOut(shed.moss.caller, shed, after.id, other)).body.code).toBe('equipment-taken');
});

test('after all of it the book audits clean', async () => {
  const { findings } = bodyOf(await treasurer.caller.get(`${shed.path}/audit`));
  expect(findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
});
