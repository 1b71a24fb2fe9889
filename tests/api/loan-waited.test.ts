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
} from '../support/equipment.ts';
import { refusalOf } from '../support/money-books.ts';

// What was written down at the shed door without a signal counts from the hour at which it was written down.
const NOW = new Date('2026-09-01T15:00:00Z');
const SATURDAY = ['2026-09-05T09:00', '2026-09-05T18:00'] as const;
const START = '2026-09-05T14:00:00.000Z';
const DUE = '2026-09-05T23:00:00.000Z';
let app: TestApp;
let shed: TestShed;
let sealer: TestItem;
let count = 0;
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
});
afterAll(() => app.close());
beforeEach(async () => {
  app.clock.now = NOW;
  sealer = await anItem(shed, { name: `Sealer ${++count}` });
});

async function aLoan(): Promise<string> {
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  bodyOf(await book(shed.moss.caller, sealer, ['2026-09-06T06:00', '2026-09-07T09:00']), 201);
  app.clock.now = new Date(START);
  return bodyOf(await handOut(shed.hale.caller, shed, id, sealer), 201).id;
}

test('what came back in time and was told a night later is not late', async () => {
  const id = await aLoan();
  app.clock.now = new Date('2026-09-06T13:00:00Z');
  const back = bodyOf(await bringBack(shed.hale.caller, shed, id, sealer, { happenedAt: DUE }), 201);
  expect(back).toMatchObject({ inAt: DUE, lateMinorUnits: 0, isLateWaived: false });
});

test('what went out without a signal went out then, and not when it was told', async () => {
  const { id } = bodyOf(await book(shed.hale.caller, sealer, SATURDAY), 201);
  app.clock.now = new Date('2026-09-06T01:00:00Z'); // its time is over by now
  const late = () => handOut(shed.hale.caller, shed, id, sealer);
  expect(await refusalOf(app, late)).toMatchObject({ code: 'booking-not-open', isUnchanged: true });
  const loan = bodyOf(await handOut(shed.hale.caller, shed, id, sealer, { happenedAt: START }), 201);
  expect(loan).toMatchObject({ outAt: START, dueAt: DUE });
});

test('nothing came back before it went out, and nothing is to come; a phone may run a little ahead', async () => {
  const id = await aLoan();
  app.clock.now = new Date('2026-09-05T20:00:00Z');
  const send = (happenedAt: string) => () => bringBack(shed.hale.caller, shed, id, sealer, { happenedAt });
  for (const wrong of ['2026-09-05T13:59:00Z', '2026-09-05T20:06:00Z'])
    expect(await refusalOf(app, send(wrong))).toMatchObject({
      ...{ code: 'invalid-input', fields: ['happenedAt'], isUnchanged: true },
    });
  expect(bodyOf(await send('2026-09-05T20:04:00Z')(), 201).inAt).toBe('2026-09-05T20:00:00.000Z');
});

test('a borrower’s own word goes a day back, so that nobody talks a late fee away; the keeper’s goes further', async () => {
  const id = await aLoan();
  app.clock.now = new Date('2026-09-07T00:00:00Z');
  const send = (by: TestShed['hale']) => () => bringBack(by.caller, shed, id, sealer, { happenedAt: DUE });
  expect(await refusalOf(app, send(shed.hale))).toMatchObject({
    ...{ code: 'duty-missing', fields: ['happenedAt'], isUnchanged: true },
  });
  expect(bodyOf(await send(shed.keeper)(), 201)).toMatchObject({ inAt: DUE, lateMinorUnits: 0 });
});

test('a return that was written down on two phones is one return; the second is told so', async () => {
  const id = await aLoan();
  app.clock.now = new Date(DUE);
  const at = { happenedAt: '2026-09-05T22:00:00Z' };
  bodyOf(await bringBack(shed.keeper.caller, shed, id, sealer, at), 201);
  const second = () => bringBack(shed.hale.caller, shed, id, sealer, at);
  expect(await refusalOf(app, second)).toMatchObject({ status: 409, code: 'not-out', isUnchanged: true });
});
