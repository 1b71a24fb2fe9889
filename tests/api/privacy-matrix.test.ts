import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { LEAST_DUTY } from '../support/least-duty.ts';
import { addressOf, INSIDE, idsIn } from '../support/mounted-routes.ts';
import { textOf } from '../support/pdf.ts';
import { aSecretWorld, SECRETS, type Secret, type SecretWorld, type Viewer } from '../support/secrets.ts';
import { aStorehouse } from '../support/storehouse.ts';

/** Everything that one viewer got to read, by the address it was read at. */
type Reading = { address: string; text: string; status: number; wasNoted: boolean };

const VIEWERS: readonly Viewer[] = [
  'coordinator',
  'treasurer',
  'packing lead',
  'equipment keeper',
  'member',
  'reviewer',
];

let app: TestApp;
let world: SecretWorld;
let readings: Record<Viewer, Reading[]>;
beforeAll(async () => {
  app = await openTestApp();
  world = await aSecretWorld(app, await aStorehouse(app));
  const { paths } = bodyOf(await app.as().get('/api/openapi.json'));
  const wanted = addresses(paths);
  readings = {} as Record<Viewer, Reading[]>;
  for (const viewer of VIEWERS) readings[viewer] = await readEverything(viewer, wanted);
}, 180_000); // every duty reads every address, papers among them
afterAll(() => app.close());

type Described = Record<string, { get?: { parameters?: readonly { name: string }[] } } | undefined>;

/** Every GET inside the storehouse, for each buy and for the neighbour's own things, as JSON and as CSV if there is one. */
function addresses(paths: Described): string[] {
  const { ids, gathering, fixed } = world;
  const [line] = Object.values(gathering.lines);
  const further = [
    { ...ids, buy: gathering.buyId, line: line ?? '', quote: gathering.quoteId },
    { ...ids, buy: fixed.buyId },
  ];
  const gets = Object.keys(LEAST_DUTY).filter((route) => route.startsWith('GET '));
  return gets.flatMap((route) => {
    const sets = idsIn(route).includes('buy') ? [ids, ...further] : [ids];
    return sets.flatMap((set) => {
      const { rest } = addressOf(route, set);
      const gap = `?buy=${gathering.buyId}&budgetMinorUnits=100000`;
      if (route.endsWith('/coverage/gap')) return [`${rest}${gap}`];
      const described = `${INSIDE}${route.replace('GET ', '')}`
        .replaceAll(/:(\w+)/g, '{$1}')
        .replace(/\/$/, '');
      const isList = paths[described]?.get?.parameters?.some(({ name }) => name === 'format');
      return isList ? [rest, `${rest}?format=csv`] : [rest];
    });
  });
}

async function readEverything(viewer: Viewer, wanted: readonly string[]): Promise<Reading[]> {
  const { caller, personId } = world.viewers[viewer];
  const { dell, storehouse } = world;
  const noted = async () => {
    const [row] = await app.admin<{ looks: number }[]>`select count(*)::int as looks from book.private_read
      where household_id = ${dell.householdId} and person_id = ${personId}`;
    return row?.looks ?? 0;
  };
  const found: Reading[] = [];
  let before = await noted();
  for (const address of wanted) {
    const { status, body } = await caller.get(`${storehouse.path}${address}`);
    const text = await textOf(body);
    const after = await noted();
    found.push({ address, text, status, wasNoted: after > before });
    before = after;
  }
  return found;
}

/** Whether a text holds a secret as a word or figure of its own, not as part of a longer one such as an id. */
const holds = (text: string, secret: Secret): boolean =>
  new RegExp(`(?<![\\w-])${SECRETS[secret]}(?![\\w-])`).test(text);
const showing = (viewer: Viewer, secret: Secret): Reading[] =>
  readings[viewer].filter(({ text }) => holds(text, secret));
const viewersOf = (secret: Secret): Viewer[] =>
  VIEWERS.filter((viewer) => showing(viewer, secret).length > 0);

/** Job map 14, row by row as far as it is built: who gets to read a household's datum anywhere in the API. */
const MATRIX: Record<Secret, { of: string; viewers: readonly Viewer[] }> = {
  ceiling: { of: 'pledge max unit price', viewers: [] },
  pledgeTyped: {
    of: 'pledge mass, own',
    viewers: ['coordinator', 'treasurer', 'packing lead', 'reviewer'],
  },
  eaterName: { of: 'eaters', viewers: [] },
  eaterBirth: { of: 'eater age', viewers: [] },
  eaterEnergy: { of: 'eater activity and what follows from it', viewers: [] },
  planTarget: { of: 'coverage of own household', viewers: [] },
  guideline: { of: 'coverage of own household', viewers: [] },
  phone: { of: 'phone, without a task', viewers: [] },
  address: { of: 'address, without a task', viewers: [] },
  householdMail: { of: 'address, without a task', viewers: [] },
  balance: { of: 'balance owed', viewers: ['treasurer', 'reviewer'] },
  deposit: { of: 'deposit paid', viewers: ['treasurer', 'reviewer'] },
  waiver: { of: 'waiver / hardship', viewers: [] }, // told to the treasurer, and read back by the household alone
  containerWish: { of: 'own-home stock, as it is planned', viewers: [] },
  stockOrigin: { of: 'own-home stock', viewers: [] },
  stockGrams: { of: 'own-home stock', viewers: [] },
  lookPurpose: { of: 'access log about me', viewers: ['reviewer'] }, // summed, and naming no household
  helperReason: { of: 'who helps whom', viewers: ['coordinator', 'treasurer'] }, // the treasurer is the helper
};

describe('who reads a household’s datum anywhere at all', () => {
  test.for(Object.entries(MATRIX) as [Secret, (typeof MATRIX)[Secret]][])(
    '%s: $1.of, $1.viewers',
    ([secret, { viewers }]) => {
      expect(viewersOf(secret)).toEqual(viewers);
    },
  );

  test('the household itself reads all of it', async () => {
    const { dell, storehouse, gathering, fixed } = world;
    const [, line] = Object.values(gathering.lines);
    const home = `/households/${dell.householdId}`;
    const own = [
      ...[`${home}/eaters`, `${home}/plan`, `${home}/contact`, `${home}/helpers`, `${home}/private-reads`],
      ...[`${home}/balance`, `${home}/statement`, `${home}/take-along`, '/containers?limit=200'],
      ...[`/buys/${gathering.buyId}/pledges`, `/buys/${gathering.buyId}/lines/${line}/container-wishes`],
      `/buys/${fixed.buyId}/deposits/own`,
    ];
    const texts: string[] = [];
    for (const address of own) {
      const { status, body } = await dell.caller.get(`${storehouse.path}${address}`);
      expect([address, status]).toEqual([address, 200]);
      texts.push(await textOf(body));
    }
    const missing = (Object.keys(SECRETS) as Secret[]).filter((secret) => !holds(texts.join(), secret));
    expect(missing).toEqual([]);
  });
});

describe('a look that is allowed', () => {
  /** Sums over the whole storehouse name no household, though here one household's deposit is all of the sum. */
  const SUMS = ['/trial-balance', '/trial-balance?format=csv'];

  test.for(['pledgeTyped', 'balance', 'deposit'] as const)(
    'at %s is written down for the household',
    (secret) => {
      for (const viewer of VIEWERS) {
        const silent = showing(viewer, secret).filter(
          ({ address, wasNoted }) => !wasNoted && !SUMS.includes(address),
        );
        expect([viewer, silent.map(({ address }) => address)]).toEqual([viewer, []]);
      }
    },
  );

  test('at anything of one household, beyond its name, is written down, whoever looks', () => {
    for (const viewer of VIEWERS) {
      const silent = readings[viewer].filter(
        (reading) => !reading.wasNoted && keysBesides(reading.text, world.dell.householdId).length > 0,
      );
      const where = silent.map(
        ({ address, text }) => `${patternOf(address)}: ${keysBesides(text, world.dell.householdId)}`,
      );
      expect([viewer, [...new Set(where)]]).toEqual([viewer, []]);
    }
  });

  test('is recorded with who, what, when and why', async () => {
    const { dell, viewers } = world;
    const rows = await app.admin<{ person_id: string; what: string; purpose: string; read_at: Date }[]>`
      select person_id, what, purpose, read_at from book.private_read where household_id = ${dell.householdId}`;
    const known = new Set(Object.values(viewers).map(({ personId }) => personId));
    expect(rows.filter(({ person_id }) => !known.has(person_id))).toEqual([]);
    for (const { what, purpose, read_at } of rows)
      expect([what, purpose, read_at.getTime()]).toEqual([
        expect.stringMatching(/^\w/),
        expect.stringMatching(/^\w/),
        app.clock.now.getTime(),
      ]);
  });

  test('at a telephone number needs a purpose, and a duty that has one', async () => {
    const { storehouse, dell, viewers } = world;
    const path = `${storehouse.path}/households/${dell.householdId}/contact?purpose=the%20lorry%20is%20early`;
    const seeing = [];
    for (const viewer of VIEWERS)
      if (JSON.stringify((await viewers[viewer].caller.get(path)).body).includes(SECRETS.phone))
        seeing.push(viewer);
    expect(seeing).toEqual(['coordinator', 'treasurer', 'packing lead', 'equipment keeper']);
  });
});

test('a plain member and the equipment keeper learn of a household its name, its seat and its people, no more', () => {
  for (const viewer of ['member', 'equipment keeper'] as const) {
    const known = new Set(readings[viewer].flatMap(({ text }) => keysBesides(text, world.dell.householdId)));
    expect([viewer, [...known]]).toEqual([viewer, []]);
  }
});

test('no refusal tells what it refuses: it names nobody and carries no figure of theirs', () => {
  const secrets = Object.keys(SECRETS) as Secret[];
  for (const viewer of VIEWERS) {
    const refusals = readings[viewer].filter(({ status }) => status >= 400);
    expect(refusals.filter(({ text }) => secrets.some((secret) => holds(text, secret)))).toEqual([]);
    expect(refusals.filter(({ text }) => /Dell|seat/.test(text))).toEqual([]);
  }
});

test('no reading is a failure of ours', () => {
  const failed = VIEWERS.flatMap((viewer) => readings[viewer].filter(({ status }) => status >= 500));
  expect(failed.map(({ address }) => address)).toEqual([]);
});

/** What every member may know of a household: that it is there, who belongs to it, and who helps whom. */
const OPEN = new Set([
  ...['id', 'name', 'seat', 'joinedOn', 'leftOn', 'version', 'householdId', 'householdName', 'household'],
  ...[
    'duties',
    'helperId',
    'helperName',
    'reason',
    'isInForce',
    'grantedBy',
    'grantedAt',
    'expiresAt',
    'endedAt',
  ],
  ...['state', 'madeBy', 'madeAt', 'usedAt', 'withdrawnAt'], // of an invitation
  'isSettled', // yes or no, of a deposit, for the coordinator
]);

/** The fields beside a household's id, in any object of an answer, that say more of it than is open to all. */
function keysBesides(text: string, householdId: string): string[] {
  const found = new Set<string>();
  const walk = (at: unknown): void => {
    if (typeof at !== 'object' || at === null) return;
    if (!Array.isArray(at) && Object.values(at).includes(householdId))
      for (const key of Object.keys(at)) if (!OPEN.has(key)) found.add(key);
    for (const inner of Object.values(at)) walk(inner);
  };
  if (text.startsWith('{')) walk(JSON.parse(text));
  return [...found].toSorted();
}

const patternOf = (address: string): string => address.replaceAll(/[0-9a-f-]{36}/g, '…');
