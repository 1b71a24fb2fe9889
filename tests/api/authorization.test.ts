import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Answer, type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { fingerprintOf } from '../support/fingerprint.ts';
import { aHousehold, aPersonOf, grantDuty, type TestHousehold } from '../support/household.ts';
import { LEAST_DUTY } from '../support/least-duty.ts';
import { LEAST_OUTSIDE } from '../support/least-outside.ts';
import { addressOf, INSIDE, idsIn, mountedRoutes, routesInside } from '../support/mounted-routes.ts';
import { anotherStorehouse } from '../support/other-storehouse.ts';
import { bodiesOf } from '../support/route-bodies.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { aWorld, type TestWorld } from '../support/world.ts';

/** Somebody who asks, with what they may do. */
type Asker = { caller: Caller; duties: readonly string[]; hasHousehold: boolean };

const DUTIES = ['coordinator', 'treasurer', 'packing_lead', 'equipment_keeper', 'reviewer'] as const;
const ROUTES = Object.keys(LEAST_DUTY);
/** An id that names nothing, in any storehouse. */
const NOTHING = '018f0000-0000-7000-8000-000000000000';
const NO_IDS = new Proxy<Record<string, string>>(
  {},
  { get: (_, name) => (name === 'duty' ? 'coordinator' : NOTHING) },
);
/** No JSON at all: whoever reads it finds out, and whoever is refused before that does not. */
const GARBAGE = '{"this is": not JSON';

let app: TestApp;
let storehouse: TestStorehouse;
let world: TestWorld;
let other: TestStorehouse;
let askers: Record<string, Asker>;
/** Of the other storehouse: one who has every duty that goes together, and its reviewer. */
let strangers: { all: Caller; reviewer: Caller; household: TestHousehold };
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  world = await aWorld(app, storehouse);
  askers = { 'a plain member': plain(world.buy.households.Dell.caller) };
  for (const duty of DUTIES) {
    const { caller } = await aHousehold(app, storehouse, `The ${duty}`, { duties: [duty] });
    askers[duty] = { caller, duties: [duty], hasHousehold: true };
  }
  const alone = await aHousehold(app, storehouse, 'Alone');
  await app.admin`update book.person set household_id = null where person_id = ${alone.personId}`;
  askers['a person without a household'] = { caller: alone.caller, duties: [], hasHousehold: false };
  other = await anotherStorehouse(app);
  strangers = await theOthers();
});
afterAll(() => app.close());

const plain = (caller: Caller): Asker => ({ caller, duties: [], hasHousehold: true });

async function theOthers() {
  const household = await aHousehold(app, other, 'Brook', { email: 'brook@example.org' });
  for (const duty of ['coordinator', 'treasurer', 'packing_lead', 'equipment_keeper'] as const)
    await grantDuty(other, household.personId, duty);
  const reviewer = await aHousehold(app, other, 'Bourne', { duties: ['reviewer'] });
  return { all: household.caller, reviewer: reviewer.caller, household };
}

/** Sends a request to a route; a body goes along with whatever may have one. */
function ask(caller: Caller, call: { path: string; method: string; body?: unknown }): Promise<Answer> {
  const { path, method, body } = call;
  if (method === 'GET') return caller.get(path);
  if (method === 'DELETE') return caller.delete(path);
  return method === 'POST' ? caller.post(path, body) : caller.put(path, body);
}

async function codesOf(
  routes: readonly string[],
  callOf: (route: string) => Promise<Answer>,
): Promise<Record<string, string>> {
  const codes: Record<string, string> = {};
  for (const route of routes) {
    const { status, body } = await callOf(route);
    codes[route] = `${status} ${body?.code ?? ''}`.trim();
  }
  return codes;
}
const allOf = (routes: readonly string[], code: string) =>
  Object.fromEntries(routes.map((route) => [route, code]));

test('every route that is mounted stands in the table of least duties, and no other', () => {
  expect(routesInside(app)).toEqual(ROUTES.toSorted());
  const outside = mountedRoutes(app).filter((route) => !route.includes(INSIDE));
  expect(outside).toEqual(Object.keys(LEAST_OUTSIDE).toSorted());
});

describe('first check: who is it?', () => {
  test('a stranger is asked to sign in, whatever the route and the body', async () => {
    const codes = await codesOf(ROUTES, (route) => {
      const { method, rest } = addressOf(route, world.ids);
      return ask(app.as(), { method, path: `${storehouse.path}${rest}`, body: GARBAGE });
    });
    expect(codes).toEqual(allOf(ROUTES, '401 not-signed-in'));
  });

  test('a cookie that no session has is a stranger’s', async () => {
    const answer = await app.as('sheafbook=not-a-token').get(storehouse.path);
    expect(answer.body.code).toBe('not-signed-in');
  });

  test('routes outside the storehouses ask for it where the table says so', async () => {
    const routes = Object.keys(LEAST_OUTSIDE).filter((route) => LEAST_OUTSIDE[route] === 'signed in');
    const codes = await codesOf(routes, (route) => {
      const { method, rest: path } = addressOf(route, NO_IDS);
      return ask(app.as(), { method, path, body: GARBAGE });
    });
    expect(codes).toEqual(allOf(routes, '401 not-signed-in'));
  });
});

describe('second check: a member here?', () => {
  test('a member of another storehouse finds nothing here, however many duties they have there', async () => {
    const codes = await codesOf(ROUTES, (route) => {
      const { method, rest } = addressOf(route, world.ids);
      return ask(oneWho(route), { method, path: `${storehouse.path}${rest}`, body: GARBAGE });
    });
    expect(codes).toEqual(allOf(ROUTES, '404 storehouse-not-found'));
  });

  test('a storehouse that is none is not found either, and looks the same', async () => {
    const { caller } = world.buy.households.Dell;
    const answers = await Promise.all(
      [NOTHING, 'nowhere', other.storehouseId].map((id) => caller.get(`/api/storehouses/${id}`)),
    );
    const bodies = answers.map(({ body: { instance: _, ...body } }) => body);
    expect(new Set(bodies.map((body) => JSON.stringify(body))).size).toBe(1);
    expect(bodies[0]).toMatchObject({ status: 404, code: 'storehouse-not-found' });
  });
});

describe('third check: does a duty allow it?', () => {
  const isRefusal = ({ status, body }: Answer) =>
    status === 403 && ['duty-missing', 'household-needed'].includes(body.code);
  const passes = (route: string, { duties, hasHousehold }: Asker): boolean => {
    const least = (LEAST_DUTY[route] ?? '').split(' ');
    if (least.includes('member') || duties.some((duty) => least.includes(duty))) return true;
    return hasHousehold && least.includes('household');
  };

  test.for(['a plain member', 'a person without a household', ...DUTIES])(
    '%s passes where the table says so, and is refused elsewhere before the body is read',
    async (name) => {
      const asker = askers[name];
      if (!asker) throw new Error(`nobody is ${name}`);
      const passed: string[] = [];
      for (const route of ROUTES) {
        const { method, rest } = addressOf(route, NO_IDS);
        const answer = await ask(asker.caller, { method, path: `${storehouse.path}${rest}`, body: GARBAGE });
        if (!isRefusal(answer)) passed.push(route);
      }
      expect(passed).toEqual(ROUTES.filter((route) => passes(route, asker)));
    },
  );

  test('a helper lays every duty down while helping', async () => {
    const { Dell } = world.buy.households;
    const lead = await aPersonOf(app, storehouse, Dell, 'Della Dell');
    const helper = await aHousehold(app, storehouse, 'Helper', { duties: ['coordinator', 'packing_lead'] });
    await grantDuty(storehouse, helper.personId, 'treasurer');
    const grant = { personId: helper.personId, days: 10 };
    bodyOf(await lead.caller.post(`${storehouse.path}/households/${Dell.householdId}/helpers`, grant), 201);
    const headers = { 'Sheafbook-For-Household': Dell.householdId };
    const needy = ROUTES.filter((route) => !/member|household/.test(LEAST_DUTY[route] ?? ''));
    const codes = await codesOf(needy, (route) => {
      const { method, rest } = addressOf(route, NO_IDS);
      const path = `${storehouse.path}${rest}`;
      if (method === 'GET') return helper.caller.get(path, headers);
      if (method === 'DELETE') return helper.caller.delete(path, undefined, headers);
      return method === 'POST'
        ? helper.caller.post(path, GARBAGE, headers)
        : helper.caller.put(path, GARBAGE, headers);
    });
    expect(codes).toEqual(allOf(needy, '403 duty-missing'));
  });
});

describe('fourth check: is it well formed?', () => {
  test('a body that can’t be read is told so before anyone looks for what it is about', async () => {
    const routes = ROUTES.filter((route) => route in bodiesOf(world.ids));
    const codes = await codesOf(routes, (route) => {
      const { method, rest } = addressOf(route, NO_IDS);
      return ask(oneWho(route), { method, path: `${other.path}${rest}`, body: GARBAGE });
    });
    expect(codes).toEqual(allOf(routes, '400 not-json'));
  });

  test('an id that is no id names nothing', async () => {
    const routes = ROUTES.filter((route) => idsIn(route).length > 0);
    const noIds = new Proxy<Record<string, string>>({}, { get: () => 'no-id' });
    const codes = await codesOf(routes, (route) => {
      const { method, rest } = addressOf(route, noIds);
      const body = bodiesOf(world.ids)[route];
      return ask(oneWho(route), { method, path: `${other.path}${rest}${queryFor(route)}`, body });
    });
    expect(codes).toEqual(allOf(routes, '404 thing-not-found'));
  });
});

describe('fifth check: is it there, and in this storehouse?', () => {
  const routes = ROUTES.filter((route) => idsIn(route).some((name) => name !== 'duty'));

  test('another storehouse’s thing is not found, with every duty and a body that is well formed', async () => {
    const before = await fingerprintOf(app);
    const codes = await codesOf(routes, (route) => {
      const { method, rest } = addressOf(route, world.ids);
      const body = bodiesOf(world.ids)[route];
      return ask(oneWho(route), { method, path: `${other.path}${rest}${queryFor(route)}`, body });
    });
    expect(codes).toEqual(allOf(routes, '404 thing-not-found'));
    expect(await fingerprintOf(app)).toEqual(before);
  });

  test('nor is one within a thing of one’s own: a line of that buy, an eater of that household', async () => {
    const before = await fingerprintOf(app);
    const { id: buy } = bodyOf(await strangers.all.post(`${other.path}/buys`, aPlan), 201);
    const own = { ...world.ids, buy, household: strangers.household.householdId };
    const nested = routes.filter((route) => /:(buy|household)\/.*:/.test(route));
    const settled = await fingerprintOf(app);
    const codes = await codesOf(nested, (route) => {
      const uncollected = route.endsWith('/:household') ? { household: world.ids.household ?? '' } : {};
      const { method, rest } = addressOf(route, { ...own, ...uncollected });
      const body = bodiesOf(world.ids)[route];
      return ask(oneWho(route), { method, path: `${other.path}${rest}${queryFor(route)}`, body });
    });
    expect(codes).toEqual(allOf(nested, '404 thing-not-found'));
    expect(await fingerprintOf(app)).toEqual(settled);
    expect(settled.entries).toBe(before.entries);
  });

  test('nor one that a body names, where the route itself names nothing', async () => {
    const naming = Object.entries(bodiesOf(world.ids)).flatMap(([route, body]) =>
      idsIn(route).length === 0 && Object.values(world.ids).some((id) => JSON.stringify(body).includes(id))
        ? [route]
        : [],
    );
    const before = await fingerprintOf(app);
    const codes = await codesOf(naming, (route) => {
      const { method, rest } = addressOf(route, {});
      return ask(oneWho(route), { method, path: `${other.path}${rest}`, body: bodiesOf(world.ids)[route] });
    });
    expect(naming.length).toBeGreaterThan(8);
    expect(codes).toEqual(allOf(naming, '404 thing-not-found'));
    expect(await fingerprintOf(app)).toEqual(before);
  });
});

const aPlan = { name: 'A plan', gatheringClosesAt: '2026-10-01T00:00:00Z', orderOn: '2026-10-05' };

/** Of the other storehouse, somebody whose duties let them through a route's door. */
const oneWho = (route: string): Caller =>
  LEAST_DUTY[route] === 'reviewer' ? strangers.reviewer : strangers.all;

/** The routes that take their version in the query, having no body. */
const queryFor = (route: string): string => {
  if (route.endsWith('/labels/paper')) return '?sheet=a4-8';
  return /^DELETE .*eater$/.test(route) ? '?version=1' : '';
};
