import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, bodyOf, type TestBuy } from '../support/buy.ts';
import { anOrderedBuy, type TestGrainBuy } from '../support/fixed-buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { bagBodies, offersOf } from '../support/landed-buy.ts';
import { printed } from '../support/pdf.ts';
import { aSharedBuy } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

const WHEAT = 'wheat-hard-red-winter';

let app: TestApp;
let storehouse: TestStorehouse;
let eskdale: TestHousehold;
let buy: TestBuy;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  eskdale = await aHousehold(app, storehouse, 'Eskdale');
});
afterAll(() => app.close());
beforeEach(async () => {
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  buy = await aBuy(app, storehouse);
  app.clock.now = new Date('2026-09-03T01:05:00Z'); // 2 September, 20:05 on the wall in Chicago
});

const pledge = (wish: Record<string, unknown> = {}) => ({
  ...{ buyLineId: buy.lines[WHEAT], leastGrams: 4536, wantedGrams: 4536, mostGrams: 4536, wholeBags: false },
  ...wish,
});
const keyingsOf = async (caller = storehouse.coordinator, of: Pick<TestBuy, 'path'> = buy) =>
  bodyOf(await caller.get(`${of.path}/keyings`)).keyings;
const codeOf = async (path: string): Promise<string> =>
  (await printed(storehouse.coordinator, path)).pages[0]?.qr.split('/').at(-1) ?? '';

test('a slip that a pen filled in keeps both times, and whose it is', async () => {
  const code = await codeOf(`${buy.path}/papers/pledge-slip?blank=true`);
  const wish = pledge({ writtenAt: '2026-09-02T09:40', paperCode: code });
  const { id } = bodyOf(await eskdale.caller.post(`${buy.path}/pledges`, wish), 201);
  expect(await keyingsOf()).toEqual([
    expect.objectContaining({
      what: 'pledge',
      subjectId: id,
      householdId: eskdale.householdId,
      paperCode: code,
      writtenAt: '2026-09-02T14:40:00.000Z',
      keyedAt: '2026-09-03T01:05:00.000Z',
      keyedBy: 'Eskdale Person',
      isEnteredFor: false,
    }),
  ]);
  const slip = await printed(eskdale.caller, `${buy.path}/papers/pledge-slip?language=en`);
  expect(slip.text).toContain('written 2 Sept 2026 09:40, keyed 2 Sept 2026 20:05');
});

test('a helper’s keying is entered for the household', async () => {
  const paper = bodyOf(
    await storehouse.coordinator.post(`${storehouse.path}/households`, {
      name: `Fenwick ${buy.buyId.slice(-6)}`,
      personName: 'Flo Fenwick',
    }),
    201,
  );
  const { persons } = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/persons?limit=200`));
  const ada = persons.find((person: { name: string }) => person.name === 'Ada Ashdown');
  const helpers = `${storehouse.path}/households/${paper.id}/helpers`;
  bodyOf(
    await storehouse.coordinator.post(helpers, {
      personId: ada.id,
      days: 3,
      reason: 'She has no telephone.',
    }),
    201,
  );
  const wish = pledge({ writtenAt: '2026-09-02T14:40:00Z' });
  const header = { 'Sheafbook-For-Household': paper.id };
  bodyOf(await storehouse.coordinator.post(`${buy.path}/pledges`, wish, header), 201);
  const [keying] = await keyingsOf();
  expect(keying).toMatchObject({ householdId: paper.id, isEnteredFor: true, keyedBy: 'Ada Ashdown' });
});

test.for([
  { writtenAt: '2026-09-02T20:06', field: 'writtenAt', because: 'it is still to come' },
  { writtenAt: '2026-09-01T09:59', field: 'writtenAt', because: 'the buy was planned at ten' },
  { writtenAt: 'yesterday', field: 'writtenAt', because: 'it is no time' },
  { writtenAt: '2026-02-30T10:00', field: 'writtenAt', because: 'there is no such day' },
  { writtenAt: '2026-09-02T09:40', paperCode: 'BK7M2Q6', field: 'paperCode', because: 'the code is misread' },
])(
  '$writtenAt is refused because $because, and nothing is pledged',
  async ({ field, because: _, ...pen }) => {
    const answer = await eskdale.caller.post(`${buy.path}/pledges`, pledge(pen));
    expect(answer.status).toBeGreaterThanOrEqual(400);
    expect(answer.status).toBeLessThan(500);
    expect(answer.body.fields.map((problem: { field: string }) => problem.field)).toEqual([field]);
    expect(bodyOf(await eskdale.caller.get(`${buy.path}/pledges`)).own).toEqual([]);
    expect(await keyingsOf()).toEqual([]);
  },
);

test('a landing sheet is keyed in: the lorry, the count, each bag, and a weight', async () => {
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  const ordered: TestGrainBuy = await anOrderedBuy(app, storehouse, { name: 'Landed on paper' });
  const offers = await offersOf(storehouse, ordered);
  app.clock.now = new Date('2026-09-03T01:05:00Z');
  const pen = {
    writtenAt: '2026-09-02T11:15',
    paperCode: await codeOf(`${ordered.path}/papers/landing-sheet`),
  };
  const facts = { supplierId: ordered.supplierId, arrivedOn: '2026-09-02', carrier: 'Valley', ...pen };
  const delivery = bodyOf(await storehouse.coordinator.post(`${ordered.path}/deliveries`, facts), 201);
  const at = `${storehouse.path}/deliveries/${delivery.id}`;
  const counts = [{ bagOfferId: offers.wheat, countedBags: 2 }];
  bodyOf(await storehouse.coordinator.put(`${at}/counts`, { version: delivery.version, counts, ...pen }));
  const bodies = bagBodies(offers, { wheat: [{}, { isUnweighed: true }] });
  const { bags } = bodyOf(await storehouse.coordinator.post(`${at}/bags`, { bags: bodies, ...pen }), 201);
  const weight = { version: bags[1].version, grossGrams: 22_900, tareGrams: 250, ...pen };
  bodyOf(await storehouse.coordinator.put(`${storehouse.path}/bags/${bags[1].id}/weight`, weight));
  const keyings = await keyingsOf(storehouse.coordinator, ordered);
  expect(keyings.map(({ what, subjectId }: Record<string, string>) => [what, subjectId])).toEqual([
    ['delivery', delivery.id],
    ['count', delivery.id],
    ['bag', bags[0].id],
    ['bag', bags[1].id],
    ['weight', bags[1].id],
  ]);
  for (const keying of keyings)
    expect(keying).toMatchObject({
      writtenAt: '2026-09-02T16:15:00.000Z',
      paperCode: pen.paperCode,
      householdId: null,
    });
});

test('a pick-up that was signed on paper keeps its hour', async () => {
  app.clock.now = new Date('2026-09-01T15:00:00Z');
  const other = await aStorehouseOfItsOwn();
  const shared = await aSharedBuy(other.app, other.storehouse);
  other.app.clock.now = new Date('2026-09-06T15:00:00Z');
  const { Dell } = shared.households;
  const window = { startsAt: '2026-09-05T15:00:00Z', endsAt: '2026-09-05T16:00:00Z' };
  const { id } = bodyOf(await Dell.caller.post(`${shared.path}/pick-ups`, window), 201);
  const collection = `${other.storehouse.path}/pick-ups/${id}/collection`;
  const signed = { signedBy: 'Dora Dell', writtenAt: '2026-09-05T10:20' };
  bodyOf(await other.storehouse.coordinator.post(collection, signed), 200, 201);
  const seen = await keyingsOf(other.storehouse.coordinator, shared);
  expect(seen).toEqual([
    expect.objectContaining({
      what: 'pick-up',
      subjectId: id,
      householdId: Dell.householdId,
      writtenAt: '2026-09-05T15:20:00.000Z',
      isEnteredFor: true,
    }),
  ]);
  // Another member is told nothing of a neighbour's hour.
  expect(await keyingsOf(shared.households.Corran.caller, shared)).toEqual([]);
  await other.app.close();
});

async function aStorehouseOfItsOwn() {
  const own = await openTestApp();
  return { app: own, storehouse: await aStorehouse(own) };
}
