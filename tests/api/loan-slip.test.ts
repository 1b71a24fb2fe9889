import { afterAll, beforeAll, expect, test } from 'vitest';
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
import { aJpeg } from '../support/jpeg.ts';
import { printed } from '../support/pdf.ts';

let app: TestApp;
let shed: TestShed;
let sealer: TestItem;
let loanId: string;
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
  sealer = await anItem(shed, { name: 'Sealer', cautions: 'Two hands and no loose sleeves.' });
  const booked = await book(shed.hale.caller, sealer, ['2026-09-05T09:00', '2026-09-05T18:00']);
  app.clock.now = new Date('2026-09-05T14:00:00Z');
  loanId = bodyOf(
    await handOut(shed.keeper.caller, shed, bodyOf(booked, 201).id, sealer, { depositFrom: 'cash' }),
    201,
  ).id;
});
afterAll(() => app.close());

const slip = (query = 'language=en') =>
  printed(shed.hale.caller, `${shed.path}/loans/${loanId}/paper?${query}`);
const loanNow = async () => bodyOf(await shed.hale.caller.get(`${shed.path}/loans/${loanId}`));
const money = (minorUnits: number) => (minorUnits / 100).toFixed(2);

test('a loan slip says who has what until when, its parts to be ticked, and its deposit (paper 9)', async () => {
  const { text } = await slip();
  const loan = await loanNow();
  for (const wanted of [
    ...[
      `Sealer, no. ${loan.unitNo} (${loan.unitCode})`,
      `${loan.household.name}, seat ${loan.household.seat}`,
    ],
    ...['5 Sept 2026 09:00 CDT', '5 Sept 2026 18:00 CDT', 'Two hands and no loose sleeves.'],
    'Deposit and fees, in USD',
    ...['Deposit, in cash', money(loan.depositMinorUnits), `Taken out by ${loan.takenBy}`],
  ])
    expect(text).toContain(wanted);
  for (const { name, outPieces } of loan.parts) {
    const at = text.indexOf(name);
    expect(at).toBeGreaterThanOrEqual(0);
    expect(text.indexOf(`[ ] ${outPieces}`, at)).toBeGreaterThan(at);
  }
  expect(text).not.toContain('Brought back by');
});

test('the slip says how many photos of it are in the book, and leaves room for a pen while there are none', async () => {
  expect((await slip()).text).not.toContain('In the book');
  const { itemId } = await loanNow();
  const photo = { contentBase64: aJpeg().toString('base64'), loan: { loanId, moment: 'out' } };
  bodyOf(await shed.hale.caller.post(`${shed.path}/equipment/${itemId}/photos`, photo), 201);
  expect((await slip()).text).toContain('In the book: 1 going out, 0 coming back');
  expect((await slip('language=es')).text).toContain('En el libro: 1 al salir, 0 al volver');
});

test('once it is back the slip says what came back, what was late, and what was given back of the deposit', async () => {
  app.clock.now = new Date('2026-09-06T14:00:00Z');
  bodyOf(
    await bringBack(shed.keeper.caller, shed, loanId, sealer, {
      condition: 'dirty',
      note: 'Crumbs in the chuck.',
    }),
    201,
  );
  const { text } = await slip();
  const loan = await loanNow();
  expect(loan.inAt).not.toBeNull();
  expect(loan.feeMinorUnits).not.toBeNull();
  for (const wanted of [
    ...[
      '6 Sept 2026 09:00 CDT',
      'to be cleaned first',
      'Crumbs in the chuck.',
      `Brought back by ${loan.broughtBy}`,
    ],
    ...[loan.feeMinorUnits, loan.lateMinorUnits, loan.refundMinorUnits, loan.keptMinorUnits].map(money),
  ])
    expect(text).toContain(wanted);
  expect((await slip('language=es&large=true')).text).toContain('Hoja de préstamo');
});

test('it is the borrower’s and the desk’s, and so is what its code leads to', async () => {
  const at = `${shed.path}/loans/${loanId}/paper`;
  expect(await shed.moss.caller.get(at)).toMatchObject({ status: 403 });
  expect(await shed.keeper.caller.get(at)).toMatchObject({ status: 200 });
  const code = (await slip()).pages[0]?.qr.split('/').at(-1) ?? '';
  const found = bodyOf(await shed.hale.caller.get(`${shed.path}/papers/${code}`));
  expect(found).toMatchObject({ kind: 'loan-slip', subjectId: loanId });
  expect(await shed.moss.caller.get(`${shed.path}/papers/${code}`)).toMatchObject({ status: 403 });
});

test('a deposit that stands on the balance is told in words, in both languages', async () => {
  const vacuum = await anItem(shed, { name: 'Vacuum sealer' });
  const booked = bodyOf(await book(shed.hale.caller, vacuum, ['2026-09-08T09:00', '2026-09-08T18:00']), 201);
  app.clock.now = new Date('2026-09-08T14:00:00Z');
  const { id } = bodyOf(await handOut(shed.keeper.caller, shed, booked.id, vacuum), 201);
  const slipIn = async (language: string) =>
    (await printed(shed.hale.caller, `${shed.path}/loans/${id}/paper?language=${language}`)).text;
  expect(await slipIn('en')).toContain('Deposit, on the balance');
  expect(await slipIn('es')).toContain('Depósito, en el saldo');
});
