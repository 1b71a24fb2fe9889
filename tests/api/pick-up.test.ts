import { afterAll, beforeAll, expect, test } from 'vitest';
import { landedCostOf } from '../../apps/api/src/features/pick-up/holdings.ts';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { type GrainHouseholds, openGrain } from '../support/fixed-buy.ts';
import { aPackingLead } from '../support/landed-buy.ts';
import { refusalOf } from '../support/money-books.ts';
import { aSharedBuy, balancesOf, type TestSharedBuy } from '../support/shared-buy.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

// One shared-out buy (job map 4.3), fetched by its four households; the tests tell it in order.
let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
let buy: TestSharedBuy;
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
  buy = await aSharedBuy(app, storehouse, { households });
});
afterAll(() => app.close());

const SATURDAY = { startsAt: '2026-10-03T15:00:00Z', endsAt: '2026-10-03T17:00:00Z' };
type Waiting = { householdId: string; bagId: string; bagCode: string; grams: number; isOnHold: boolean };

async function plan(name: keyof GrainHouseholds): Promise<{ id: string; version: number }> {
  return bodyOf(await households[name].caller.post(`${buy.path}/pick-ups`, SATURDAY), 201);
}
const collection = (id: string) => `${storehouse.path}/pick-ups/${id}/collection`;

async function waitingOf(name: keyof GrainHouseholds): Promise<Waiting[]> {
  const { waiting } = bodyOf(await storehouse.coordinator.get(`${buy.path}/pick-ups`));
  return waiting.filter((row: Waiting) => row.householdId === households[name].householdId);
}
const gramsOf = (rows: readonly { grams: number }[]) => rows.reduce((sum, row) => sum + row.grams, 0);

test('a household plans its own hour, and a stale change of it is refused', async () => {
  const { id, version } = await plan('Dell');
  const { pickUps } = bodyOf(await households.Dell.caller.get(`${storehouse.path}/pick-ups`));
  expect(pickUps).toMatchObject([{ id, name: 'Dell', startsAt: '2026-10-03T15:00:00.000Z', pieces: [] }]);
  const path = `${storehouse.path}/pick-ups/${id}`;
  const later = { startsAt: '2026-10-04T15:00:00Z', endsAt: '2026-10-04T16:00:00Z' };
  expect(bodyOf(await households.Dell.caller.put(path, { version, ...later })).version).toBe(version + 1);
  const stale = await households.Dell.caller.put(path, { version, ...SATURDAY });
  expect([stale.status, stale.body.code, stale.body.newer.version]).toEqual([
    409,
    'stale-version',
    version + 1,
  ]);
  const neighbour = await households.Corran.caller.put(path, { version: version + 1, ...SATURDAY });
  expect(neighbour.body.code).toBe('not-your-household');
});

test.for([
  { wish: { startsAt: SATURDAY.endsAt, endsAt: SATURDAY.startsAt }, fields: ['endsAt'] },
  { wish: { startsAt: '2026-10-03', endsAt: SATURDAY.endsAt }, fields: ['startsAt'] },
  { wish: { ...SATURDAY, place: 'barn' }, fields: ['place'] },
])('a window such as $wish is refused', async ({ wish, fields }) => {
  const refused = await refusalOf(app, () => households.Dell.caller.post(`${buy.path}/pick-ups`, wish));
  expect(refused).toEqual({ status: 400, code: 'invalid-input', fields, isUnchanged: true });
});

test('a member plans for nobody else, and sees no neighbour’s pick-up or grams', async () => {
  const forDell = { householdId: households.Dell.householdId, ...SATURDAY };
  const refused = await refusalOf(app, () => households.Corran.caller.post(`${buy.path}/pick-ups`, forDell));
  expect(refused).toMatchObject({ status: 403, code: 'not-your-household', isUnchanged: true });
  const seen = bodyOf(await households.Corran.caller.get(`${buy.path}/pick-ups`));
  expect(seen.pickUps).toEqual([]);
  expect(new Set(seen.waiting.map((row: Waiting) => row.householdId))).toEqual(
    new Set([households.Corran.householdId]),
  );
});

test('everything of a household is signed off at once, and moves no gram in the book', async () => {
  const before = await waitingOf('Dell');
  expect(gramsOf(before)).toBe(13_608 + 4536 + 5443); // 30 lb of wheat, 10 lb of oats, 12 lb of beans
  const { id } = await plan('Dell');
  const entries = async () => Number((await app.admin`select count(*) from book.entry`)[0]?.count);
  const count = await entries();
  const lead = await aPackingLead(app, storehouse, households.Corran);
  const taken = bodyOf(await lead.caller.post(collection(id), { signedBy: 'Dora Dell' }), 201);
  expect(taken).toMatchObject({ signedBy: 'Dora Dell', handedOverBy: lead.personId, name: 'Dell' });
  expect(gramsOf(taken.pieces)).toBe(gramsOf(before));
  expect(await waitingOf('Dell')).toEqual([]);
  expect(await entries()).toBe(count);
  const twice = await refusalOf(app, () => lead.caller.post(collection(id), { signedBy: 'Dora Dell' }));
  expect(twice).toMatchObject({ status: 409, code: 'already-collected', isUnchanged: true });
  const next = await plan('Dell');
  const nothing = await refusalOf(app, () => lead.caller.post(collection(next.id), { signedBy: 'Dora' }));
  expect(nothing).toMatchObject({ status: 409, code: 'not-enough-left', isUnchanged: true });
});

test('a part of a bag is fetched, and never more of it than still waits', async () => {
  const [first] = await waitingOf('Corran');
  const bagId = first?.bagId ?? '';
  const grams = first?.grams ?? 0;
  const take = async (pieces: unknown) => {
    const { id } = await plan('Corran');
    return households.Corran.caller.post(collection(id), { signedBy: 'Cora', pieces });
  };
  expect(bodyOf(await take([{ bagId, grams: 1000 }]), 201).pieces).toMatchObject([{ bagId, grams: 1000 }]);
  const { id } = await plan('Corran');
  const asked = { signedBy: 'Cora', pieces: [{ bagId, grams }] };
  const refused = await refusalOf(app, () => households.Corran.caller.post(collection(id), asked));
  expect(refused).toEqual({
    status: 409,
    code: 'not-enough-left',
    fields: ['pieces.0.grams'],
    isUnchanged: true,
  });
  expect((await households.Corran.caller.post(collection(id), asked)).body.waitingGrams).toBe(grams - 1000);
  const another = (await waitingOf('Birchall')).find((row) => row.bagId !== bagId);
  const foreign = { signedBy: 'Cora', pieces: [{ bagId: another?.bagId, grams: 1 }] };
  const ofOthers = await refusalOf(app, () => households.Dell.caller.post(collection(id), foreign));
  expect(ofOthers).toMatchObject({ status: 403, code: 'not-your-household', isUnchanged: true });
});

test.for([
  { pieces: [{ grams: 0 }], fields: ['pieces.0.grams'] },
  { pieces: [{ grams: 2.5 }], fields: ['pieces.0.grams'] },
  { pieces: [], fields: ['pieces'] },
  { pieces: [{ grams: 1 }, { grams: 1 }], fields: ['pieces'] },
])('pieces such as $pieces are refused', async ({ pieces, fields }) => {
  const { id } = await plan('Corran');
  const [first] = await waitingOf('Corran');
  const named = { signedBy: 'Cora', pieces: pieces.map((piece) => ({ bagId: first?.bagId, ...piece })) };
  const refused = await refusalOf(app, () => households.Corran.caller.post(collection(id), named));
  expect(refused).toEqual({ status: 400, code: 'invalid-input', fields, isUnchanged: true });
});

test('two who hand out the same sack at once hand it out once', async () => {
  const [first] = await waitingOf('Birchall');
  const asked = { signedBy: 'Ben', pieces: [{ bagId: first?.bagId, grams: first?.grams }] };
  const plans = [await plan('Birchall'), await plan('Birchall')];
  const both = await Promise.all(plans.map(({ id }) => storehouse.coordinator.post(collection(id), asked)));
  expect(both.map((answer) => answer.status).toSorted()).toEqual([201, 409]);
  const [row] = await app.admin<{ grams: string }[]>`
    select sum(p.grams) as grams from book.pick_up_piece p join book.pick_up u using (storehouse_id, pick_up_id)
    where p.bag_id = ${first?.bagId ?? ''} and u.household_id = ${households.Birchall.householdId}`;
  expect(Number(row?.grams)).toBe(first?.grams);
});

test('nothing is handed out of a bag on hold, nor taken by the rule for what is never fetched', async () => {
  const first = (await waitingOf('Ashdown')).find((row) => row.grams === 22_680); // a whole bag of nobody else's
  const reason = 'Weevils in a bag of the same mark.';
  bodyOf(await storehouse.coordinator.post(`${storehouse.path}/bags/${first?.bagId}/holds`, { reason }), 201);
  const { id } = await plan('Ashdown');
  const asked = { signedBy: 'Ada', pieces: [{ bagId: first?.bagId, grams: 1 }] };
  const refused = await refusalOf(app, () => storehouse.coordinator.post(collection(id), asked));
  expect(refused).toMatchObject({ status: 409, code: 'bag-on-hold', isUnchanged: true });
  const rest = bodyOf(await storehouse.coordinator.post(collection(id), { signedBy: 'Ada' }), 201);
  expect(rest.pieces.map((piece: { bagId: string }) => piece.bagId)).not.toContain(first?.bagId);
  expect(await waitingOf('Ashdown')).toMatchObject([{ bagId: first?.bagId, isOnHold: true }]);
});

test('what a household never fetched goes to common stock once its days have passed, at landed cost', async () => {
  const { householdId } = households.Corran;
  const path = `${buy.path}/uncollected/${householdId}`;
  const left = await waitingOf('Corran');
  const early = await refusalOf(app, () => storehouse.coordinator.post(path, {}));
  expect(early).toMatchObject({ status: 409, code: 'buy-guard-unmet', isUnchanged: true });
  expect((await storehouse.coordinator.post(path, {})).body.missing).toEqual([
    { code: 'may-still-be-fetched', until: '2026-10-01' }, // shared out on 1 September; 30 days
  ]);
  app.clock.now = new Date('2026-10-01T20:00:00Z');
  expect((await storehouse.coordinator.post(path, {})).status).toBe(409);
  app.clock.now = new Date('2026-10-02T12:00:00Z');
  const list = bodyOf(await storehouse.coordinator.get(`${buy.path}/uncollected`));
  expect(list.warning).toContain('for good');
  expect(list.waiting.some((row: Waiting) => row.householdId === householdId)).toBe(true);
  const member = await refusalOf(app, () => households.Birchall.caller.post(path, {}));
  expect(member).toMatchObject({ status: 403, code: 'duty-missing', isUnchanged: true });

  const before = await balancesOf(app, households);
  const taken = bodyOf(await storehouse.coordinator.post(path, { note: 'Asked three times.' }), 201);
  expect(gramsOf(taken.pieces)).toBe(gramsOf(left));
  expect(await waitingOf('Corran')).toEqual([]);
  const after = await balancesOf(app, households);
  // Of 50 lb wheat 36.00, 70 lb oats 52.50, 140 lb by weight 11.30 and 20 lb beans 17.12, Corran fetched 1000 g of
  // wheat: 34.41 of the wheat's 36.00 go back, by 21,680 of 22,680 g, and 11.12 of 11.30, by 62,504 of 63,504 g.
  expect(gramsOf(left)).toBe(62_504);
  expect(taken.creditedMinorUnits).toBe(3441 + 5250 + 1712 + 1112);
  expect((before.Corran ?? 0) - (after.Corran ?? 0)).toBe(taken.creditedMinorUnits);
  const [stock] = await app.admin<{ grams: string; cost: string }[]>`select
    (select sum(a.inflow - a.outflow) from book.account a join book.owner o using (storehouse_id, owner_id)
      where a.kind = 'mass' and o.kind = 'common') as grams,
    (select sum(inflow - outflow) from book.account where kind = 'common_stock') as cost`;
  expect([Number(stock?.grams), Number(stock?.cost)]).toEqual([62_504, taken.creditedMinorUnits]);
  const again = await refusalOf(app, () => storehouse.coordinator.post(path, {}));
  expect(again).toMatchObject({ status: 409, code: 'not-enough-left', isUnchanged: true });
});

test('the rule waits while food is on hold', async () => {
  const path = `${buy.path}/uncollected/${households.Ashdown.householdId}`;
  const refused = await refusalOf(app, () => storehouse.coordinator.post(path, {}));
  expect(refused).toMatchObject({ status: 409, code: 'not-enough-left', isUnchanged: true });
});

test('what was borne by value or per household is not given back with uncollected grams', () => {
  const share = (minorUnits: number) => ({ ownerId: 'h', minorUnits, weight: 1, gotSpareUnit: false });
  const borne = [
    { costLine: 'goods:wheat', share: share(1000) },
    { costLine: 'late:goods:wheat', share: share(-100) },
    { costLine: 'freight:by-weight', share: share(300) },
    { costLine: 'freight:per-household', share: share(1100) },
    { costLine: 'freight:by-value', share: share(500) },
  ];
  const taken = [{ buyLineId: 'wheat', lotId: 'lot', grams: 250 }];
  const awarded = new Map([
    ['wheat', 1000],
    ['oats', 500],
  ]);
  // A quarter of 9.00 (a half going to the taken part), and a sixth of 3.00.
  expect(landedCostOf(taken, borne, awarded)).toEqual([
    { buyLineId: 'wheat', minorUnits: 225 },
    { buyLineId: null, minorUnits: 50 },
  ]);
});

test('who came without an appointment signs in one step, and one who has one takes that', async () => {
  const { householdId, caller } = households.Birchall;
  const path = `${buy.path}/collections`;
  const [second] = await waitingOf('Birchall');
  const pieces = [{ bagId: second?.bagId, grams: 7 }];
  const open = async () =>
    bodyOf(await storehouse.coordinator.get(`${buy.path}/pick-ups`)).pickUps.filter(
      (row: { householdId: string; collectedAt: string | null }) =>
        row.householdId === householdId && row.collectedAt === null,
    );
  const planned = await open();
  expect(planned.length).toBeGreaterThan(0);
  for (const appointment of planned)
    expect(bodyOf(await caller.post(path, { signedBy: 'Ben', pieces }), 201).id).toBe(appointment.id);
  expect(await open()).toEqual([]);
  const came = bodyOf(await storehouse.coordinator.post(path, { householdId, signedBy: 'Bea', pieces }), 201);
  expect(came).toMatchObject({ householdId, startsAt: null, endsAt: null, signedBy: 'Bea' });
  expect(gramsOf(came.pieces)).toBe(7);
  const forOther = { householdId, signedBy: 'Dora' };
  const refused = await refusalOf(app, () => households.Dell.caller.post(path, forOther));
  expect(refused).toMatchObject({ status: 403, code: 'not-your-household', isUnchanged: true });
  // Nothing waits for Dell any more; no appointment is left behind by the refusal.
  const nothing = await refusalOf(app, () => households.Dell.caller.post(path, { signedBy: 'Dora' }));
  expect(nothing).toMatchObject({ status: 409, code: 'not-enough-left', isUnchanged: true });
});
