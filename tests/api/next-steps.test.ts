import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { Caller, TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf } from '../support/buy.ts';
import { aFixedBuy, type GrainHouseholds, openGrain, payDeposits } from '../support/fixed-buy.ts';
import { aHousehold } from '../support/household.ts';
import { aLandedBuy, aPackingLead } from '../support/landed-buy.ts';
import { aSharedBuy, chargeOf } from '../support/shared-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

/*
 * Job map 3.1, question 1: what needs me today? Open items by deadline, then by the money at stake. The clock stands on
 * 1 September 2026, 10:00 in Chicago.
 */
let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
let packingLead: Caller;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
  packingLead = (await aPackingLead(app, storehouse, households.Corran)).caller;
});
const startsAt = new Date('2026-09-01T15:00:00Z');
beforeEach(() => {
  app.clock.now = startsAt;
});
afterAll(() => app.close());

type Item = { kind: string; buyId: string | null; dueOn: string | null; minorUnits: number | null };
const stepsOf = async (caller: Caller, headers: Record<string, string> = {}): Promise<Item[]> =>
  bodyOf(await caller.get(`${storehouse.path}/next-steps`, headers)).items;
/** The items about one buy, and those about none. */
const aboutOf = async (caller: Caller, { buyId }: { buyId: string }) =>
  (await stepsOf(caller)).filter((item) => item.buyId === buyId);
const kindsOf = (items: readonly Item[]) => items.map(({ kind }) => kind);

test('a gathering waits for the households that have not pledged, until it closes', async () => {
  const buy = await aBuy(app, storehouse, { name: 'Rye' });
  const { caller } = households.Dell;
  expect(await aboutOf(caller, buy)).toEqual([
    {
      kind: 'pledge-closing',
      words: 'Rye gathers pledges, and you have made none.',
      wordsEs: null,
      buyId: buy.buyId,
      buyName: 'Rye',
      stage: 'gathering',
      dueOn: '2026-09-20',
      dueAt: '2026-09-20T23:00:00.000Z',
      endsAt: null,
      isOverdue: false,
      minorUnits: null,
      path: `${buy.path}/pledges`,
      isOfStore: false,
    },
  ]);
  expect(kindsOf(await aboutOf(storehouse.coordinator, buy))).toEqual(['pledge-closing', 'move-buy']);
  await aPledge(caller, buy, { wanted: 50 });
  expect(await aboutOf(caller, buy)).toEqual([]);
  app.clock.now = new Date('2026-09-20T23:00:00Z');
  expect(await aboutOf(households.Corran.caller, buy)).toEqual([]);
  expect(await aboutOf(storehouse.coordinator, buy)).toMatchObject([
    { kind: 'move-buy', dueOn: '2026-09-20' },
  ]);
});

test('a fixed buy asks each household for its own deposit, and the two duties for their agreement', async () => {
  const buy = await aFixedBuy(app, storehouse, { households });
  const { Birchall, Dell } = households;
  // Job map 4.3: deposits of 72.00, 63.00, 53.00 and 23.00.
  expect(await aboutOf(Dell.caller, buy)).toMatchObject([
    { kind: 'deposit-due', minorUnits: 2300, dueOn: '2026-09-24', path: `${buy.path}/deposits/own` },
  ]);
  expect(await aboutOf(Birchall.caller, buy)).toMatchObject([
    { kind: 'deposit-due', minorUnits: 6300 },
    { kind: 'move-buy', minorUnits: null, dueOn: '2026-09-24', path: `${buy.path}/next` },
  ]);
  await payDeposits(buy, { Dell: 2000 });
  expect(await aboutOf(Dell.caller, buy)).toMatchObject([{ kind: 'deposit-due', minorUnits: 300 }]);
  const waiver = { householdId: Dell.householdId, reason: 'a hard winter' };
  bodyOf(await Birchall.caller.post(`${buy.path}/deposits/waivers`, waiver), 201);
  expect(await aboutOf(Dell.caller, buy)).toEqual([]);
  bodyOf(await Birchall.caller.post(`${buy.path}/order-consents`, { duty: 'treasurer' }), 201);
  expect(kindsOf(await aboutOf(Birchall.caller, buy))).toEqual(['deposit-due']);
  expect(kindsOf(await aboutOf(storehouse.coordinator, buy))).toEqual(['deposit-due', 'move-buy']);
});

test('a quote that lapses before the order is the coordinator’s to see to, until it is told to stand', async () => {
  const early = { validUntil: '2026-10-05' };
  const buy = await aBuy(app, storehouse, { orderOn: '2026-10-06', quote: early });
  const quotesOf = async (caller: Caller) =>
    (await aboutOf(caller, buy)).filter(({ kind }) => kind === 'quote-lapses');
  expect(await quotesOf(storehouse.coordinator)).toMatchObject([
    { dueOn: '2026-10-05', isOverdue: false, path: `${buy.path}/quotes` },
  ]);
  expect(await quotesOf(households.Birchall.caller)).toEqual([]);
  await aPledge(households.Dell.caller, buy, { wanted: 50 });
  bodyOf(await storehouse.coordinator.post(`${buy.path}/fixing`, {}), 201);
  app.clock.now = new Date('2026-10-06T15:00:00Z');
  expect(await quotesOf(storehouse.coordinator)).toMatchObject([{ dueOn: '2026-10-05', isOverdue: true }]);
  const [quote] = bodyOf(await storehouse.coordinator.get(`${buy.path}/quotes`)).quotes;
  const terms = { version: quote.version, validUntil: '2026-10-06', freightSteps: [], offers: [] };
  const path = `${buy.path}/quotes/${buy.quoteId}/confirmed-terms`;
  bodyOf(await storehouse.coordinator.put(path, terms));
  expect(await quotesOf(storehouse.coordinator)).toEqual([]);
});

test('what came short or torn is to be claimed while the window is open', async () => {
  const buy = await aLandedBuy(app, storehouse, { households, hasClaims: false });
  const windowsOf = async (caller: Caller) =>
    (await aboutOf(caller, buy)).filter(({ kind }) => kind === 'claim-window');
  // Job map 4.3: a tenth of a bag at 36.00 and a bag at 21.40. 48 hours cover the day of arrival and the next.
  for (const caller of [storehouse.coordinator, households.Birchall.caller])
    expect(await windowsOf(caller)).toMatchObject([
      { dueOn: '2026-09-02', minorUnits: 2500, path: `${buy.path}/landing` },
    ]);
  expect(await aboutOf(households.Dell.caller, buy)).toEqual([]);
  app.clock.now = new Date('2026-09-03T15:00:00Z');
  expect(await windowsOf(storehouse.coordinator)).toEqual([]);
});

describe('a shared-out buy', () => {
  let buy: Awaited<ReturnType<typeof aSharedBuy>>;
  beforeAll(async () => {
    app.clock.now = startsAt;
    buy = await aSharedBuy(app, storehouse, { households });
  });

  test('has each household fetch its food in time and pay what it owes, and shows nobody else’s', async () => {
    const { rules } = bodyOf(await storehouse.coordinator.get(storehouse.path));
    expect(rules.uncollectedDays).toBe(30);
    const items = await stepsOf(households.Corran.caller);
    const owed = (chargeOf(buy.charges).Corran ?? 0) - 5300; // its deposit is set against the charge
    expect(owed).toBeGreaterThan(0);
    expect(items.filter((item) => item.buyId === buy.buyId)).toMatchObject([
      { kind: 'food-waiting', dueOn: '2026-10-01', path: `${buy.path}/pick-ups` },
    ]);
    expect(items.at(-1)).toMatchObject({ kind: 'balance-due', buyId: null, dueOn: null, minorUnits: owed });
    for (const name of ['Ashdown', 'Birchall', 'Dell'] as const)
      expect(JSON.stringify(items)).not.toContain(households[name].householdId);
    expect(items.filter(({ minorUnits }) => minorUnits !== null).map(({ kind }) => kind)).toEqual([
      'deposit-due', // of the buy that is fixed since an earlier test
      'balance-due',
    ]);
  });

  test('puts an hour that was chosen in place of the last day, and asks someone to be there', async () => {
    for (const [name, hour] of [
      ['Dell', '15'],
      ['Corran', '14'],
    ] as const) {
      const window = { startsAt: `2026-09-05T${hour}:00:00Z`, endsAt: `2026-09-05T${hour}:30:00Z` };
      bodyOf(await households[name].caller.post(`${buy.path}/pick-ups`, window), 201);
    }
    expect(await aboutOf(households.Dell.caller, buy)).toMatchObject([
      { kind: 'pick-up', dueOn: '2026-09-05', dueAt: '2026-09-05T15:00:00.000Z', isOverdue: false },
    ]);
    for (const caller of [packingLead, storehouse.coordinator])
      expect((await aboutOf(caller, buy)).find(({ kind }) => kind === 'hand-over')).toMatchObject({
        words: expect.stringContaining('2 households come'),
        dueAt: '2026-09-05T14:00:00.000Z',
      });
    expect(kindsOf(await aboutOf(households.Birchall.caller, buy))).toEqual(['food-waiting', 'move-buy']);
    // Its window is from 15:00 to 15:30.
    for (const [at, isOverdue] of [
      ['15:30:00', false],
      ['15:30:01', true],
    ] as const) {
      app.clock.now = new Date(`2026-09-05T${at}Z`);
      expect(await aboutOf(households.Dell.caller, buy)).toMatchObject([
        { kind: 'pick-up', endsAt: '2026-09-05T15:30:00.000Z', isOverdue },
      ]);
    }
  });

  test('has a bag on hold looked at by one duty and released with the other', async () => {
    const bagId = buy.bags.wheat[0]?.id;
    const { id } = bodyOf(
      await packingLead.post(`${storehouse.path}/bags/${bagId}/holds`, { reason: 'Wet.' }),
      201,
    );
    const holdsOf = async (caller: Caller) =>
      (await stepsOf(caller)).filter(({ kind }) => kind === 'hold-open');
    const path = `${storehouse.path}/holds/${id}`;
    for (const caller of [packingLead, storehouse.coordinator])
      expect(await holdsOf(caller)).toMatchObject([{ path, buyId: buy.buyId, dueOn: null }]);
    expect(await holdsOf(households.Birchall.caller)).toEqual([]);
    bodyOf(await packingLead.post(`${path}/release-request`, { finding: 'Dry inside.' }));
    expect(await holdsOf(packingLead)).toEqual([]);
    expect(await holdsOf(storehouse.coordinator)).toMatchObject([
      { words: expect.stringContaining('agree to its release') },
    ]);
    const other = await aPackingLead(app, storehouse, households.Dell, 'Pia Dell');
    expect(await holdsOf(other.caller)).toEqual([]); // a second packing lead can't agree to it
    bodyOf(await storehouse.coordinator.post(`${path}/release`));
    expect(await holdsOf(storehouse.coordinator)).toEqual([]);
  });
});

test('everybody’s list runs by deadline, then by money at stake, and what has no deadline comes last', async () => {
  const callers = [
    storehouse.coordinator,
    packingLead,
    ...Object.values(households).map(({ caller }) => caller),
  ];
  for (const caller of callers) {
    const items = await stepsOf(caller);
    const keys = items.map(({ dueOn }) => dueOn ?? '9999-12-31');
    expect(keys).toEqual(keys.toSorted());
    const undated = items.filter(({ dueOn }) => dueOn === null).map(({ minorUnits }) => minorUnits ?? 0);
    expect(undated).toEqual(undated.toSorted((a, b) => b - a));
  }
  const due = (await stepsOf(households.Birchall.caller)).filter(({ dueOn }) => dueOn === '2026-09-24');
  expect(kindsOf(due)).toEqual(['deposit-due']);
});

test('a helper sees what waits for the household that it helps, none of its own duties’ business, and is written down', async () => {
  const { Birchall, Dell } = households;
  const wish = { personId: Birchall.personId, days: 7, reason: 'a broken arm' };
  const path = `${storehouse.path}/households/${Dell.householdId}`;
  bodyOf(await Dell.caller.post(`${path}/helpers`, wish), 201);
  const headers = { 'Sheafbook-For-Household': Dell.householdId };
  expect(await stepsOf(Birchall.caller, headers)).toEqual(await stepsOf(Dell.caller));
  const { privateReads } = bodyOf(await Dell.caller.get(`${path}/private-reads`));
  expect(privateReads[0]).toMatchObject({ readerName: 'Birchall Person', purpose: 'helping' });
});

test('a new household is asked to pledge and for nothing else; the list is CSV too, and no stranger’s', async () => {
  const fenn = await aHousehold(app, storehouse, 'Fenn');
  const items = await stepsOf(fenn.caller);
  expect(kindsOf(items)).toEqual(['pledge-closing']); // the gathering of rye
  const csv = await fenn.caller.get(`${storehouse.path}/next-steps?format=csv`);
  expect(csv.headers.get('Content-Type')).toContain('text/csv');
  expect(csv.body.split('\r\n')).toHaveLength(1 + items.length + 1);
  const unknown = await fenn.caller.get(`${storehouse.path}/next-steps?sort=money`);
  expect([unknown.status, unknown.body.code]).toEqual([400, 'invalid-input']);
  expect((await app.as().get(`${storehouse.path}/next-steps`)).status).toBe(401);
});
