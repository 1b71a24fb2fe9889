import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { type GrainHouseholds, openGrain } from '../support/fixed-buy.ts';
import { aPersonOf, grantDuty } from '../support/household.ts';
import { grainInvoice, receiveBags, type TestBag } from '../support/landed-buy.ts';
import { refusalOf } from '../support/money-books.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aSharedBuy, creditClaims } from '../support/shared-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
});
afterAll(() => app.close());

const codesOf = (body: { missing: { code: string }[] }) => body.missing.map((lack) => lack.code);

test('closing lists exactly what is missing, and the list empties one by one', async () => {
  const buy = await aSharedBuy(app, storehouse, { households });
  const path = `${buy.path}/closing`;
  const { treasurer } = buy;
  // A late bag that is held, a deposit that comes late, a bill of a carrier, and two claims that nobody answered.
  const late = await receiveBags(app, storehouse, {
    buy,
    offers: buy.offers,
    bags: { beans: [{ condition: 'wet', note: 'Wet at one end.' }] },
  });
  const [wet] = late.bags.beans as [TestBag];
  const { householdId } = households.Dell;
  bodyOf(await treasurer.post(`${buy.path}/deposits`, { householdId, minorUnits: 500, till: 'bank' }), 201);
  const carrier = bodyOf(
    await storehouse.coordinator.post(`${storehouse.path}/suppliers`, { name: 'Carrier' }),
  );
  const bill = {
    supplierId: carrier.id,
    number: 'C-9',
    onDay: '2026-09-01',
    lines: [{ kind: 'freight', minorUnits: 400 }],
  };
  bodyOf(await treasurer.post(`${buy.path}/invoices`, bill), 201);

  const refused = await refusalOf(app, () => treasurer.post(path));
  expect(refused).toMatchObject({ status: 409, code: 'buy-guard-unmet', isUnchanged: true });
  const { missing } = bodyOf(await treasurer.get(path));
  expect(missing).toMatchObject([
    { code: 'claim-open', count: 2 },
    { code: 'clearing-not-zero', minorUnits: 400 },
    { code: 'deposit-held', count: 1, ids: [householdId], minorUnits: 500 },
    { code: 'mass-unassigned', grams: 11_340 },
    { code: 'charges-behind' },
  ]);
  expect(missing.every((lack: { words: string }) => lack.words !== '')).toBe(true);

  await creditClaims(storehouse, buy);
  bodyOf(await treasurer.post(`${buy.path}/recharging`), 201);
  const refund = { householdId, minorUnits: 500, toBalance: true };
  bodyOf(await treasurer.post(`${buy.path}/deposits/refunds`, refund), 201);
  expect(codesOf(bodyOf(await treasurer.get(path)))).toEqual(['mass-unassigned']);
  const finding = 'Mouldy to the middle.';
  bodyOf(await storehouse.coordinator.post(`${storehouse.path}/bags/${wet.id}/discard`, { finding }), 201);
  expect(bodyOf(await treasurer.get(path))).toMatchObject({ isReady: true, missing: [] });
  expect(bodyOf(await treasurer.post(path), 201)).toMatchObject({ stage: 'closed', clearingMinorUnits: 0 });
});

test('a closed buy that still holds a deposit gives it back, and 2100 of it comes to nothing', async () => {
  const buy = await aSharedBuy(app, storehouse, { households });
  const { householdId } = households.Dell;
  const deposit = { householdId, minorUnits: 500, till: 'bank' };
  bodyOf(await buy.treasurer.post(`${buy.path}/deposits`, deposit), 201);
  // Closing refuses such a buy; the treasurer must be able to mend one all the same.
  await app.admin`update book.buy set stage = 'closed' where buy_id = ${buy.buyId}`;
  const held = async () => {
    const { deposits } = bodyOf(await buy.treasurer.get(`${storehouse.path}/deposits-held`));
    return deposits.filter((row: { buyId: string }) => row.buyId === buy.buyId);
  };
  expect(await held()).toMatchObject([{ householdId, heldMinorUnits: 500, isOverdue: true }]);
  const refund = { householdId, minorUnits: 500, toBalance: true };
  bodyOf(await buy.treasurer.post(`${buy.path}/deposits/refunds`, refund), 201);
  expect(await held()).toEqual([]);
  const [row] = await app.admin<{ balance: string }[]>`select sum(inflow - outflow) as balance
    from book.account where kind = 'buy_deposit' and cause_id = ${buy.buyId}`;
  expect(Number(row?.balance)).toBe(0);
});

test('bills that nobody can bear as they stand keep a buy open; they don’t keep the list from being read', async () => {
  const buy = await aSharedBuy(app, storehouse, { households });
  const { treasurer } = buy;
  const path = `${buy.path}/closing`;
  bodyOf(
    await treasurer.post(`${storehouse.path}/invoices/${buy.invoiceId}/void`, { reason: 'Misread.' }),
    201,
  );
  const codes = ['invoice-missing', 'claim-open', 'clearing-not-zero', 'charges-behind'];
  expect(codesOf(bodyOf(await treasurer.get(path)))).toEqual(codes);
  expect((await treasurer.get(`${buy.path}/next`)).status).toBe(200);
  const refused = await refusalOf(app, () => treasurer.post(path));
  expect(refused).toMatchObject({ status: 409, code: 'buy-guard-unmet', isUnchanged: true });
  // The claims are still there and their bill is gone: recharging says so.
  expect((await treasurer.post(`${buy.path}/recharging`)).body).toMatchObject({
    code: 'does-not-add-up',
    detail: 'More is claimed back for this food than was billed for it.',
  });
  bodyOf(await treasurer.post(`${buy.path}/invoices`, grainInvoice(buy)), 201);
  expect(codesOf(bodyOf(await treasurer.get(path)))).toEqual(['claim-open']);
});

test('the coordinator learns whose deposit is held, not how much; a member learns nothing', async () => {
  const buy = await aSharedBuy(app, storehouse, { households });
  const { householdId } = households.Corran;
  const deposit = { householdId, minorUnits: 700, till: 'bank' };
  bodyOf(await buy.treasurer.post(`${buy.path}/deposits`, deposit), 201);
  const { missing } = bodyOf(await storehouse.coordinator.get(`${buy.path}/closing`));
  const held = missing.find((lack: { code: string }) => lack.code === 'deposit-held');
  expect(held).toMatchObject({ count: 1, ids: [householdId] });
  expect(held).not.toHaveProperty('minorUnits');
  expect((await households.Dell.caller.get(`${buy.path}/closing`)).body.code).toBe('duty-missing');
});

test('two closings at once close once, and a closed buy takes nothing more', async () => {
  const buy = await aSharedBuy(app, storehouse, { households });
  const path = `${buy.path}/closing`;
  await creditClaims(storehouse, buy);
  const second = await aPersonOf(app, storehouse, households.Birchall, 'Bea Birchall');
  await grantDuty(storehouse, second.personId, 'treasurer');
  const both = await Promise.all([buy.treasurer.post(path), second.caller.post(path)]);
  expect(both.map((answer) => answer.status).toSorted()).toEqual([201, 409]);
  expect(both.find((answer) => answer.status === 409)?.body.code).toBe('buy-stage-wrong');
  const [moves] = await app.admin<{ count: string }[]>`
    select count(*) from book.stage_move where buy_id = ${buy.buyId} and to_stage = 'closed'`;
  expect(Number(moves?.count)).toBe(1);

  const { householdId } = households.Dell;
  const deposit = { householdId, minorUnits: 500, till: 'bank' };
  for (const call of [
    () => buy.treasurer.post(`${buy.path}/deposits`, deposit),
    () => buy.treasurer.post(`${buy.path}/recharging`),
    () => storehouse.coordinator.post(`${buy.path}/sharing-out`),
    () => storehouse.coordinator.post(`${buy.path}/lines/${buy.wheat}/splits`, {}),
    () => buy.treasurer.post(path),
  ])
    expect(await refusalOf(app, call)).toMatchObject({ code: 'buy-stage-wrong', isUnchanged: true });
});

test('the database itself refuses to move a closed clearing account off nothing', async () => {
  const [closed] = await app.admin<{ account_id: string; storehouse_id: string }[]>`
    select account_id, storehouse_id from book.account where kind = 'buy_clearing' and closed limit 1`;
  const move = app.admin`update book.account set inflow = inflow + 1 where account_id = ${closed?.account_id ?? ''}`;
  await expect(move).rejects.toMatchObject({ constraint_name: 'account_closed_at_zero' });
});

test('closing skips no stage, and belongs to the treasurer of this storehouse', async () => {
  const buy = await aSharedBuy(app, storehouse, { households });
  const other = await anotherStorehouse(app);
  const coordinator = await refusalOf(app, () => storehouse.coordinator.post(`${buy.path}/closing`));
  expect(coordinator).toMatchObject({ status: 403, code: 'duty-missing', isUnchanged: true });
  const stranger = await refusalOf(app, () => other.coordinator.get(`${buy.path}/closing`));
  expect(stranger).toMatchObject({ status: 404, code: 'storehouse-not-found', isUnchanged: true });
  const strayed = buy.path.replace(storehouse.storehouseId, other.storehouseId);
  const notTheirs = await refusalOf(app, () => other.coordinator.get(`${strayed}/closing`));
  expect(notTheirs).toMatchObject({ status: 404, code: 'thing-not-found', isUnchanged: true });
  const planned = bodyOf(
    await storehouse.coordinator.post(`${storehouse.path}/buys`, {
      name: 'Winter',
      gatheringClosesAt: '2026-09-20T23:00:00Z',
      orderOn: '2026-09-24',
      lines: [],
    }),
  );
  const early = await refusalOf(app, () =>
    buy.treasurer.post(`${storehouse.path}/buys/${planned.id}/closing`),
  );
  expect(early).toMatchObject({ status: 409, code: 'buy-stage-wrong', isUnchanged: true });
});
