import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aHousehold, aPersonOf, type TestHousehold } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let helper: TestHousehold;
/** On paper: Florence Fenn has no login. */
let fenn: { householdId: string; personId: string };
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  helper = await aHousehold(app, storehouse, 'Birchall');
  const paper = { name: 'Fenn', personName: 'Florence Fenn' };
  const made = await storehouse.coordinator.post(`${storehouse.path}/households`, paper);
  fenn = { householdId: made.body.id, personId: made.body.personId };
});
afterAll(() => app.close());

const DAY = 86_400_000;
const pathOf = (householdId: string, rest = '') => `${storehouse.path}/households/${householdId}${rest}`;
const helpersOf = (householdId: string) => pathOf(householdId, '/helpers');
const actingFor = (householdId: string) => ({ 'Sheafbook-For-Household': householdId });
const wish = (more: Record<string, unknown> = {}) => ({
  personId: helper.personId,
  days: 30,
  reason: 'writes on paper',
  ...more,
});
const countGrants = async () => (await app.admin`select count(*)::int as n from book.helper_grant`)[0]?.n;

describe('a helper', () => {
  test('named by the coordinator for a household without a login acts for it, and it is written down', async () => {
    const named = await storehouse.coordinator.post(helpersOf(fenn.householdId), wish());
    expect([named.status, named.body]).toMatchObject([
      201,
      { helperName: 'Birchall Person', householdName: 'Fenn', isInForce: true, reason: 'writes on paper' },
    ]);
    const eaters = pathOf(fenn.householdId, '/eaters');
    const headers = actingFor(fenn.householdId);
    const entered = await helper.caller.post(eaters, { name: 'Florence', birthOn: '1941' }, headers);
    expect(entered.status).toBe(201);
    expect((await helper.caller.get(eaters, headers)).body.eaters).toHaveLength(1);
    const reads = await helper.caller.get(pathOf(fenn.householdId, '/private-reads'), headers);
    expect(reads.body.privateReads).toMatchObject([
      { readerName: 'Birchall Person', what: 'eaters', purpose: 'helping' },
    ]);
    const without = await helper.caller.get(eaters);
    expect(without.body.code).toBe('not-your-household');
  });

  test('acts to the last moment of the right, and not one longer', async () => {
    const corran = await aHousehold(app, storehouse, 'Corran');
    const startedAt = app.clock.now.getTime();
    await corran.caller.post(helpersOf(corran.householdId), wish({ days: 400, reason: '' }));
    const look = () => helper.caller.get(pathOf(corran.householdId, '/plan'), actingFor(corran.householdId));
    app.clock.now = new Date(startedAt + 400 * DAY - 1);
    // A year on, everyone has signed in again; the session is prolonged here so that the right alone is tested.
    await app.admin`update door.session set expires_at = ${new Date(startedAt + 500 * DAY)}`;
    expect((await look()).status).toBe(200);
    app.clock.now = new Date(startedAt + 400 * DAY);
    expect((await look()).body.code).toBe('helper-grant-missing');
    const list = (await corran.caller.get(helpersOf(corran.householdId))).body.helpers;
    expect(list).toMatchObject([{ isInForce: false, endedAt: null }]);
    app.clock.now = new Date(startedAt);
  });

  test('has no duty of its own while it helps', async () => {
    const dell = await aHousehold(app, storehouse, 'Dell', { duties: ['coordinator'] });
    await storehouse.coordinator.post(helpersOf(fenn.householdId), wish({ personId: dell.personId }));
    const invitations = `${storehouse.path}/invitations`;
    expect((await dell.caller.get(invitations)).status).toBe(200);
    const helping = await dell.caller.get(invitations, actingFor(fenn.householdId));
    expect(helping.body.code).toBe('duty-missing');
  });

  test('names no further helpers and takes nobody out', async () => {
    const headers = actingFor(fenn.householdId);
    const answers = [
      await helper.caller.post(helpersOf(fenn.householdId), wish(), headers),
      await helper.caller.post(pathOf(fenn.householdId, '/leaving'), { version: 1 }, headers),
    ];
    expect(answers.map(({ body }) => body.code)).toEqual(['duty-missing', 'duty-missing']);
  });

  test.for([
    { what: 'a household that named nobody', id: () => helperlessId },
    { what: 'a household of no storehouse', id: () => '01890000-0000-7000-8000-000000000000' },
    { what: 'no id at all', id: () => 'Fenn' },
  ])('has no right to act for $what', async ({ id }) => {
    const answer = await helper.caller.get(`${storehouse.path}/households`, actingFor(id()));
    expect([answer.status, answer.body.code]).toEqual([403, 'helper-grant-missing']);
  });
  let helperlessId = '';
  beforeAll(async () => {
    helperlessId = (await aHousehold(app, storehouse, 'Elder')).householdId;
  });
});

describe('a right to help ends early', () => {
  test.for([
    { by: 'the household', caller: 'household' },
    { by: 'the coordinator', caller: 'coordinator' },
    { by: 'the helper', caller: 'helper' },
  ] as const)('by $by', async ({ by, caller }) => {
    const garth = await aHousehold(app, storehouse, `Garth of ${by}`);
    const grant = (await garth.caller.post(helpersOf(garth.householdId), wish())).body;
    const callers = { household: garth.caller, coordinator: storehouse.coordinator, helper: helper.caller };
    const path = `${helpersOf(garth.householdId)}/${grant.id}`;
    expect((await callers[caller].delete(path)).status).toBe(204);
    const look = await helper.caller.get(`${storehouse.path}/households`, actingFor(garth.householdId));
    expect(look.body.code).toBe('helper-grant-missing');
    expect((await callers[caller].delete(path)).body.code).toBe('helper-grant-missing');
  });

  test('by nobody else', async () => {
    const hale = await aHousehold(app, storehouse, 'Hale');
    const neighbour = await aHousehold(app, storehouse, 'Isle', { duties: ['treasurer'] });
    const grant = (await hale.caller.post(helpersOf(hale.householdId), wish())).body;
    const answer = await neighbour.caller.delete(`${helpersOf(hale.householdId)}/${grant.id}`);
    expect(answer.body.code).toBe('not-your-household');
    const elsewhere = await storehouse.coordinator.delete(`${helpersOf(fenn.householdId)}/${grant.id}`);
    expect(elsewhere.body.code).toBe('thing-not-found');
    expect(
      (await helper.caller.get(`${storehouse.path}/households`, actingFor(hale.householdId))).status,
    ).toBe(200);
  });
});

describe('naming a helper is refused', () => {
  test.for([
    { because: 'for 401 days', more: { days: 401 }, field: 'days' },
    { because: 'for no day', more: { days: 0 }, field: 'days' },
    { because: 'without an end', more: { days: null }, field: 'days' },
    { because: 'by a coordinator who gives no reason', more: { reason: ' ' }, field: 'reason' },
    { because: 'when the helper is no id', more: { personId: 'Birchall' }, field: 'personId' },
    { because: 'with a field that there is none of', more: { forever: true }, field: 'forever' },
  ])('$because', async ({ more, field }) => {
    const before = await countGrants();
    const answer = await storehouse.coordinator.post(helpersOf(fenn.householdId), wish(more));
    expect([answer.body.code, answer.body.fields[0].field]).toEqual(['invalid-input', field]);
    expect(await countGrants()).toBe(before);
  });

  test('by the coordinator, where the household has a login to do it with', async () => {
    const jory = await aHousehold(app, storehouse, 'Jory');
    const answer = await storehouse.coordinator.post(helpersOf(jory.householdId), wish());
    expect(answer.body.code).toBe('not-your-household');
  });

  test('by a neighbour', async () => {
    const answer = await helper.caller.post(helpersOf(fenn.householdId), wish());
    expect(answer.body.code).toBe('not-your-household');
  });

  test('for somebody of the household itself, and for somebody without a login', async () => {
    const kerr = await aHousehold(app, storehouse, 'Kerr');
    const kit = await aPersonOf(app, storehouse, kerr, 'Kit Kerr');
    for (const personId of [kit.personId, fenn.personId]) {
      const answer = await kerr.caller.post(helpersOf(kerr.householdId), wish({ personId }));
      expect(answer.body).toMatchObject({ code: 'invalid-input', fields: [{ field: 'personId' }] });
    }
  });

  test('for a person of another storehouse', async () => {
    const other = await anotherStorehouse(app);
    const [stranger] = (await other.coordinator.get(`${other.path}/persons`)).body.persons;
    const answer = await storehouse.coordinator.post(
      helpersOf(fenn.householdId),
      wish({ personId: stranger.id }),
    );
    expect(answer.body).toMatchObject({ code: 'thing-not-found', thing: 'person' });
  });

  test('twice while the first is in force, also when both come at once', async () => {
    const lund = await aHousehold(app, storehouse, 'Lund');
    const answers = await Promise.all(
      [1, 2, 3].map(() => lund.caller.post(helpersOf(lund.householdId), wish())),
    );
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409, 409]);
    expect(answers.map(({ body }) => body.code)).toContain('already-there');
  });
});

test('both sides see their grants, past ones too, newest first and page by page', async () => {
  const moor = await aHousehold(app, storehouse, 'Moor');
  const nash = await aHousehold(app, storehouse, 'Nash');
  const first = (await moor.caller.post(helpersOf(moor.householdId), wish({ personId: nash.personId }))).body;
  await moor.caller.delete(`${helpersOf(moor.householdId)}/${first.id}`);
  await moor.caller.post(helpersOf(moor.householdId), wish({ personId: nash.personId, days: 1 }));
  const ofHousehold = (await moor.caller.get(helpersOf(moor.householdId))).body.helpers;
  const ofHelper = (await nash.caller.get(`${storehouse.path}/helping?limit=1`)).body;
  const rest = (await nash.caller.get(`${storehouse.path}/helping?limit=1&after=${ofHelper.next}`)).body;
  expect(ofHousehold.map((row: { isInForce: boolean }) => row.isInForce)).toEqual([true, false]);
  expect([...ofHelper.helpers, ...rest.helpers]).toEqual(ofHousehold);
  const neighbour = await helper.caller.get(helpersOf(moor.householdId));
  expect(neighbour.body.code).toBe('not-your-household');
});
