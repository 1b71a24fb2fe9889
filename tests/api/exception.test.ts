import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aFixedBuy, type GrainHouseholds, grainHouseholds, type TestGrainBuy } from '../support/fixed-buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
let buy: TestGrainBuy;
let reviewer: TestHousehold;
const at = (path: string) => `${storehouse.path}${path}`;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  reviewer = await aHousehold(app, storehouse, 'Quill', { duties: ['reviewer'] });
  households = await grainHouseholds(app, storehouse);
  buy = await aFixedBuy(app, storehouse, { households });
});
afterAll(() => app.close());

const today = () => app.clock.now.toISOString().slice(0, 10);
const read = async (query = '') => bodyOf(await reviewer.caller.get(at(`/exceptions${query}`)));

test('a book without exceptions says so', async () => {
  expect(await read()).toEqual({ currency: 'USD', corrections: [], overrides: [] });
});

test('what was taken back stands with its reason, what it undid and the money that it moved', async () => {
  const { entryId, entryNo } = bodyOf(
    await buy.treasurer.post(at('/bank-charges'), { minorUnits: 450 }),
    201,
  );
  const reason = 'The bank gave it back.';
  const undoing = bodyOf(await buy.treasurer.post(at(`/entries/${entryId}/reversal`), { reason }), 201);
  expect((await read()).corrections).toEqual([
    {
      ...{ entryId: undoing.id, entryNo: undoing.entryNo, onDay: today(), by: 'Birchall Person', reason },
      ...{ undoneEntryId: entryId, undoneEntryNo: entryNo, undoneWhat: 'bank-charge', minorUnits: 450 },
    },
  ]);
});

test('a waiver, a buy called off and a tin that differed stand with who decided and why', async () => {
  const { householdId } = households.Dell;
  const waiver = { householdId, reason: 'Out of work since May.' };
  bodyOf(await buy.treasurer.post(`${buy.path}/deposits/waivers`, waiver), 201);
  bodyOf(await storehouse.coordinator.post(`${buy.path}/calling-off`, { reason: 'the mill has no wheat' }));
  const { overrides } = await read();
  expect(overrides).toContainEqual(
    expect.objectContaining({
      ...{ kind: 'stage-moved', stage: 'called-off', reason: 'the mill has no wheat', buyId: buy.buyId },
    }),
  );
  const waived = overrides.filter(({ kind }: { kind: string }) => kind === 'deposit-waived');
  // Calling off takes every ask back, and its waiver with it; nobody is left with a hardship on a list.
  expect(waived).toEqual([]);
  const second = await aFixedBuy(app, storehouse, { households });
  bodyOf(await second.treasurer.post(`${second.path}/deposits/waivers`, waiver), 201);
  const found = (await read()).overrides.find(({ kind }: { kind: string }) => kind === 'deposit-waived');
  expect(found).toMatchObject({
    ...{ buyId: second.buyId, household: 'Dell', householdId, by: 'Birchall Person', reason: '' },
    minorUnits: 2300,
  });
  expect(JSON.stringify(await read())).not.toContain(waiver.reason); // that stays between the two of them
  const path = at(`/households/${householdId}/private-reads?limit=100`);
  const { privateReads } = bodyOf(await households.Dell.caller.get(path));
  expect(privateReads).toContainEqual(
    expect.objectContaining({
      ...{ what: 'waivers and write-offs', purpose: 'exceptions of a review', readerName: 'Quill Person' },
    }),
  );
});

test('days bound the list, the last may not lie before the first, and a spreadsheet has a row for each', async () => {
  const all = await read();
  const later = await read('?fromOn=2027-01-01');
  expect(later).toMatchObject({ corrections: [], overrides: [] });
  expect(await read(`?fromOn=2000-01-01&toOn=${today()}`)).toMatchObject({ corrections: all.corrections });
  const wrong = await reviewer.caller.get(at('/exceptions?fromOn=2026-02-01&toOn=2026-01-01'));
  expect(wrong).toMatchObject({ status: 400, body: { fields: [{ field: 'toOn' }] } });
  const { body } = await reviewer.caller.get(at('/exceptions?format=csv'));
  const rows = all.corrections.length + all.overrides.length;
  expect((body as string).trimEnd().split('\r\n')).toHaveLength(1 + rows);
});

test('hardship and amounts are for treasurer and reviewer alone', async () => {
  expect((await buy.treasurer.get(at('/exceptions'))).status).toBe(200);
  for (const caller of [storehouse.coordinator, households.Dell.caller])
    expect((await caller.get(at('/exceptions'))).body.code).toBe('duty-missing');
});

test('looks into others’ things are summed by month, reader and purpose, as often as they were made', async () => {
  const { months } = bodyOf(await reviewer.caller.get(at('/private-reads/months')));
  const counted = await app.admin<{ looks: number }[]>`select count(*)::int as looks from book.private_read r
    join book.person p using (storehouse_id, person_id) where p.household_id is distinct from r.household_id`;
  const sum = months.reduce((total: number, { looks }: { looks: number }) => total + looks, 0);
  expect(sum).toBe(counted[0]?.looks);
  expect(months).toContainEqual(
    expect.objectContaining({
      ...{ month: today().slice(0, 7), reader: 'Quill Person', purpose: 'exceptions of a review' },
    }),
  );
  expect((await buy.treasurer.get(at('/private-reads/months'))).body.code).toBe('duty-missing');
});
