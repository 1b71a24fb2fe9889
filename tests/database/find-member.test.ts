import { createHash } from 'node:crypto';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aHousehold } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

// door.find_member answers beside row-level security, so it must answer about the session's own login alone.
let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

const hashOf = (token: string) => createHash('sha256').update(token).digest('hex');
const findMember = (token: string, storehouseId = storehouse.storehouseId) =>
  app.sql`select email, person_id, household_id, currency, time_zone, duties
    from door.find_member(${hashOf(token)}, ${storehouseId})`;

async function tokenOf(email: string): Promise<string> {
  const token = `a token of ${email}`;
  await app.admin`insert into door.session (session_id, login_id, expires_at)
    select ${hashOf(token)}, login_id, '2030-01-01' from door.login where email = ${email}`;
  return token;
}

test('a session finds its own person, household and duties in force', async () => {
  const household = await aHousehold(app, storehouse, 'Birchall', { duties: ['treasurer', 'packing_lead'] });
  await storehouse.coordinator.delete(`${storehouse.path}/persons/${household.personId}/duties/packing_lead`);
  const [found] = await findMember(await tokenOf('birchall@example.org'));
  expect(found).toEqual({
    email: 'birchall@example.org',
    person_id: household.personId,
    household_id: household.householdId,
    currency: 'USD',
    time_zone: 'America/Chicago',
    duties: ['treasurer'],
  });
});

test('of a storehouse where the login is nobody, it says nothing', async () => {
  const other = await anotherStorehouse(app);
  const [found] = await findMember(await tokenOf('coordinator@example.org'), other.storehouseId);
  expect(found).toMatchObject({
    email: 'coordinator@example.org',
    person_id: null,
    currency: null,
    duties: [],
  });
});

test('a person who left is nobody, and a household that left is none', async () => {
  const corran = await aHousehold(app, storehouse, 'Corran');
  const token = await tokenOf('corran@example.org');
  await app.admin`update book.household set left_on = '2026-09-01' where household_id = ${corran.householdId}`;
  expect((await findMember(token))[0]).toMatchObject({ person_id: corran.personId, household_id: null });
  await app.admin`update book.person set left_on = '2026-09-01' where person_id = ${corran.personId}`;
  expect((await findMember(token))[0]).toMatchObject({ person_id: null, household_id: null, duties: [] });
});

test('an unknown token finds nothing at all', async () => {
  expect(await findMember('a guess')).toHaveLength(0);
});
