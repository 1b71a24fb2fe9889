import { randomBytes } from 'node:crypto';
import { bagLanded, poured } from '@sheafbook/ledger';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { auditEverything } from '../../apps/api/src/audit-everything.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aContext, postDrafts } from '../support/posting.ts';
import { aSharedBuy, creditClaims, type TestSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

type Finding = { number: number; invariant: string; holds: boolean; figure: string };

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

const audit = async () => bodyOf(await storehouse.coordinator.get(`${storehouse.path}/audit`));
const failing = async (): Promise<number[]> => {
  const { findings } = await audit();
  return findings.filter((finding: Finding) => !finding.holds).map((finding: Finding) => finding.number);
};
const figureOf = async (number: number): Promise<string> => {
  const { findings } = await audit();
  return findings.find((finding: Finding) => finding.number === number).figure;
};
const everything = () => {
  const outside = { db: app.db, sql: app.sql, now: () => app.clock.now, randomBytes };
  return auditEverything(outside, app.adminUrl);
};

/** Tampers with the book behind every policy and guard, looks, and puts it back. */
async function tamper(change: () => Promise<unknown>, back: () => Promise<unknown>): Promise<number[]> {
  await change();
  const numbers = await failing();
  await back();
  expect(await failing()).toEqual([]);
  return numbers;
}

test('a book without an entry holds, and says that there was nothing to look at', async () => {
  const { holds, ledger } = await audit();
  expect(holds).toBe(true);
  expect(ledger).toEqual({ entries: 0, movements: 0, unitsOutOfBalance: 0, accountsDrifted: 0 });
  expect(await figureOf(13)).toBe('buys: 0, moves: 0, buys off the path: 0');
});

test('the job map’s whole buy holds from the fill to the charges, each run again from what it froze', async () => {
  buy = await aSharedBuy(app, storehouse);
  const { holds, findings, ledger } = await audit();
  expect(findings.filter((finding: Finding) => !finding.holds)).toEqual([]);
  expect(holds).toBe(true);
  expect(await figureOf(7)).toBe('answers computed again: 4, changed: 0'); // one fill and three splits
  expect(await figureOf(15)).toBe('fills: 1, not the best: 0');
  expect(await figureOf(6)).toBe('splits: 3, wrong: 0');
  // Planning to gathering, fixed, ordered, landed, shared out: five moves of one buy.
  expect(await figureOf(13)).toBe('buys: 1, moves: 5, buys off the path: 0');
  expect(await figureOf(8)).toContain('accounts: ');
  const [counted] = await app.admin<{ entries: number; movements: number }[]>`select
    (select count(*)::int from book.entry) as entries, (select count(*)::int from book.movement) as movements`;
  expect(ledger).toMatchObject({ ...counted, unitsOutOfBalance: 0, accountsDrifted: 0 });
});

test('a total that no movement made is found', async () => {
  const bank = (change: number) =>
    app.admin`update book.account set inflow = inflow + ${change} where kind = 'bank'`;
  // Twice invariant 2: the totals drift from the movements, and the unit no longer balances.
  expect(
    await tamper(
      () => bank(5),
      () => bank(-5),
    ),
  ).toEqual([2, 2]);
});

test('a movement that was changed afterwards is found', async () => {
  const change = (more: number) =>
    app.admin`update book.movement m set amount = amount + ${more} from book.entry e
      where e.entry_id = m.entry_id and e.what = 'supplier-invoiced' and m.line = 1`;
  expect(
    await tamper(
      () => change(1),
      () => change(-1),
    ),
  ).toEqual([2]);
});

test('a charge that does not add up is found', async () => {
  const [share] = await app.admin<
    { charge_line_id: string; owner_id: string }[]
  >`select charge_line_id, owner_id
    from book.charge_share where minor_units > 100 limit 1`;
  const change = (more: number) =>
    app.admin`update book.charge_share set minor_units = minor_units + ${more}
      where charge_line_id = ${share?.charge_line_id ?? ''} and owner_id = ${share?.owner_id ?? ''}`;
  expect(
    await tamper(
      () => change(1),
      () => change(-1),
    ),
  ).toEqual([5]);
});

test('a share beyond its claim, and an answer that does not come out again, are found', async () => {
  const award = (more: number) =>
    app.admin`update book.share set award_grams = award_grams + ${more}
      where split_id = ${buy.splitIds.wheat} and owner_id = ${buy.households.Dell.householdId}`;
  expect(
    await tamper(
      () => award(1),
      () => award(-1),
    ),
  ).toEqual([6]);
  const surplus = (grams: number) =>
    app.admin`update book.split_inputs set inputs = jsonb_set(inputs, '{awards,0,awardUnits}',
      to_jsonb((inputs #>> '{awards,0,awardUnits}')::bigint + ${grams})) where split_id = ${buy.splitIds.beans}`;
  expect(
    await tamper(
      () => surplus(1),
      () => surplus(-1),
    ),
  ).toEqual([7]);
});

test('a fill that was changed afterwards is found', async () => {
  const change = (bags: number) =>
    app.admin`update book.fill set answer = jsonb_set(answer, '{lines,0,bags,0,bags}', to_jsonb(${bags}::int))`;
  expect(
    await tamper(
      () => change(7),
      () => change(6),
    ),
  ).toEqual([7, 15]);
});

test('an allotment beyond its pledge is found', async () => {
  const dropped = await app.admin<{ inputs: unknown }[]>`select inputs from book.fill_inputs`;
  const lower = () =>
    app.admin`update book.fill_inputs set inputs = jsonb_set(inputs, '{pledges,0,mostGrams}', '4536')`;
  const back = () =>
    app.admin`update book.fill_inputs set inputs = ${app.admin.json(dropped[0]?.inputs as never)}`;
  expect(await tamper(lower, back)).toEqual(expect.arrayContaining([14]));
});

test('an audit that reads a ceiling again is written down for its household, and tells nobody the ceiling', async () => {
  const ceiling = (value: string) =>
    app.admin`update book.fill_inputs set inputs = jsonb_set(inputs, '{pledges,0,ceiling}', ${value}::text::jsonb)`;
  await ceiling('{"minorUnits": 424242, "grams": 1}');
  const answer = bodyOf(await buy.treasurer.get(`${storehouse.path}/audit`));
  expect(answer.holds).toBe(true); // nobody asks so much
  expect(JSON.stringify(answer)).not.toContain('424242');
  await ceiling('null');
  const reads = await app.admin<{ household_id: string; purpose: string }[]>`select household_id, purpose
    from book.private_read where what like 'ceilings%' and purpose = 'audit'`;
  // The first pledge is that of the lowest seat.
  expect([...reads]).toEqual([{ household_id: buy.households.Ashdown.householdId, purpose: 'audit' }]);
});

test('a buy that skipped a stage is found', async () => {
  const stage = (to: string) => app.admin`update book.buy set stage = ${to} where buy_id = ${buy.buyId}`;
  // Called off, it should have no deposit and nothing to clear; both are at 0.00, so only its path is wrong.
  expect(
    await tamper(
      () => stage('called-off'),
      () => stage('shared-out'),
    ),
  ).toEqual([13]);
});

test('grams that moved while their bag was on hold are found', async () => {
  const held = buy.bags.oats[0];
  const hold = () =>
    app.admin`with held as (insert into book.hold (storehouse_id, bag_id, reason, held_by, held_at)
        values (${storehouse.storehouseId}, ${held?.id ?? ''}, 'weevils', ${buy.households.Ashdown.personId},
          '2026-08-01T00:00:00Z') returning storehouse_id, hold_id, bag_id, held_at)
      insert into book.hold_vessel (storehouse_id, hold_id, vessel_id, reached_at) select * from held`;
  const letGo = async () => {
    await app.admin`delete from book.hold_vessel`;
    return app.admin`delete from book.hold`;
  };
  expect(await tamper(hold, letGo)).toEqual([16]);
});

test('a clearing account that is not at nothing in a closed buy is found', async () => {
  await creditClaims(storehouse, buy);
  expect(await failing()).toEqual([]);
  const stage = (to: string) =>
    app.admin`with moved as (update book.buy set stage = ${to} where buy_id = ${buy.buyId} returning 1)
      select count(*) from moved`;
  const owe = (more: number) =>
    app.admin`update book.account set inflow = inflow + ${more}, outflow = outflow where kind = 'buy_clearing'`;
  const numbers = await tamper(
    async () => {
      await stage('closed');
      await owe(5);
    },
    async () => {
      await owe(-5);
      await stage('shared-out');
    },
  );
  expect(numbers).toEqual([2, 2, 3, 13]);
});

test('a can with more than it holds is found', async () => {
  const { Dell } = buy.households;
  const context = aContext(app, storehouse, Dell);
  const [kind] = await app.admin<
    { container_kind_id: string }[]
  >`select container_kind_id from book.container_kind
    where storehouse_id = ${storehouse.storehouseId} order by capacity_microlitres limit 1`;
  const [places] = await app.admin<{ supplier: string; unassigned: string }[]>`select
    (select vessel_id from book.vessel where kind = 'supplier') as supplier,
    (select owner_id from book.owner where kind = 'unassigned') as unassigned`;
  const [bag] = buy.bags.wheat;
  const [can] = await app.admin<{ vessel_id: string }[]>`insert into book.vessel (storehouse_id, kind)
    values (${storehouse.storehouseId}, 'container') returning vessel_id`;
  const [bagVesselId = '', lotId = '', canId = ''] = [bag?.id, bag?.lotId, can?.vessel_id];
  await app.admin`insert into book.container (storehouse_id, container_id, container_code, container_kind_id, lot_id,
      household_id, packed_on)
    values (${storehouse.storehouseId}, ${canId}, 'TOO-FULL', ${kind?.container_kind_id ?? ''}, ${lotId},
      ${Dell.householdId}, '2026-09-01')`;
  const ownerId = places?.unassigned ?? '';
  await postDrafts(context, [
    ...bagLanded({
      lotId,
      supplierVesselId: places?.supplier ?? '',
      bagVesselId,
      unassignedOwnerId: ownerId,
      amountGrams: 20_000,
    }),
    ...poured({ lotId, bagVesselId, containerVesselId: canId, ownerId, amountGrams: 20_000 }),
  ]);
  expect(await failing()).toEqual([10]);
  await app.admin`delete from book.container where container_code = 'TOO-FULL'`;
  expect(await failing()).toEqual([]);
});

test('the coordinator, the treasurer and the reviewer may audit; a member may not', async () => {
  expect((await buy.treasurer.get(`${storehouse.path}/audit`)).status).toBe(200);
  const member = await buy.households.Dell.caller.get(`${storehouse.path}/audit`);
  expect([member.status, member.body.code]).toEqual([403, 'duty-missing']);
});

test('6.21: an audit is of one moment: payments that come in meanwhile never put it out of balance', async () => {
  const { householdId } = buy.households.Dell;
  const pay = (minorUnits: number) =>
    buy.treasurer.post(`${storehouse.path}/payments`, { householdId, minorUnits, till: 'bank' });
  const answers = await Promise.all([
    ...Array.from({ length: 12 }, (_, position) => pay(100 + position).then(() => true)),
    ...Array.from({ length: 4 }, () => audit().then(({ holds }) => holds)),
  ]);
  expect(new Set(answers)).toEqual(new Set([true]));
});

test('the command audits every storehouse of the server, and fails as a whole if one does', async () => {
  const other = await anotherStorehouse(app);
  const sound = await everything();
  expect(sound.holds).toBe(true);
  expect(sound.json.map(({ storehouse: name }) => name)).toEqual([
    'Alder Row Storehouse',
    'Bell Lane Storehouse',
  ]);
  await app.admin`insert into book.account (storehouse_id, unit_id, unit_kind, kind, guard, inflow)
    select storehouse_id, unit_id, kind, 'bank', 'none', 7 from book.unit
    where storehouse_id = ${other.storehouseId} and kind = 'currency'`;
  const broken = await everything();
  expect(broken.holds).toBe(false);
  expect(broken.json.map(({ holds }) => holds)).toEqual([true, false]);
  expect(broken.text).toContain('FAILS   2  Running totals are what the movements add up to');
  expect(broken.text).toContain('2 of 23 do not hold.');
});
