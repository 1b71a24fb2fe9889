import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { itemBody } from '../support/equipment.ts';
import { refusalOf } from '../support/fingerprint.ts';
import { cansOf, openHall, type TestHall } from '../support/packing.ts';
import { aFilledDay, aSupply } from '../support/settlement.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let canId: string;
let itemId: string;
let day: string;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  const can = { name: 'No. 10 cans', kind: 'container', containerKindId: hall.shelves.kinds['can-no-10'] };
  canId = await aSupply(storehouse, hall, can, { pieces: 300, minorUnits: 300 * 133 });
  itemId = bodyOf(await storehouse.coordinator.post(`${storehouse.path}/equipment`, itemBody()), 201).id;
  day = await aFilledDay(storehouse, hall, { Ashdown: 96, Birchall: 60, Corran: 48, Dell: 24 });
}, 60_000);
afterAll(() => app.close());

const lead = () => hall.lead.caller;
// Job map 4.6: what is 30.00 of line time there is a fee of the sealer here, shared alike.
const worked = (wish: Record<string, unknown> = {}) => ({
  supplies: [{ supplyId: canId, usedPieces: 228, spoiltPieces: 5 }],
  equipmentFees: [{ itemId, minorUnits: 3_000 }],
  sundries: [
    {
      ...{ what: 'Cleaner and tea', minorUnits: 517 },
      paidBy: { who: 'household', householdId: hall.buy.households.Dell.householdId },
    },
  ],
  ...wish,
});
const preview = async (of: string, wish: unknown) =>
  bodyOf(await lead().post(`${of}/settlement-previews`, wish));
const numberOf = async (number: string): Promise<number> => {
  const { rows } = bodyOf(await hall.buy.treasurer.get(`${storehouse.path}/trial-balance`));
  const row = rows.find((one: { number: string }) => one.number === number);
  return row ? row.debitMinorUnits - row.creditMinorUnits : 0;
};
const owes = async (name: 'Ashdown' | 'Birchall' | 'Corran' | 'Dell'): Promise<number> => {
  const { householdId } = hall.buy.households[name];
  const { rows } = await app.admin`select inflow - outflow as balance from book.account
    where owner_id = ${householdId} and kind = 'household'`.then((found) => ({ rows: found }));
  return Number(rows[0]?.balance ?? 0);
};
type Cost = { kind: string; shares: { minorUnits: number }[] };

test('the log proposes what was used, and the preview shows each household’s part to the cent (job map 4.6)', async () => {
  const { proposal, households } = bodyOf(await lead().get(`${day}/settlement`));
  expect(proposal).toMatchObject([{ supply: { name: 'No. 10 cans' }, usedPieces: 228 }]);
  expect(households.map(({ containers }: { containers: number }) => containers)).toEqual([96, 60, 48, 24]);
  const shown = await preview(day, worked());
  expect(
    shown.costs.map(({ kind, shares }: Cost) => [kind, ...shares.map((share) => share.minorUnits)]),
  ).toEqual([
    ['supplies', 12_768, 7_980, 6_384, 3_192],
    ['scrap', 280, 175, 140, 70],
    ['equipment-fee', 1_263, 789, 632, 316],
    ['sundries', 218, 136, 109, 54],
  ]);
  expect(shown).toMatchObject({ totalMinorUnits: 30_324 + 665 + 3_000 + 517, storehouseMinorUnits: 0 });
  expect(await numberOf('2300')).toBe(0);
});

test('nothing else is posted than what was seen, and no more than the book has', async () => {
  const { seen } = await preview(day, worked());
  const changed = worked({ supplies: [{ supplyId: canId, usedPieces: 227 }] });
  expect(await refusalOf(app, () => lead().post(`${day}/settlement`, { ...changed, seen }))).toMatchObject({
    ...{ status: 409, code: 'settlement-moved' },
  });
  const tooMany = worked({ supplies: [{ supplyId: canId, usedPieces: 301 }] });
  expect(await refusalOf(app, () => lead().post(`${day}/settlement-previews`, tooMany))).toMatchObject({
    ...{ code: 'not-enough-left', fields: ['supplies.0.usedPieces'] },
  });
  const fromBank = worked({
    sundries: [{ what: 'Tea', minorUnits: 500, paidBy: { who: 'till', till: 'bank' } }],
  });
  expect(await refusalOf(app, () => lead().post(`${day}/settlement-previews`, fromBank))).toMatchObject({
    code: 'duty-missing',
  });
});

test('settling charges everybody what was shown, and the day’s clearing account is at nothing', async () => {
  const before = { Ashdown: await owes('Ashdown'), Dell: await owes('Dell') };
  const shown = await preview(day, worked());
  const settled = bodyOf(await lead().post(`${day}/settlement`, { ...worked(), seen: shown.seen }), 201);
  expect(settled).toMatchObject({ stage: 'settled', totalMinorUnits: 34_506 });
  expect((await owes('Ashdown')) - before.Ashdown).toBe(12_768 + 280 + 1_263 + 218);
  // Dell is charged its part and is owed what it paid in the shop.
  expect((await owes('Dell')) - before.Dell).toBe(3_192 + 70 + 316 + 54 - 517);
  expect(await numberOf('2300')).toBe(0);
  expect(await numberOf('4010')).toBe(-3_000);
  expect(await numberOf('1300')).toBe((300 - 233) * 133);
  const { posted } = bodyOf(await lead().get(`${day}/settlement`));
  expect(posted).toMatchObject({ totalMinorUnits: 34_506, entryId: settled.entryId });
  expect(await refusalOf(app, () => lead().post(`${day}/settlement-previews`, worked()))).toMatchObject({
    code: 'session-stage-wrong',
  });
});

test('the audit finds a settled day whose clearing is off by a cent, behind the guard that keeps it at nothing', async () => {
  const failing = async () => {
    const { findings } = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/audit`));
    return findings.filter(({ holds }: { holds: boolean }) => !holds).map(({ key }: { key: string }) => key);
  };
  const add = (cents: number, closed: boolean) =>
    app.admin`update book.account set inflow = inflow + ${cents}, closed = ${closed} where kind = 'session_clearing'`;
  await expect(add(1, true)).rejects.toMatchObject({ constraint_name: 'account_closed_at_zero' });
  expect(await failing()).toEqual([]);
  await add(1, false);
  expect(await failing()).toContain('ended-sessions');
  await add(-1, true);
  expect(await failing()).toEqual([]);
});

test('a member sees what it pays and why, on the day’s page and on the statement, and nobody else’s part', async () => {
  const { Dell } = hall.buy.households;
  const own = bodyOf(await Dell.caller.get(`${day}/own-costs`));
  expect(own).toMatchObject({ isEstimate: false, totalMinorUnits: 3_192 + 70 + 316 + 54 });
  expect(own.costs[0]).toEqual({
    ...{ kind: 'supplies', what: 'No. 10 cans', containers: 24, minorUnits: 3_192 },
    ...{ allMinorUnits: 30_324, allContainers: 228 },
  });
  const statement = bodyOf(
    await Dell.caller.get(`${storehouse.path}/households/${Dell.householdId}/statement`),
  );
  expect(statement.lines).toContainEqual(
    expect.objectContaining({
      ...{ what: 'session-settled', chargeMinorUnits: 3_192 + 70 + 316 + 54 },
      buy: expect.stringContaining('Canning day'),
    }),
  );
  expect((await Dell.caller.get(`${day}/settlement`)).status).toBe(403);
});

test('a settlement is taken back as a whole on its own page, and can be made again', async () => {
  const { posted } = bodyOf(await lead().get(`${day}/settlement`));
  const plainly = () =>
    hall.buy.treasurer.post(`${storehouse.path}/entries/${posted.entryId}/reversal`, { reason: 'a slip' });
  expect(await refusalOf(app, plainly)).toMatchObject({ code: 'cannot-reverse' });
  const owed = await owes('Ashdown');
  bodyOf(await lead().post(`${day}/settlement/undoing`, { reason: 'two cans were counted twice' }), 201);
  expect(owed - (await owes('Ashdown'))).toBe(12_768 + 280 + 1_263 + 218);
  expect([await numberOf('2300'), await numberOf('1300')]).toEqual([0, 300 * 133]);
  const byMachine = worked({
    supplies: [{ supplyId: canId, usedPieces: 226, spoiltPieces: 2, spoiltByMachinePieces: 3 }],
  });
  const shown = await preview(day, byMachine);
  expect(shown.storehouseMinorUnits).toBe(399);
  const losses = await numberOf('5000');
  bodyOf(await lead().post(`${day}/settlement`, { ...byMachine, seen: shown.seen }), 201);
  expect((await numberOf('5000')) - losses).toBe(399);
  expect(await numberOf('2300')).toBe(0);
});

test('a day that is not signed is not settled, and one that cost nothing posts nothing', async () => {
  const running = await aFilledDay(storehouse, hall, { Dell: 2 }, { isSigned: false });
  const none = { supplies: [] };
  const refused = await lead().post(`${running}/settlement-previews`, none);
  expect([refused.status, refused.body.code]).toEqual([409, 'session-stage-wrong']);
  expect(refused.body.detail).toContain('Sign the grams');
  bodyOf(await lead().post(`${running}/signing`), 201);
  const { seen } = await preview(running, none);
  expect(bodyOf(await lead().post(`${running}/settlement`, { ...none, seen }), 201)).toMatchObject({
    ...{ stage: 'settled', entryId: null, totalMinorUnits: 0 },
  });
});

test('before the day a household sees about what it will cost, and which containers to bring', async () => {
  const { Birchall } = hall.buy.households;
  const name = 'The day to come';
  const { id } = bodyOf(
    await lead().post(`${storehouse.path}/packing-sessions`, {
      ...{ name, startsAt: '2026-12-20T17:00:00Z', endsAt: '2026-12-20T20:00:00Z', lineFeeMinorUnits: 15 },
    }),
    201,
  );
  const coming = `${storehouse.path}/packing-sessions/${id}`;
  const bottle = hall.shelves.kinds['bottle-pet-2-litre'];
  const { supplies } = bodyOf(await lead().get(`${storehouse.path}/supplies`));
  const edit = { version: supplies[0].version, name: 'No. 10 cans', packPieces: 6, packMinorUnits: 798 };
  bodyOf(await lead().put(`${storehouse.path}/supplies/${canId}`, edit));
  const wishes = [
    cansOf(hall, { containers: 4, treatment: 'none' }),
    cansOf(hall, { containers: 1, treatment: 'none', containerKindId: bottle ?? '', gramsEach: 400 }),
  ];
  bodyOf(await Birchall.caller.put(`${coming}/wishes`, { wishes }));
  const own = bodyOf(await Birchall.caller.get(`${coming}/own-costs`));
  expect(own).toMatchObject({ isEstimate: true, totalMinorUnits: 4 * 133 + 5 * 15 });
  expect(
    own.bring.map(({ containers }: { containers: { count: number } | null }) => containers?.count),
  ).toEqual([undefined, 1]);
});
