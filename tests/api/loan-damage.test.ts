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
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { refusalOf } from '../support/money-books.ts';

// Job map 8: damage is reported at check-in, and the next borrower's check-out is the cut-off of what is evidence.
let app: TestApp;
let shed: TestShed;
let treasurer: TestHousehold;
let dolly: TestItem;
let count = 0;
beforeAll(async () => {
  app = await openTestApp();
  shed = await aShed(app);
  treasurer = await aHousehold(app, shed, 'Treasurer', { duties: ['treasurer'] });
});
afterAll(() => app.close());
beforeEach(async () => {
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  dolly = await anItem(shed, { name: `Cart ${++count}`, depositMinorUnits: 0, postMinutes: 0 }, []);
});

const found = { minorUnits: 1250, note: 'A wheel is bent.' };
const charge = (loanId: string, body: object = found, { caller } = shed.keeper) =>
  caller.post(`${shed.path}/loans/${loanId}/damage`, body);
const balanceOf = async ({ householdId }: TestHousehold): Promise<number> =>
  bodyOf(await treasurer.caller.get(`${shed.path}/households/${householdId}/balance`)).balanceMinorUnits;

/** A loan of Hale's for Saturday, brought back by Hale alone at noon. */
async function aLoanBack(): Promise<string> {
  const { id } = bodyOf(await book(shed.hale.caller, dolly, ['2026-09-05T09:00', '2026-09-05T18:00']), 201);
  app.clock.now = new Date('2026-09-05T14:00:00Z');
  const loan = bodyOf(await handOut(shed.hale.caller, shed, id, dolly), 201);
  const early = await refusalOf(app, () => charge(loan.id));
  expect(early).toMatchObject({ status: 409, code: 'damage-not-now', isUnchanged: true });
  app.clock.now = new Date('2026-09-05T17:00:00Z');
  bodyOf(await bringBack(shed.hale.caller, shed, loan.id, dolly), 201);
  return loan.id;
}

test('what is found damaged on a thing that is back is charged to who brought it, and told to them', async () => {
  const loanId = await aLoanBack();
  const before = await balanceOf(shed.hale);
  expect(bodyOf(await charge(loanId), 201)).toMatchObject({ damageMinorUnits: 1250 });
  expect(bodyOf(await charge(loanId, { minorUnits: 50, note: 'A screw is gone.' }), 201)).toMatchObject({
    damageMinorUnits: 1300,
  });
  expect((await balanceOf(shed.hale)) - before).toBe(1300);
  const { notices } = bodyOf(await shed.hale.caller.get(`${shed.path}/notices`));
  expect(notices[0].words).toContain('Something was found damaged on what you brought back');
  expect(JSON.stringify(notices[0])).not.toMatch(/12\.50|1250/); // no letter names an amount
});

test('once it went out again nobody can tell whose damage it is, and nothing is charged', async () => {
  const loanId = await aLoanBack();
  const next = bodyOf(await book(shed.moss.caller, dolly, ['2026-09-05T12:00', '2026-09-05T15:00']), 201);
  bodyOf(await handOut(shed.keeper.caller, shed, next.id, dolly), 201);
  const late = await refusalOf(app, () => charge(loanId));
  expect(late).toMatchObject({ status: 409, code: 'damage-not-now', isUnchanged: true });
});

test('the keeper alone charges it, with what it is and what it costs', async () => {
  const loanId = await aLoanBack();
  expect((await charge(loanId, found, shed.moss)).status).toBe(403);
  for (const [body, field] of [
    [{ ...found, minorUnits: 0 }, 'minorUnits'],
    [{ ...found, note: ' ' }, 'note'],
  ] as const)
    expect(await refusalOf(app, () => charge(loanId, body))).toMatchObject({
      ...{ code: 'invalid-input', fields: [field], isUnchanged: true },
    });
});
