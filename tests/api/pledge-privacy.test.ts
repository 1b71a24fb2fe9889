import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf, pledgeBody, type TestBuy } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

/*
 * Job map 14: a member sees pledges of others only as a sum over five households or more, with the own pledge known
 * and so taken off; coordinator, treasurer, packing lead and reviewer see masses; a ceiling is its household's own.
 */
const NAMES = ['Birchall', 'Corran', 'Dell', 'Eastman', 'Farrow', 'Garland'] as const;

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestBuy;
const households: TestHousehold[] = [];
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  for (const name of NAMES) households.push(await aHousehold(app, storehouse, name));
  buy = await aBuy(app, storehouse, { name: 'Buy 1' });
});
afterAll(() => app.close());

const household = (position: number): TestHousehold => {
  const found = households[position];
  if (!found) throw new Error(`there is no household ${position}`);
  return found;
};
const seenBy = async (caller: Caller, headers: Record<string, string> = {}) =>
  bodyOf(await caller.get(`${buy.path}/pledges`, headers)).lines[0].pledged;

test('a sum is held back until five households besides the reader’s own stand behind it', async () => {
  for (const member of households.slice(0, 5))
    await aPledge(member.caller, buy, { wanted: 50, ceilingMinorUnits: 80 });
  // Five pledged. Garland pledged nothing and sees all five; Birchall could take its own off, which leaves four.
  expect(await seenBy(household(5).caller)).toMatchObject({
    isShown: true,
    households: 5,
    wantedGrams: 113_400,
  });
  expect(await seenBy(household(0).caller)).toEqual({ isShown: false });
  const page = bodyOf(await household(0).caller.get(buy.path));
  expect(page.lines[0].pledged).toEqual({ isShown: false });
  expect(await seenBy(storehouse.coordinator)).toMatchObject({ isShown: true, households: 5 });
  await aPledge(household(5).caller, buy, { wanted: 50 });
  expect(await seenBy(household(0).caller)).toMatchObject({
    isShown: true,
    households: 6,
    wantedGrams: 136_080,
  });
});

test('no reply but a household’s own holds its ceiling', async () => {
  const own = await household(0).caller.get(`${buy.path}/pledges`);
  expect(own.body.own[0]).toMatchObject({ ceilingMinorUnits: 80, ceilingPerGrams: 454 });
  for (const caller of [storehouse.coordinator, household(1).caller])
    for (const path of [buy.path, `${buy.path}/pledges`, `${buy.path}/household-pledges`]) {
      const { own: _, ...rest } = (await caller.get(path)).body;
      expect(JSON.stringify(rest)).not.toContain('eiling');
    }
});

test('the database shows a household no other ceiling, whatever is asked', async () => {
  const [first, second] = [household(0), household(1)];
  const ceilings = (householdId: string, task: string) =>
    app.sql.begin(async (sql) => {
      await sql`select set_config('app.storehouse', ${storehouse.storehouseId}, true),
        set_config('app.household', ${householdId}, true), set_config('app.task', ${task}, true)`;
      return sql<{ household_id: string }[]>`select household_id from book.pledge_ceiling`;
    });
  // ledger-notes 6.19
  expect(await ceilings(first.householdId, '')).toEqual([{ household_id: first.householdId }]);
  expect(await ceilings(second.householdId, '')).toEqual([{ household_id: second.householdId }]);
  expect(await ceilings('', '')).toEqual([]);
  expect(await ceilings('', 'fill')).toHaveLength(5);
});

test('duties that need them read each household’s masses, and every household finds the look', async () => {
  const refused = await household(1).caller.get(`${buy.path}/household-pledges`);
  expect([refused.status, refused.body.code]).toEqual([403, 'duty-missing']);
  await app.admin`delete from book.private_read`;
  const first = bodyOf(await storehouse.coordinator.get(`${buy.path}/household-pledges?limit=4`));
  expect(first.pledges.map((pledge: { householdName: string }) => pledge.householdName)).toEqual(
    NAMES.slice(0, 4),
  );
  const looks = await app.admin<{ household_id: string; what: string; purpose: string }[]>`
    select household_id, what, purpose from book.private_read`;
  const seen = households.slice(0, 4).map((member) => member.householdId);
  expect(looks.map((look) => look.household_id).toSorted()).toEqual(seen.toSorted());
  expect(looks[0]).toMatchObject({ what: 'pledges', purpose: 'pledges of the buy Buy 1' });
  const rest = bodyOf(await storehouse.coordinator.get(`${buy.path}/household-pledges?after=${first.next}`));
  expect(rest.pledges.map((pledge: { householdName: string }) => pledge.householdName)).toEqual(
    NAMES.slice(4),
  );
  const csv = await storehouse.coordinator.get(`${buy.path}/household-pledges?format=csv`);
  expect(csv.body).toContain('Garland');
});

test('a helper pledges for a household while its right lasts, and both show that it did', async () => {
  const [helper, helped] = [household(4), household(3)];
  const own = await aBuy(app, storehouse, { foods: ['rye'] });
  const forHelped = { 'Sheafbook-For-Household': helped.householdId };
  const wish = pledgeBody(own, { wanted: 25 });
  const refused = await helper.caller.post(`${own.path}/pledges`, wish, forHelped);
  expect([refused.status, refused.body.code]).toEqual([403, 'helper-grant-missing']);
  bodyOf(
    await helped.caller.post(`${storehouse.path}/households/${helped.householdId}/helpers`, {
      personId: helper.personId,
      days: 10,
      reason: 'broken wrist',
    }),
    201,
  );
  const pledge = bodyOf(await helper.caller.post(`${own.path}/pledges`, wish, forHelped), 201);
  expect(pledge).toMatchObject({
    householdId: helped.householdId,
    enteredBy: helper.personId,
    isEnteredFor: true,
  });
  const read = bodyOf(await helped.caller.get(`${own.path}/pledges`));
  expect(read.own).toEqual([pledge]);
  const mine = bodyOf(await helper.caller.get(`${own.path}/pledges`));
  expect(mine.own).toEqual([]);
  expect(bodyOf(await helper.caller.get(`${own.path}/pledges`, forHelped)).own).toEqual([pledge]);
  const looks = await app.admin`select 1 from book.private_read
    where household_id = ${helped.householdId} and person_id = ${helper.personId} and purpose = 'helping'`;
  expect(looks.length).toBeGreaterThan(0);
  app.clock.now = new Date(app.clock.now.getTime() + 11 * 86_400_000);
  const late = await helper.caller.put(
    `${own.path}/pledges/${pledge.id}`,
    { ...wish, version: 1 },
    forHelped,
  );
  expect([late.status, late.body.code]).toEqual([403, 'helper-grant-missing']);
});

test('a household that has left pledges nothing, by itself or through a helper', async () => {
  const [helper, leaver] = [household(4), household(2)];
  const own = await aBuy(app, storehouse, { foods: ['spelt'] });
  bodyOf(
    await leaver.caller.post(`${storehouse.path}/households/${leaver.householdId}/helpers`, {
      personId: helper.personId,
      days: 100,
      reason: 'moving house',
    }),
    201,
  );
  await app.admin`update book.household set left_on = '2026-09-12' where household_id = ${leaver.householdId}`;
  const wish = pledgeBody(own, { wanted: 25 });
  const itself = await leaver.caller.post(`${own.path}/pledges`, wish);
  expect([itself.status, itself.body.code]).toEqual([403, 'household-needed']);
  const headers = { 'Sheafbook-For-Household': leaver.householdId };
  const helped = await helper.caller.post(`${own.path}/pledges`, wish, headers);
  expect([helped.status, helped.body.code]).toEqual([409, 'household-has-left']);
  expect(await app.admin`select 1 from book.pledge where buy_id = ${own.buyId}`).toHaveLength(0);
});
