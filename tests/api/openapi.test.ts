import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { z } from 'zod';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { mountedRoutes } from '../support/mounted-routes.ts';
import { BODIES_OUTSIDE, bodiesOf } from '../support/route-bodies.ts';

// The structure that OpenAPI 3.1.0 asks for (its sections 4.8.1 to 4.8.17, from memory), as far as this document uses it.
const schemaObject = z.looseObject({});
const mediaTypes = z.record(z.string(), z.strictObject({ schema: schemaObject }));
const parameter = z.strictObject({
  in: z.enum(['path', 'query', 'header', 'cookie']),
  name: z.string().min(1),
  required: z.boolean().optional(),
  description: z.string().optional(),
  schema: schemaObject,
});
const operation = z.strictObject({
  operationId: z.string().min(1),
  tags: z.array(z.string().min(1)).length(1),
  summary: z.string().min(5),
  parameters: z.array(parameter).optional(),
  requestBody: z.strictObject({ required: z.literal(true), content: mediaTypes }).optional(),
  responses: z
    .record(
      z.string().regex(/^([1-5](\d\d|XX)|default)$/),
      z.strictObject({ description: z.string().min(1), content: mediaTypes.optional() }),
    )
    .refine((responses) => 'default' in responses && Object.keys(responses).length > 1),
});
const openApi = z.strictObject({
  openapi: z.literal('3.1.0'),
  info: z.strictObject({ title: z.string(), version: z.string(), description: z.string() }),
  paths: z.record(
    z.string().startsWith('/'),
    z.partialRecord(z.enum(['get', 'post', 'put', 'patch', 'delete']), operation),
  ),
  components: z.strictObject({ schemas: z.record(z.string(), schemaObject) }),
});
type Operation = z.infer<typeof operation>;

let app: TestApp;
let document: z.infer<typeof openApi>;
let operations: Record<string, Operation>;
beforeAll(async () => {
  app = await openTestApp();
  document = openApi.parse(bodyOf(await app.as().get('/api/openapi.json')));
  operations = Object.fromEntries(
    Object.entries(document.paths).flatMap(([path, methods]) =>
      Object.entries(methods).map(([method, known]) => [
        `${method.toUpperCase()} ${path.replaceAll(/\{(\w+)\}/g, ':$1')}`,
        known,
      ]),
    ),
  );
});
afterAll(() => app.close());

/** The addresses that the document itself is read at. */
const ABOUT = [
  'GET /api/docs',
  'GET /api/docs.css',
  'GET /api/openapi.json',
  'GET /problems/:code',
  // Pages for whoever follows the link of a letter.
  'GET /stop/:storehouse/:token',
  'POST /stop/:storehouse/:token',
];

describe('the OpenAPI document', () => {
  test('has the structure of OpenAPI 3.1', async () => {
    const answer = await app.as().get('/api/openapi.json');
    expect(answer.headers.get('Content-Type')).toContain('application/json');
    expect(openApi.safeParse(answer.body).error?.issues ?? []).toEqual([]);
  });

  test('describes every mounted route, and none that is not', () => {
    const mounted = mountedRoutes(app).filter((route) => !ABOUT.includes(route));
    expect(Object.keys(operations).toSorted()).toEqual(mounted);
  });

  test('gives every operation an id of its own', () => {
    const ids = Object.values(operations).map((known) => known.operationId);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('names each id of an address as a parameter of the path', () => {
    for (const [route, { parameters = [] }] of Object.entries(operations)) {
      const inPath = parameters.filter((known) => known.in === 'path');
      const named = [...route.matchAll(/:(\w+)/g)].map(([, name]) => name);
      expect([route, inPath.map(({ name }) => name).toSorted()]).toEqual([route, named.toSorted()]);
      expect(inPath.filter(({ required }) => required !== true)).toEqual([]);
    }
  });

  test('answers every refusal with the one problem of RFC 9457', () => {
    for (const { responses } of Object.values(operations))
      expect(responses.default?.content).toEqual({
        'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } },
      });
    expect(Object.keys(document.components.schemas)).toContain('Problem');
  });

  test('describes no refusal in another shape', () => {
    const others = Object.values(operations).flatMap(({ responses }) =>
      Object.keys(responses).filter((status) => /^[45]/.test(status)),
    );
    expect(others).toEqual([]);
  });

  test('points at nothing that is not there', () => {
    const targets = [...JSON.stringify(document).matchAll(/"\$ref":"([^"]*)"/g)].map(
      ([, target = '']) => target,
    );
    const isThere = (target: string) =>
      target
        .replace('#/', '')
        .split('/')
        .reduce<unknown>((at, step) => (at as Record<string, unknown> | undefined)?.[step], document) !==
      undefined;
    expect(targets.length).toBeGreaterThan(0);
    expect(targets.filter((target) => !isThere(target))).toEqual([]);
  });

  test('closes every body, at every depth, to fields that it does not name', () => {
    const open: string[] = [];
    const walk = (at: unknown, path: string): void => {
      if (typeof at !== 'object' || at === null) return;
      if ('properties' in at && (at as { additionalProperties?: unknown }).additionalProperties !== false)
        open.push(path);
      for (const [key, value] of Object.entries(at)) walk(value, `${path}.${key}`);
    };
    for (const [route, { requestBody }] of Object.entries(operations))
      walk(requestBody?.content['application/json']?.schema, route);
    expect(open).toEqual([]);
  });

  test('has a body for each route that takes one, and the tests know a good one for each', () => {
    const withBody = Object.entries(operations).flatMap(([route, known]) =>
      known.requestBody ? [route] : [],
    );
    const inside = Object.keys(bodiesOf({})).map((route) => {
      const [method, rest] = route.split(' ');
      return `${method} /api/storehouses/:storehouse${rest === '/' ? '' : rest}`;
    });
    expect([...inside, ...Object.keys(BODIES_OUTSIDE)].toSorted()).toEqual(withBody.toSorted());
  });

  test('puts each route under a tag that its neighbours share, in words that say what happens', () => {
    const tags = new Set(Object.values(operations).flatMap((known) => known.tags));
    expect(tags.size).toBeLessThan(40);
    const summaries = Object.values(operations).map(({ summary }) => summary);
    expect(new Set(summaries).size).toBe(summaries.length);
  });
});

describe('the docs page', () => {
  test('shows every route with what it takes, without a script and without another host', async () => {
    const answer = await app.as().get('/api/docs');
    expect(answer.headers.get('Content-Type')).toContain('text/html');
    const page: string = answer.body;
    for (const [path, methods] of Object.entries(document.paths))
      for (const method of Object.keys(methods)) expect(page).toContain(`${method.toUpperCase()} ${path}<`);
    expect(page).not.toMatch(/<script|https?:\/\/(?!json-schema\.org)/);
  });
});

describe('a problem’s own page', () => {
  test('says what a code means, for every code that the document names', async () => {
    const problem = document.components.schemas.Problem as { properties: { code: { enum: string[] } } };
    for (const code of problem.properties.code.enum) {
      const { status, body } = await app.as().get(`/problems/${code}`);
      expect([status, body]).toEqual([
        200,
        { code, status: expect.any(Number), title: expect.stringMatching(/\.$/) },
      ]);
    }
  });

  test('is there for no other', async () => {
    for (const code of ['nonsense', 'constructor', '__proto__'])
      expect((await app.as().get(`/problems/${code}`)).body.code).toBe('not-found');
  });
});

describe('health', () => {
  test('the process says that it runs, and that the database answers', async () => {
    expect((await app.as().get('/api/health')).body).toEqual({ status: 'alive' });
    expect((await app.as().get('/api/readiness')).body).toEqual({ status: 'ready' });
  });
});
