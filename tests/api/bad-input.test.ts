import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { fingerprintOf } from '../support/fingerprint.ts';
import { LEAST_DUTY } from '../support/least-duty.ts';
import { addressOf, INSIDE } from '../support/mounted-routes.ts';
import { BODIES_OUTSIDE, bodiesOf } from '../support/route-bodies.ts';
import { extremes, type JsonSchema, type Spoiled, spoil } from '../support/spoil.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { aWorld, type TestWorld } from '../support/world.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let world: TestWorld;
let schemas: Record<string, JsonSchema>;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  world = await aWorld(app, storehouse);
  schemas = await bodySchemas();
});
afterAll(() => app.close());

/** The schema of each body by its route, as the API itself describes it. */
async function bodySchemas(): Promise<Record<string, JsonSchema>> {
  type Described = { requestBody?: { content: Record<string, { schema: JsonSchema }> } };
  const { paths } = bodyOf(await app.as().get('/api/openapi.json'));
  return Object.fromEntries(
    Object.entries<Record<string, Described>>(paths).flatMap(([path, methods]) =>
      Object.entries(methods).flatMap(([method, { requestBody }]) => {
        const schema = requestBody?.content['application/json']?.schema;
        const route = `${method.toUpperCase()} ${path.replaceAll(/\{(\w+)\}/g, ':$1')}`;
        return schema ? [[route, schema] as const] : [];
      }),
    ),
  );
}

/** Somebody of the storehouse who passes the door of a route. */
const oneWho = (route: string): Caller =>
  (LEAST_DUTY[route] ?? '').includes('coordinator') ? storehouse.coordinator : world.buy.treasurer;

const send = (caller: Caller, { method, path, body }: { method: string; path: string; body: unknown }) =>
  method === 'POST' ? caller.post(path, body) : caller.put(path, body);

/** Whether a refusal names the field that was spoiled, or the list or object that it stands in, or something in it. */
const names = (fields: readonly { field: string }[], spoiled: string): boolean =>
  fields.some(
    ({ field }) =>
      field === spoiled ||
      spoiled.endsWith(`.${field}`) ||
      spoiled.startsWith(`${field}.`) ||
      field.startsWith(`${spoiled}.`),
  );

/** Sends each spoiled body and gives back, in words, those that were not refused as they should be. */
async function listWronglyAnswered(
  spoiled: readonly Spoiled[],
  call: (body: unknown) => ReturnType<Caller['post']>,
): Promise<string[]> {
  const wrong: string[] = [];
  for (const { field, because, body } of spoiled) {
    const answer = await call(body);
    const { code, fields = [] } = answer.body ?? {};
    if (answer.status !== 400 || code !== 'invalid-input' || !names(fields, field))
      wrong.push(`${field}, ${because}: ${answer.status} ${code} ${JSON.stringify(fields)}`);
  }
  return wrong;
}

/** The schema of a route inside a storehouse. */
function schemaOf(route: string): JsonSchema {
  const [method, pattern = ''] = route.split(' ');
  const schema = schemas[`${method} ${INSIDE}${pattern === '/' ? '' : pattern}`];
  if (!schema) throw new Error(`no schema of ${route}`);
  return schema;
}

const INSIDE_ROUTES = Object.keys(bodiesOf({}));

test.for(INSIDE_ROUTES)('%s refuses a spoiled body with its field and writes nothing', async (route) => {
  const { method, rest } = addressOf(route, world.ids);
  const path = `${storehouse.path}${rest}`;
  const schema = schemaOf(route);
  const spoiled = spoil(schema, bodiesOf(world.ids)[route]);
  expect(spoiled.length).toBeGreaterThan(2);
  const before = await fingerprintOf(app);
  const caller = oneWho(route);
  const wrong = await listWronglyAnswered(spoiled, (body) => send(caller, { method, path, body }));
  expect(wrong).toEqual([]);
  expect(await fingerprintOf(app)).toEqual(before);
});

test.for(Object.keys(BODIES_OUTSIDE))(
  '%s refuses a spoiled body with its field and writes nothing',
  async (route) => {
    const ids = { storehouse: storehouse.storehouseId, token: 'a-token' };
    const { method, rest: path } = addressOf(route, ids);
    const schema = schemas[route];
    if (!schema) throw new Error(`no schema of ${route}`);
    const before = await fingerprintOf(app);
    const spoiled = spoil(schema, BODIES_OUTSIDE[route]);
    const wrong = await listWronglyAnswered(spoiled, (body) =>
      send(storehouse.coordinator, { method, path, body }),
    );
    expect(wrong).toEqual([]);
    expect(await fingerprintOf(app)).toEqual(before);
  },
);

test('what lies at the very edge of what is allowed is done or refused, and never a failure of ours', async () => {
  const failed: string[] = [];
  for (const route of INSIDE_ROUTES) {
    const { method, rest } = addressOf(route, world.ids);
    for (const body of extremes(schemaOf(route), bodiesOf(world.ids)[route])) {
      const answer = await send(oneWho(route), { method, path: `${storehouse.path}${rest}`, body });
      if (answer.status >= 500)
        failed.push(`${route}: ${answer.status} to ${JSON.stringify(body).slice(0, 300)}`);
    }
  }
  expect(failed).toEqual([]);
  const { findings } = bodyOf(await world.buy.treasurer.get(`${storehouse.path}/audit`));
  expect(findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
}, 180_000); // every route that takes a body, with every edge of it
