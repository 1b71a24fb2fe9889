import { randomBytes } from 'node:crypto';
import { createApp, openLog, readConfig } from '@sheafbook/api';
import { connectApp } from '@sheafbook/db';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { fingerprintOf, refusalOf, refused } from '../support/fingerprint.ts';
import { LEAST_DUTY } from '../support/least-duty.ts';
import { addressOf } from '../support/mounted-routes.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

const supplier = { name: 'Quarry Mill' };
const suppliers = () => `${storehouse.path}/suppliers`;
const MOST_BYTES = 256 * 1024;

describe('a body', () => {
  test('larger than 256 KiB is refused, whether its length is told or found out', async () => {
    const large = { name: 'x'.repeat(MOST_BYTES) };
    const found = () => storehouse.coordinator.post(suppliers(), large);
    expect(await refusalOf(app, found)).toEqual(refused(413, 'body-too-large'));
    const told = () =>
      storehouse.coordinator.post(suppliers(), large, { 'Content-Length': String(MOST_BYTES + 12) });
    expect(await refusalOf(app, told)).toEqual(refused(413, 'body-too-large'));
    expect((await found()).body.mostBytes).toBe(MOST_BYTES);
  });

  test.for([
    { body: '{"name": "Quarry Mill"', because: 'it breaks off' },
    { body: "{'name': 'Quarry Mill'}", because: 'JSON has double quotes' },
    { body: '{"name": "Quarry Mill",}', because: 'of a comma too many' },
    { body: '{"name": NaN}', because: 'NaN is no number of JSON' },
  ])('is not JSON because $because', async ({ body }) => {
    const call = () => storehouse.coordinator.post(suppliers(), body);
    expect(await refusalOf(app, call)).toEqual(refused(400, 'not-json'));
  });

  test.for([
    'text/plain',
    'application/x-www-form-urlencoded',
    'multipart/form-data; boundary=x',
    'application/jsonp',
    '',
  ])('of the kind “%s” is not read as JSON', async (kind) => {
    const call = () => storehouse.coordinator.post(suppliers(), supplier, { 'Content-Type': kind });
    expect(await refusalOf(app, call)).toEqual(refused(400, 'not-json'));
  });

  test.for(['application/json', 'application/json; charset=utf-8', 'APPLICATION/JSON'])(
    'of the kind “%s” is',
    async (kind) => {
      const named = { name: `Mill of ${kind}` };
      const answer = await storehouse.coordinator.post(suppliers(), named, { 'Content-Type': kind });
      expect(answer.status).toBe(201);
    },
  );

  test.for(['[]', 'null', '7', '"name"', 'true'])('that is %s has none of the fields', async (body) => {
    const call = () => storehouse.coordinator.post(suppliers(), body);
    expect(await refusalOf(app, call)).toMatchObject({
      status: 400,
      code: 'invalid-input',
      isUnchanged: true,
    });
  });

  test('that names a field twice counts the last, and one called __proto__ changes nothing but is refused', async () => {
    const twice = await storehouse.coordinator.post(suppliers(), '{"name": "First", "name": "Second"}');
    expect(twice.body.name).toBe('Second');
    const call = () =>
      storehouse.coordinator.post(suppliers(), '{"name": "Mill", "__proto__": {"isAdmin": true}}');
    expect(await refusalOf(app, call)).toEqual(refused(400, 'invalid-input', '__proto__'));
    expect(({} as { isAdmin?: boolean }).isAdmin).toBeUndefined();
  });

  test.for([
    { name: 'Mill\u0000', because: 'a text column holds no NUL' },
    { name: 'Mill \ud83c', because: 'half of a pair of surrogates is no character' },
  ])('with a name that no book can hold is refused with its field: $because', async ({ name }) => {
    const call = () => storehouse.coordinator.post(suppliers(), { name });
    expect(await refusalOf(app, call)).toEqual(refused(400, 'invalid-input', 'name'));
  });
});

describe('a request from another site', () => {
  const from = (headers: Record<string, string>) =>
    refusalOf(app, () => storehouse.coordinator.post(suppliers(), { name: 'Forged' }, headers));

  test.for([
    { Origin: 'https://evil.example' },
    { Origin: 'null' },
    { Origin: 'http://127.0.0.1:4181' },
    { 'Sec-Fetch-Site': 'cross-site' },
  ])('is refused: %j', async (headers) => {
    expect(await from({ ...headers })).toEqual(refused(403, 'origin-refused'));
  });

  test('is told apart from one’s own by the host, and may read what anybody may', async () => {
    const own = { Origin: 'http://127.0.0.1:4180', 'Sec-Fetch-Site': 'same-origin' };
    const answer = await storehouse.coordinator.post(suppliers(), { name: 'Own page' }, own);
    expect(answer.status).toBe(201);
    const read = await app.as().get('/api/health', { Origin: 'https://evil.example' });
    expect([read.status, read.headers.get('Access-Control-Allow-Origin')]).toEqual([200, null]);
  });
});

describe('an address', () => {
  test('answers another method with 405 and names those that it answers', async () => {
    const answer = await storehouse.coordinator.patch(suppliers(), supplier);
    expect([answer.status, answer.body.code]).toEqual([405, 'method-not-allowed']);
    expect(answer.headers.get('Content-Type')).toContain('application/problem+json');
    expect(answer.headers.get('Allow')).toBe('GET, HEAD, POST');
    const gone = await storehouse.coordinator.delete(`${storehouse.path}/payments`);
    expect([gone.status, gone.body.code, gone.headers.get('Allow')]).toEqual([
      405,
      'method-not-allowed',
      'POST',
    ]);
  });

  test('that leads nowhere is a problem like any other, inside and outside', async () => {
    for (const path of ['/nowhere', '/api/nowhere', `${storehouse.path}/nowhere`]) {
      const { status, body } = await storehouse.coordinator.get(path);
      expect([status, body.code, body.type]).toEqual([404, 'not-found', '/problems/not-found']);
    }
  });
});

describe('a query', () => {
  test('that is not possible is refused with its field', async () => {
    const { coordinator } = storehouse;
    for (const [query, field] of [
      ['limit=0', 'limit'],
      ['limit=201', 'limit'],
      ['limit=ten', 'limit'],
      ['format=xml', 'format'],
      ['colour=red', 'colour'],
    ] as const)
      expect((await coordinator.get(`${storehouse.path}/foods?${query}`)).body).toMatchObject({
        code: 'invalid-input',
        fields: [{ field }],
      });
  });

  test('goes on from the key of a page, and one that is none is refused or finds nothing, never a failure', async () => {
    const lists = Object.keys(LEAST_DUTY).filter((route) => route.startsWith('GET '));
    const ids = new Proxy<Record<string, string>>({}, { get: () => '018f0000-0000-7000-8000-000000000000' });
    for (const route of lists)
      for (const after of ['nothing', '-1', '1e99', '%00', '99999999999999999999', `${'9'.repeat(201)}`]) {
        const { rest } = addressOf(route, ids);
        const { status } = await storehouse.coordinator.get(`${storehouse.path}${rest}?after=${after}`);
        expect([route, after, status < 500]).toEqual([route, after, true]);
      }
  });
});

describe('every answer', () => {
  test('carries the headers that keep a browser from being used against its member', async () => {
    for (const path of ['/api/health', '/api/docs', '/api/nowhere', storehouse.path]) {
      const { headers } = await storehouse.coordinator.get(path);
      expect(Object.fromEntries(headers)).toMatchObject({
        'content-security-policy':
          "default-src 'self'; object-src 'none'; base-uri 'none'; form-action 'self'; frame-ancestors 'none'",
        'x-content-type-options': 'nosniff',
        'x-frame-options': 'SAMEORIGIN',
        'referrer-policy': 'no-referrer',
        'cross-origin-opener-policy': 'same-origin',
        'cross-origin-resource-policy': 'same-origin',
        'strict-transport-security': expect.stringContaining('max-age='),
        'cache-control': 'no-store',
      });
      expect(headers.get('X-Powered-By')).toBeNull();
    }
  });

  test('that is a refusal has the members of RFC 9457 and ours, and names the request', async () => {
    const { status, body, headers } = await storehouse.coordinator.post(suppliers(), {});
    expect(headers.get('Content-Type')).toContain('application/problem+json');
    expect(body).toEqual({
      type: '/problems/invalid-input',
      code: 'invalid-input',
      title: 'Something in what was sent is missing or not possible.',
      status,
      detail: expect.any(String),
      instance: expect.stringMatching(/^urn:uuid:[0-9a-f-]{36}$/),
      fields: [{ field: 'name', message: expect.any(String) }],
    });
  });
});

test('a database that does not answer makes the server not ready, while it stays alive and tells no secrets', async () => {
  const { storehouseId } = storehouse;
  const gone = connectApp(app.appUrl);
  await gone.sql.end();
  const outside = { ...gone, now: () => app.clock.now, randomBytes };
  const cut = createApp({ outside, config: readConfig({}), log: openLog('silent') });
  const ready = await cut.request('/api/readiness');
  expect([ready.status, (await ready.json()).code]).toEqual([503, 'not-ready']);
  expect((await cut.request('/api/health')).status).toBe(200);
  const Cookie = 'sheafbook=anybody';
  const failed = await cut.request(`/api/storehouses/${storehouseId}`, { headers: { Cookie } });
  expect([failed.status, await failed.json()]).toEqual([
    500,
    {
      type: '/problems/unexpected',
      code: 'unexpected',
      title: 'Something went wrong on our side. Nothing was changed.',
      status: 500,
      detail: 'Something went wrong on our side. Nothing was changed.',
      instance: expect.stringMatching(/^urn:uuid:/),
      fields: [],
    },
  ]);
});

test('what was refused here has left the book as it was founded but for five suppliers that were added', async () => {
  const { entries, movements } = await fingerprintOf(app);
  const { suppliers: known } = bodyOf(await storehouse.coordinator.get(suppliers()));
  expect([entries, movements, known.length]).toEqual([0, 0, 5]);
});
