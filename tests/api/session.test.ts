import { randomBytes } from 'node:crypto';
import { createApp, openLog, readConfig } from '@sheafbook/api';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Answer, type Caller, cookieOf, openTestApp, type TestApp } from '../support/app.ts';
import { aHousehold } from '../support/household.ts';
import { A_PASSWORD, aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

const MINUTE = 60_000;
const DAY = 86_400_000;
const EMAIL = 'coordinator@example.org';
const signIn = (password = A_PASSWORD, email = EMAIL) => app.as().post('/api/session', { email, password });
const aSession = async (): Promise<Caller> => app.as(cookieOf(await signIn()));
const isIn = async (caller: Caller) => (await caller.get('/api/session')).status === 200;
const setCookies = ({ headers }: Answer) => headers.getSetCookie();
const later = (minutes: number) => {
  app.clock.now = new Date(app.clock.now.getTime() + minutes * MINUTE);
};

/** The cookie's attributes by name, and its own name and value under `name` and `value`. */
function attributesOf(line = ''): Record<string, string | true> {
  const [pair = '', ...attributes] = line.split('; ');
  const [name = '', value = ''] = pair.split('=');
  return {
    name,
    value,
    ...Object.fromEntries(attributes.map((text) => [text.split('=')[0] ?? '', text.split('=')[1] ?? true])),
  };
}

describe('the cookie of a session', () => {
  test('over plain HTTP in a hall can’t be read by a script, nor be sent along by another site', async () => {
    const cookie = attributesOf(setCookies(await signIn())[0]);
    expect(cookie).toMatchObject({ name: 'sheafbook', Path: '/', HttpOnly: true, SameSite: 'Lax' });
    expect(cookie).not.toHaveProperty('Secure');
    expect(cookie).not.toHaveProperty('Domain');
    expect(String(cookie.value).length).toBe(43); // 32 bytes in base64url
  });

  test('behind TLS is bound to this very host as well', async () => {
    const { app: secure, ask } = overTls();
    const signedIn = await ask('/api/session', { email: EMAIL, password: A_PASSWORD });
    const cookie = attributesOf(signedIn.headers.getSetCookie()[0]);
    expect(cookie).toMatchObject({ name: '__Host-sheafbook', Path: '/', HttpOnly: true, Secure: true });
    expect(cookie).not.toHaveProperty('Domain');
    const Cookie = `__Host-sheafbook=${cookie.value}`;
    expect((await secure.request('/api/session', { headers: { Cookie } })).status).toBe(200);
    const plain = await secure.request('/api/session', { headers: { Cookie: `sheafbook=${cookie.value}` } });
    expect(plain.status).toBe(401);
    const out = await secure.request('/api/session', { method: 'DELETE', headers: { Cookie } });
    expect(attributesOf(out.headers.getSetCookie()[0])).toMatchObject({
      name: '__Host-sheafbook',
      value: '',
      Secure: true,
      'Max-Age': '0',
    });
  });

  function overTls() {
    const { db, sql, clock } = app;
    const outside = { db, sql, now: () => clock.now, randomBytes };
    const config = readConfig({ PUBLIC_URL: 'https://store.example.org' });
    const secure = createApp({ outside, config, log: openLog('silent') });
    const ask = (path: string, body: unknown) =>
      secure.request(path, {
        method: 'POST',
        headers: { 'Content-Type': 'application/json', Origin: 'https://store.example.org' },
        body: JSON.stringify(body),
      });
    return { app: secure, ask };
  }
});

describe('a session', () => {
  const expiryOf = async () => {
    const [row] = await app.admin<{ expires_at: Date }[]>`
      select expires_at from door.session order by expires_at desc limit 1`;
    return row?.expires_at.getTime() ?? 0;
  };
  const moveExpiry = (milliseconds: number) =>
    app.admin`update door.session set expires_at = ${new Date(Date.now() + milliseconds).toISOString()}`;

  test('lasts thirty days, and is not touched in the first half of them', async () => {
    const caller = await aSession();
    const first = await expiryOf();
    expect(Math.abs(first - (Date.now() + 30 * DAY))).toBeLessThan(5 * MINUTE);
    await moveExpiry(16 * DAY);
    const kept = await expiryOf();
    expect(setCookies(await caller.get('/api/session'))).toEqual([]);
    expect(await expiryOf()).toBe(kept);
  });

  test('is prolonged to thirty days when it is used in the second half, with its cookie', async () => {
    const caller = await aSession();
    await moveExpiry(14 * DAY);
    const answer = await caller.get(storehouse.path);
    const [line = ''] = setCookies(answer);
    expect(attributesOf(line)).toMatchObject({ name: 'sheafbook', HttpOnly: true });
    expect(Math.abs((await expiryOf()) - (Date.now() + 30 * DAY))).toBeLessThan(5 * MINUTE);
    expect(setCookies(await caller.get(storehouse.path))).toEqual([]); // once is enough
  });

  test('that has run out opens nothing', async () => {
    const caller = await aSession();
    await moveExpiry(-1000);
    for (const path of ['/api/session', storehouse.path])
      expect((await caller.get(path)).body.code).toBe('not-signed-in');
    storehouse = { ...storehouse, coordinator: await aSession() };
  });

  test('ends where somebody signs out, and nowhere else', async () => {
    const [here, there] = [await aSession(), await aSession()];
    const out = await here.delete('/api/session');
    expect([out.status, attributesOf(setCookies(out)[0])]).toMatchObject([
      204,
      { value: '', 'Max-Age': '0' },
    ]);
    expect([await isIn(here), await isIn(there)]).toEqual([false, true]);
  });

  test('ends everywhere when somebody signs out everywhere, and no neighbour’s with it', async () => {
    const neighbour = await aHousehold(app, storehouse, 'Birchall');
    const [here, there] = [await aSession(), await aSession()];
    expect((await here.delete('/api/sessions')).status).toBe(204);
    expect([await isIn(here), await isIn(there), await isIn(neighbour.caller)]).toEqual([false, false, true]);
    storehouse = { ...storehouse, coordinator: await aSession() };
  });
});

describe('a password', () => {
  const NEW = 'another long enough one';

  test('is changed by whoever knows the old one; every other session ends and this one goes on anew', async () => {
    const [here, there] = [await aSession(), await aSession()];
    const wrong = await here.put('/api/password', { currentPassword: 'not this', newPassword: NEW });
    expect([wrong.status, wrong.body]).toMatchObject([
      401,
      { code: 'sign-in-failed', fields: [{ field: 'currentPassword' }] },
    ]);
    expect(await isIn(there)).toBe(true);
    const changed = await here.put('/api/password', { currentPassword: A_PASSWORD, newPassword: NEW });
    expect(changed.status).toBe(204);
    const anew = app.as(cookieOf(changed));
    expect([await isIn(here), await isIn(there), await isIn(anew)]).toEqual([false, false, true]);
    expect([(await signIn()).status, (await signIn(NEW)).status]).toEqual([401, 201]);
    const back = await anew.put('/api/password', { currentPassword: NEW, newPassword: A_PASSWORD });
    expect(back.status).toBe(204);
  });

  test('of fewer than ten characters is refused, and of more than two hundred', async () => {
    const here = await aSession();
    for (const newPassword of ['nine char', 'x'.repeat(201)]) {
      const body = { currentPassword: A_PASSWORD, newPassword };
      expect((await here.put('/api/password', body)).body).toMatchObject({
        code: 'invalid-input',
        fields: [{ field: 'newPassword' }],
      });
    }
  });

  test('is kept as an argon2id hash, and its login’s address in one spelling', async () => {
    const [login] = await app.admin<{ password_hash: string }[]>`
      select password_hash from door.login where email = ${EMAIL}`;
    expect(login?.password_hash).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
    expect((await signIn(A_PASSWORD, '  Coordinator@Example.ORG ')).status).toBe(201);
  });
});

describe('attempts to sign in', () => {
  test('are refused after ten wrong ones within a quarter of an hour, the right password too', async () => {
    later(16);
    for (let attempt = 1; attempt <= 10; attempt += 1)
      expect((await signIn('a wrong password')).status).toBe(401);
    const refused = await signIn();
    expect([refused.status, refused.body.code]).toEqual([429, 'too-many-attempts']);
    expect(refused.headers.get('Retry-After')).toBe('900');
    expect(setCookies(refused)).toEqual([]);
    later(16);
    expect((await signIn()).status).toBe(201);
  });

  test('are counted by where they come from too, over many addresses', async () => {
    later(16);
    for (let attempt = 1; attempt <= 10; attempt += 1)
      expect((await signIn(A_PASSWORD, `nobody-${attempt}@example.org`)).status).toBe(401);
    expect((await signIn(A_PASSWORD, 'nobody-11@example.org')).status).toBe(429);
    later(16);
  });

  test('that succeed count for nothing: a hall full of people signs in from one place', async () => {
    for (let person = 1; person <= 15; person += 1) expect((await signIn()).status).toBe(201);
  });

  test('to change a password are counted like those to sign in', async () => {
    later(16);
    const here = await aSession();
    const guess = () =>
      here.put('/api/password', { currentPassword: 'a guess', newPassword: 'x'.repeat(12) });
    for (let attempt = 1; attempt <= 10; attempt += 1) expect((await guess()).status).toBe(401);
    expect((await guess()).body.code).toBe('too-many-attempts');
    later(16);
  });
});

test('somebody signed in is told who they are and where they belong, and no more', async () => {
  const { body } = await (await aSession()).get('/api/session');
  expect(body).toEqual({
    name: 'Ada Ashdown',
    email: EMAIL,
    expiresAt: expect.any(String),
    storehouses: [
      { storehouseId: storehouse.storehouseId, name: 'Alder Row Storehouse', personId: expect.any(String) },
    ],
  });
});
