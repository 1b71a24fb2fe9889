import { afterAll, beforeAll, expect, test } from 'vitest';
import { cookieOf, openTestApp, type TestApp } from '../support/app.ts';
import { A_PASSWORD, aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

const signIn = (password: string, email = 'coordinator@example.org') =>
  app.as().post('/api/session', { email, password });

test('the first run makes a login, a storehouse with its currency, and a coordinator', async () => {
  const me = await storehouse.coordinator.get('/api/session');
  expect(me.body).toMatchObject({ name: 'Ada Ashdown', storehouses: [{ name: 'Alder Row Storehouse' }] });
  const read = await storehouse.coordinator.get(storehouse.path);
  expect(read.body).toMatchObject({ currency: 'USD', rules: { rulesVersion: 1, depositPercent: 40 } });
});

test('a server is set up once', async () => {
  const again = await app.as().post('/api/set-up', {
    email: 'second@example.org',
    password: A_PASSWORD,
    personName: 'Second',
    householdName: 'Second',
    storehouse: { name: 'Another', currency: 'USD', timeZone: 'UTC' },
  });
  expect([again.status, again.body.code]).toEqual([409, 'already-set-up']);
  expect((await app.as().get('/api/set-up')).body).toEqual({ isSetUp: true });
});

test('only a hash of the session token is stored', async () => {
  const cookie = cookieOf(await signIn(A_PASSWORD));
  const token = cookie.split('=')[1] ?? '';
  const rows = await app.admin<{ session_id: string }[]>`select session_id from door.session`;
  expect(rows.length).toBeGreaterThan(0);
  expect(rows.map((row) => row.session_id)).not.toContain(token);
  expect((await app.as(cookie).get('/api/session')).status).toBe(200);
});

test('a wrong password and an unknown address get the same answer', async () => {
  const wrong = await signIn('not the password');
  const unknown = await signIn(A_PASSWORD, 'nobody@example.org');
  expect([wrong.status, wrong.body.code]).toEqual([401, 'sign-in-failed']);
  expect(unknown.body.detail).toBe(wrong.body.detail);
});

test('signing out everywhere ends every session', async () => {
  const [here, there] = [cookieOf(await signIn(A_PASSWORD)), cookieOf(await signIn(A_PASSWORD))];
  expect((await app.as(here).delete('/api/sessions')).status).toBe(204);
  expect((await app.as(there).get('/api/session')).body.code).toBe('not-signed-in');
});
