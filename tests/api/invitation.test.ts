import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { cookieOf, openTestApp, type TestApp } from '../support/app.ts';
import { aHousehold, anInvitation, aPersonOf } from '../support/household.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { A_PASSWORD, aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());
// Each test starts a quarter of an hour later, so that none counts another's attempts.
beforeEach(() => {
  app.clock.now = new Date(app.clock.now.getTime() + 16 * 60_000);
});

const joining = (email: string, more: Record<string, unknown> = {}) => ({
  personName: 'Nell Newcomer',
  login: { email, password: A_PASSWORD },
  ...more,
});

async function countPeople() {
  const [row] = await app.admin<{ logins: number; persons: number; households: number; seats: number }[]>`
    select (select count(*)::int from door.login) as logins, (select count(*)::int from book.person) as persons,
      (select count(*)::int from book.household) as households,
      (select sum(last_number)::int from book.code_counter where counter = 'seat') as seats`;
  return row;
}

describe('joining by a link', () => {
  test('a household joins and is a member at once', async () => {
    const birchall = await aHousehold(app, storehouse, 'Birchall');
    const me = await birchall.caller.get('/api/session');
    expect(me.body).toMatchObject({
      email: 'birchall@example.org',
      storehouses: [{ storehouseId: storehouse.storehouseId }],
    });
    const seen = await birchall.caller.get(`${storehouse.path}/households/${birchall.householdId}`);
    expect(seen.body).toMatchObject({ name: 'Birchall', seat: 2, joinedOn: '2026-09-01', leftOn: null });
  });

  test('whoever holds a link sees two names before joining, and nothing else', async () => {
    const invitation = await anInvitation(storehouse, { householdName: 'Corran' });
    const look = await app.as().get(invitation);
    expect(look.body).toEqual({
      storehouseName: 'Alder Row Storehouse',
      isNewHousehold: true,
      householdName: 'Corran',
      expiresAt: expect.any(String),
    });
  });

  test('the newcomer may name the household otherwise than was suggested', async () => {
    const invitation = await anInvitation(storehouse, { householdName: 'Dell family' });
    const joined = await app.as().post(invitation, joining('dell@example.org', { householdName: 'Dell' }));
    expect(joined.status).toBe(201);
    const seen = await storehouse.coordinator.get(`${storehouse.path}/households/${joined.body.householdId}`);
    expect(seen.body.name).toBe('Dell');
  });

  test('a second person joins a household that is there', async () => {
    const elder = await aHousehold(app, storehouse, 'Elder');
    const second = await aPersonOf(app, storehouse, elder, 'Edda Elder');
    expect(second.householdId).toBe(elder.householdId);
    expect(
      (await app.as().get(await anInvitation(storehouse, { householdId: elder.householdId }))).body,
    ).toMatchObject({ isNewHousehold: false, householdName: 'Elder' });
  });

  test('a login that is signed in joins a further storehouse and keeps both', async () => {
    const other = await anotherStorehouse(app);
    const fenn = await aHousehold(app, storehouse, 'Fenn');
    const invitation = await anInvitation(other, { householdName: 'Fenn' });
    const joined = await fenn.caller.post(invitation, { personName: 'Flo Fenn' });
    expect([joined.status, joined.headers.getSetCookie()]).toEqual([201, []]);
    const me = await fenn.caller.get('/api/session');
    expect(me.body.storehouses.map((row: { name: string }) => row.name)).toEqual([
      'Alder Row Storehouse',
      'Bell Lane Storehouse',
    ]);
    expect((await fenn.caller.get(`${other.path}/households`)).body.households).toHaveLength(2);
  });
});

describe('a token', () => {
  test('is shown once, and only its hash is stored', async () => {
    const answer = await storehouse.coordinator.post(`${storehouse.path}/invitations`, {});
    const { token, link } = answer.body;
    expect(link).toBe(`http://127.0.0.1:4180/invitations/${storehouse.storehouseId}/${token}`);
    const stored = await app.admin`select i.*, k.body from book.invitation i
      left join book.kept_answer k using (storehouse_id)`;
    expect(JSON.stringify(stored)).not.toContain(token);
    const list = await storehouse.coordinator.get(`${storehouse.path}/invitations`);
    expect(JSON.stringify(list.body)).not.toContain(token);
  });

  test('lets one person in, however many use it at once', async () => {
    const invitation = await anInvitation(storehouse, { householdName: 'Garth' });
    const before = await countPeople();
    const answers = await Promise.all(
      [1, 2, 3, 4, 5, 6].map((number) => app.as().post(invitation, joining(`garth-${number}@example.org`))),
    );
    expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 410, 410, 410, 410, 410]);
    expect(await countPeople()).toEqual({
      logins: (before?.logins ?? 0) + 1,
      persons: (before?.persons ?? 0) + 1,
      households: (before?.households ?? 0) + 1,
      seats: (before?.seats ?? 0) + 1,
    });
  });

  test('runs out after its days, to the moment', async () => {
    const invitation = await anInvitation(storehouse, { householdName: 'Hale', days: 2 });
    const madeAt = app.clock.now.getTime();
    app.clock.now = new Date(madeAt + 2 * 86_400_000 - 1);
    expect((await app.as().get(invitation)).status).toBe(200);
    app.clock.now = new Date(madeAt + 2 * 86_400_000);
    const late = await app.as().post(invitation, joining('hale@example.org'));
    expect([late.status, late.body.code]).toEqual([410, 'invitation-not-valid']);
  });

  test('is withdrawn once, and opens nothing any more', async () => {
    const made = await storehouse.coordinator.post(`${storehouse.path}/invitations`, {});
    const path = `${storehouse.path}/invitations/${made.body.id}`;
    expect((await storehouse.coordinator.delete(path)).status).toBe(204);
    expect((await storehouse.coordinator.delete(path)).body.code).toBe('invitation-not-valid');
    const look = await app.as().get(`/api/invitations/${storehouse.storehouseId}/${made.body.token}`);
    expect(look.body.code).toBe('invitation-not-valid');
  });

  test('a made-up one, and one of no storehouse at all, get the same answer', async () => {
    const other = '01890000-0000-7000-8000-000000000000';
    const answers = await Promise.all([
      app.as().get(`/api/invitations/${storehouse.storehouseId}/made-up`),
      app.as().get(`/api/invitations/${other}/made-up`),
      app.as().get('/api/invitations/no-id/made-up'),
    ]);
    expect(answers.map(({ body }) => body.code)).toEqual(Array(3).fill('invitation-not-valid'));
    expect(new Set(answers.map(({ body }) => body.detail)).size).toBe(1);
  });

  test('guessing ends after ten tries, until a quarter of an hour has passed', async () => {
    const guess = (word: number) => app.as().get(`/api/invitations/${storehouse.storehouseId}/word-${word}`);
    for (const word of Array(10).keys()) expect((await guess(word)).status).toBe(410);
    expect((await guess(11)).body).toMatchObject({ code: 'too-many-attempts', retryAfterSeconds: 900 });
    app.clock.now = new Date(app.clock.now.getTime() + 15 * 60_000 + 1);
    expect((await guess(12)).status).toBe(410);
  });

  test('one link takes ten tries to join with, so that nobody hashes passwords without end', async () => {
    const invitation = await anInvitation(storehouse, { householdName: 'Ashdown' }); // a name that is taken
    const attempt = () => app.as().post(invitation, joining('taken-name@example.org'));
    for (const _ of Array(10).keys()) expect((await attempt()).body.code).toBe('already-there');
    expect((await attempt()).body.code).toBe('too-many-attempts');
  });
});

describe('a link is refused and stays unused when', () => {
  test.for([
    {
      because: 'nobody is signed in and no login is asked for',
      body: { personName: 'Nell' },
      code: 'not-signed-in',
    },
    {
      because: 'the e-mail address has a login',
      body: joining('coordinator@example.org', { householdName: 'Isle' }),
      code: 'email-taken',
    },
    {
      because: 'a new household has no name',
      body: joining('isle@example.org'),
      code: 'invalid-input',
      field: 'householdName',
    },
    {
      because: 'the name is another household’s',
      body: joining('isle@example.org', { householdName: 'Ashdown' }),
      code: 'already-there',
      field: 'householdName',
    },
    {
      because: 'the name is what a household that left is called',
      body: joining('isle@example.org', { householdName: ' seat 12' }),
      code: 'invalid-input',
      field: 'householdName',
    },
    {
      because: 'the password is short',
      body: {
        personName: 'Nell',
        householdName: 'Isle',
        login: { email: 'isle@example.org', password: 'short' },
      },
      code: 'invalid-input',
      field: 'login.password',
    },
    {
      because: 'there is a field that it does not know',
      body: joining('isle@example.org', { duty: 'coordinator' }),
      code: 'invalid-input',
      field: 'duty',
    },
  ])('$because', async ({ body, code, field }) => {
    const invitation = await anInvitation(storehouse, {});
    const before = await countPeople();
    const answer = await app.as().post(invitation, body);
    expect(answer.body.code).toBe(code);
    expect(answer.body.fields.map((row: { field: string }) => row.field)).toEqual(field ? [field] : []);
    expect(await countPeople()).toEqual(before);
    expect((await app.as().get(invitation)).status).toBe(200);
  });

  test('the login that is signed in belongs to the storehouse already', async () => {
    const invitation = await anInvitation(storehouse, { householdName: 'Jory' });
    const before = await countPeople();
    const again = await storehouse.coordinator.post(invitation, { personName: 'Ada again' });
    expect([again.status, again.body.code]).toEqual([409, 'already-a-member']);
    expect(await countPeople()).toEqual(before);
    expect((await app.as().get(invitation)).status).toBe(200);
  });

  test('it leads into a household with a name, and another name is given', async () => {
    const kerr = await aHousehold(app, storehouse, 'Kerr');
    const invitation = await anInvitation(storehouse, { householdId: kerr.householdId });
    const answer = await app.as().post(invitation, joining('kit@example.org', { householdName: 'Kit' }));
    expect(answer.body).toMatchObject({ code: 'invalid-input', fields: [{ field: 'householdName' }] });
  });
});

describe('the coordinator’s links', () => {
  test.for([
    {
      because: 'a household of no storehouse',
      body: { householdId: '01890000-0000-7000-8000-000000000000' },
      status: 404,
      code: 'thing-not-found',
    },
    { because: 'more than ninety days', body: { days: 91 }, status: 400, code: 'invalid-input' },
    { because: 'half a day', body: { days: 0.5 }, status: 400, code: 'invalid-input' },
    { because: 'no day at all', body: { days: 0 }, status: 400, code: 'invalid-input' },
  ])('$because is refused', async ({ body, status, code }) => {
    const answer = await storehouse.coordinator.post(`${storehouse.path}/invitations`, body);
    expect([answer.status, answer.body.code]).toEqual([status, code]);
  });

  test('a household is either named or there already, not both', async () => {
    const lund = await aHousehold(app, storehouse, 'Lund');
    const body = { householdId: lund.householdId, householdName: 'Lund' };
    const answer = await storehouse.coordinator.post(`${storehouse.path}/invitations`, body);
    expect(answer.body).toMatchObject({ code: 'invalid-input', fields: [{ field: 'householdName' }] });
  });

  test('a member without the duty makes, lists and withdraws none; that is said before the body is read', async () => {
    const moor = await aHousehold(app, storehouse, 'Moor');
    const path = `${storehouse.path}/invitations`;
    const answers = [
      await moor.caller.post(path, { days: 'many' }),
      await moor.caller.get(path),
      await moor.caller.delete(`${path}/01890000-0000-7000-8000-000000000000`),
    ];
    expect(answers.map(({ body }) => body.code)).toEqual(Array(3).fill('duty-missing'));
  });

  test('are listed newest first, page by page, with what became of each', async () => {
    const other = await anotherStorehouse(app, 'Cold Spring Storehouse');
    const path = `${other.path}/invitations`;
    await anInvitation(other, { householdName: 'One', days: 1 });
    const two = (await other.coordinator.post(path, { householdName: 'Two' })).body;
    await other.coordinator.delete(`${path}/${two.id}`);
    await aHousehold(app, other, 'Three', { email: 'three@example.org' });
    await anInvitation(other, { householdName: 'Four' });
    app.clock.now = new Date(app.clock.now.getTime() + 86_400_000);
    const first = (await other.coordinator.get(`${path}?limit=3`)).body;
    const second = (await other.coordinator.get(`${path}?limit=3&after=${first.next}`)).body;
    const rows = [...first.invitations, ...second.invitations];
    expect(rows.map(({ householdName, state }) => [householdName, state])).toEqual([
      ['Four', 'open'],
      ['Three', 'used'],
      ['Two', 'withdrawn'],
      ['One', 'run-out'],
    ]);
    expect([first.invitations.length, second.next]).toEqual([3, null]);
    const csv = await other.coordinator.get(`${path}?format=csv`);
    expect(csv.headers.get('Content-Type')).toBe('text/csv; charset=utf-8');
    expect(csv.body.split('\r\n')).toHaveLength(1 + 4 + 1);
  });

  test('another storehouse’s link is not found', async () => {
    const other = await anotherStorehouse(app, 'Deep Well Storehouse');
    const made = await storehouse.coordinator.post(`${storehouse.path}/invitations`, {});
    const answer = await other.coordinator.delete(`${other.path}/invitations/${made.body.id}`);
    expect(answer.body.code).toBe('thing-not-found');
    const token = `/api/invitations/${other.storehouseId}/${made.body.token}`;
    expect((await app.as().get(token)).body.code).toBe('invitation-not-valid');
  });
});

test('a new login is signed in by joining, and signs in again with its password', async () => {
  const invitation = await anInvitation(storehouse, { householdName: 'Nash' });
  const joined = await app.as().post(invitation, joining('Nash@Example.org '));
  expect((await app.as(cookieOf(joined)).get('/api/session')).body.name).toBe('Nell Newcomer');
  const again = await app.as().post('/api/session', { email: 'nash@example.org', password: A_PASSWORD });
  expect(again.status).toBe(201);
});
