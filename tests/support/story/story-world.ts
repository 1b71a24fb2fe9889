import { randomBytes } from 'node:crypto';
import { foundStorehouse } from '../../../apps/api/src/features/storehouse/use-cases.ts';
import { withLoginTx } from '../../../apps/api/src/platform/with-tx.ts';
import type { Answer, Caller, TestApp } from '../app.ts';
import { aBuy, aPledge, bodyOf, type TestBuy } from '../buy.ts';
import { changeRules } from '../fixed-buy.ts';
import { aHousehold, anInvitation, grantDuty } from '../household.ts';
import { aStorehouse, type TestStorehouse } from '../storehouse.ts';

/** People with logins, who found and join a new storehouse for each story. */
export type Cast = { app: TestApp; founderId: string; callers: readonly Caller[] };

export const NAMES = ['Ashdown', 'Birchall', 'Corran', 'Dell'] as const;

/** A household of a story, seen by its only person. */
export type StoryHousehold = { householdId: string; caller: Caller };

/**
 * The real thing under a story: a storehouse with a buy that gathers. Ashdown coordinates, Birchall keeps the money,
 * Corran leads the packing. `ids` remembers what came to be, in its order, so that a story can point at it.
 */
export type Real = {
  app: TestApp;
  storehouse: TestStorehouse;
  households: readonly StoryHousehold[];
  buy: TestBuy;
  ids: Record<string, string[]>;
  /** Everything that was asked for, for the report of a story that failed. */
  log: string[];
};

export const WHEAT = 'wheat-hard-red-winter';
export const BEANS = 'beans-black';

export async function aCast(app: TestApp): Promise<Cast> {
  const first = await aStorehouse(app);
  const others = [];
  for (const name of NAMES.slice(1)) others.push(await aHousehold(app, first, name));
  const [founder] = await app.admin<{ login_id: string }[]>`
    select login_id from door.login where email = 'coordinator@example.org'`;
  const callers = [first.coordinator, ...others.map(({ caller }) => caller)];
  return { app, founderId: founder?.login_id ?? '', callers };
}

let stories = 0;

/** A storehouse of its own for one story, with the job map's wheat and beans pledged and nothing fixed. */
export async function openStory(cast: Cast): Promise<Real> {
  const { app } = cast;
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  const storehouse = await found(cast, `Story ${++stories}`);
  const households = await joinAll(cast, storehouse);
  const commonCapGrams = 22_680;
  await changeRules(storehouse, {
    commonCapGrams,
    freightBasis: 'blend',
    blendNumerator: 1,
    blendDenominator: 2,
  });
  const offers = [
    { foodCode: WHEAT, bagSize: 50, bagPriceMinorUnits: 3600 },
    { foodCode: BEANS, bagSize: 25, bagPriceMinorUnits: 2140 },
  ];
  const quote = { offers, freightSteps: [{ fromGrams: 0, minorUnits: 8800 }] };
  const buy = await aBuy(app, storehouse, { foods: [WHEAT, BEANS], quote });
  const real: Real = { app, storehouse, households, buy, ids: {}, log: [] };
  const wheat = [{ wanted: 120 }, { wanted: 100 }, { wanted: 50, most: 80 }, { wanted: 30 }];
  const beans = [50, 35, 25, 15];
  for (const [at, { caller }] of households.entries()) {
    const terms = wheat[at] ?? { wanted: 0 };
    await aPledge(caller, buy, { foodCode: WHEAT, ...terms });
    await aPledge(caller, buy, { foodCode: BEANS, wanted: beans[at] ?? 0 });
  }
  return real;
}

async function found({ app, founderId, callers }: Cast, name: string): Promise<TestStorehouse> {
  const outside = { db: app.db, sql: app.sql, now: () => app.clock.now, randomBytes };
  const facts = {
    name,
    currency: 'USD',
    timeZone: 'America/Chicago',
    massDisplay: 'lb',
    language: 'en',
  } as const;
  const storehouseId = await withLoginTx(outside, founderId, (tx) =>
    foundStorehouse(tx, outside, { facts, loginId: founderId, personName: 'Ada', householdName: 'Ashdown' }),
  );
  const [coordinator] = callers;
  if (!coordinator) throw new Error('a cast has a founder');
  return { storehouseId, path: `/api/storehouses/${storehouseId}`, coordinator };
}

async function joinAll(cast: Cast, storehouse: TestStorehouse): Promise<StoryHousehold[]> {
  const [first] = await cast.app.admin<{ household_id: string }[]>`
    select household_id from book.household where storehouse_id = ${storehouse.storehouseId}`;
  const households = [{ householdId: first?.household_id ?? '', caller: storehouse.coordinator }];
  for (const [at, name] of NAMES.entries()) {
    const caller = cast.callers[at];
    if (at === 0 || !caller) continue;
    const invitation = await anInvitation(storehouse, { householdName: name });
    const joined = bodyOf(await caller.post(invitation, { personName: name }), 201);
    households.push({ householdId: joined.householdId, caller });
    const duty = { Birchall: 'treasurer', Corran: 'packing_lead' }[name as string] as 'treasurer' | undefined;
    if (duty) await grantDuty(storehouse, joined.personId, duty);
  }
  return households;
}

/** Who is asked: a duty, or a household by its number. */
export type Role = 'coordinator' | 'treasurer' | 'packing lead' | number;

export function callerOf({ households, storehouse }: Real, role: Role): Caller {
  const number = { coordinator: 0, treasurer: 1, 'packing lead': 2 }[role as string] ?? Number(role);
  return households[number % households.length]?.caller ?? storehouse.coordinator;
}

/** Sends a request, writes it into the log, and remembers what it made. */
export async function send(
  real: Real,
  call: { by: Role; path: string; body?: unknown; method?: 'POST' | 'PUT' },
): Promise<Answer> {
  const { by, path, body, method = 'POST' } = call;
  const caller = callerOf(real, by);
  const full = `${real.storehouse.path}${path}`;
  const answer = method === 'POST' ? await caller.post(full, body) : await caller.put(full, body);
  real.log.push(`${method} ${path} ${JSON.stringify(body)} → ${answer.status} ${answer.body?.code ?? ''}`);
  if (answer.status < 300) remember(real, call, answer.body);
  return answer;
}

/** The kinds of things that a story points at by their number, and the addresses that make them. */
const MADE: readonly { kind: string; by: RegExp }[] = [
  { kind: 'hold', by: /^\/bags\/[^/]+\/holds$/ },
  { kind: 'claim', by: /\/claims$/ },
  { kind: 'invoice', by: /\/invoices$/ },
  { kind: 'split', by: /\/splits$/ },
  { kind: 'pick-up', by: /\/pick-ups$/ },
  { kind: 'write-off', by: /^\/write-offs$/ },
];

type Made = { id?: string; entryId?: string; bags?: { id: string }[]; containers?: { id: string }[] };

function remember(real: Real, { path, by }: { path: string; by: Role }, body: Made | null): void {
  const keep = (kind: string, ...ids: readonly string[]) => {
    real.ids[kind] = [...(real.ids[kind] ?? []), ...ids];
  };
  const made = MADE.find(({ by }) => by.test(path));
  if (made && body?.id) keep(made.kind, body.id);
  if (body?.bags && path.endsWith('/bags')) keep('bag', ...body.bags.map(({ id }) => id));
  if (body?.containers) keep(`can of ${by}`, ...body.containers.map(({ id }) => id));
  if (body?.entryId && path === '/containers') keep(`pour of ${by}`, body.entryId);
}

/** The thing of a kind that a number points at; undefined while there is none. */
export function pick(real: Real, kind: string, number: number): string | undefined {
  const ids = real.ids[kind] ?? [];
  return ids.length === 0 ? undefined : ids[number % ids.length];
}

/** A bag that a household owns some of; now and then one that it owns nothing of. */
export async function pickOwnBag(
  real: Real,
  { who, nth }: { who: number; nth: number },
): Promise<string | undefined> {
  const { householdId } = real.households[who % real.households.length] ?? { householdId: '' };
  const owned = await real.app.admin<{ vessel_id: string }[]>`select vessel_id from book.account
    where owner_id = ${householdId} and vessel_kind = 'bag' and inflow > outflow`;
  const ids = new Set(owned.map((row) => row.vessel_id));
  const own = (real.ids.bag ?? []).filter((id) => ids.has(id));
  return nth % 7 === 0 || own.length === 0 ? pick(real, 'bag', nth) : own[nth % own.length];
}
