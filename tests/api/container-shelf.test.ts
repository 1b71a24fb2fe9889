import { isCode } from '@sheafbook/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import type { GrainHouseholds } from '../support/fixed-buy.ts';
import { aSharedBuy } from '../support/shared-buy.ts';
import { type Shelves, shelvesOf, type TestPiece, wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
let shelves: Shelves;
let wheat: Record<'Birchall' | 'Dell', TestPiece>;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  const buy = await aSharedBuy(app, storehouse);
  households = buy.households;
  shelves = await shelvesOf(app, storehouse);
  wheat = {
    Birchall: await wheatOf(storehouse, buy, households.Birchall),
    Dell: await wheatOf(storehouse, buy, households.Dell),
  };
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;

test('the bags that hold grams of mine are mine to see, less what was poured, and no neighbour’s', async () => {
  const { caller } = households.Dell;
  const own = async () =>
    bodyOf(await caller.get(at('/own-bags'))).bags.find(
      (bag: { bagId: string }) => bag.bagId === wheat.Dell.bagId,
    );
  const before = await own();
  expect(before).toMatchObject({
    bagCode: wheat.Dell.bagCode,
    isHeld: false,
    food: { nameEn: 'Hard red winter wheat' },
  });
  await shelves.aCan(caller, wheat.Dell, 1500);
  expect((await own()).grams).toBe(before.grams - 1500);
  const others: { bagId: string; grams: number }[] = bodyOf(
    await households.Birchall.caller.get(at('/own-bags')),
  ).bags;
  expect(others.find(({ bagId }) => bagId === wheat.Birchall.bagId)?.grams).toBe(wheat.Birchall.grams);
  expect(others.every(({ grams }) => grams > 0)).toBe(true);
});

describe('food that a household had before', () => {
  const stock = async (more: Record<string, unknown> = {}) => ({
    foodId: (await foodIdsOf(storehouse))['rice-white-long'],
    originNote: 'bought in town, nobody knows where it grew',
    containerKindId: shelves.kinds['pail-5-gallon-lined'],
    count: 2,
    gramsEach: 10_000,
    packedOn: '2024-03-01',
    ...more,
  });

  test('comes in from outside as a lot of its own, with its history in words', async () => {
    const { caller } = households.Dell;
    const filled = bodyOf(await caller.post(at('/stock'), await stock()), 201);
    expect(filled.grams).toBe(20_000);
    const shown = bodyOf(await caller.get(at(`/containers/${filled.containers[1].id}`)));
    expect(shown).toMatchObject({
      grams: 10_000,
      packedOn: '2024-03-01',
      food: { code: 'rice-white-long' },
      originNote: 'bought in town, nobody knows where it grew',
    });
    const again = bodyOf(await caller.post(at('/stock'), await stock()), 201);
    const other = bodyOf(await caller.get(at(`/containers/${again.containers[0].id}`)));
    expect(other.lotId).not.toBe(shown.lotId);
  });

  test('is refused past the brim, packed tomorrow, or in a kind that is not there', async () => {
    const { caller } = households.Dell;
    const send = async (more: Record<string, unknown>) => {
      const body = await stock(more);
      return refusalOf(app, () => caller.post(at('/stock'), body));
    };
    expect(await send({ gramsEach: 30_000 })).toEqual(refused(422, 'over-capacity', 'gramsEach'));
    expect(await send({ packedOn: '2026-09-02' })).toEqual(refused(400, 'invalid-input', 'packedOn'));
    expect(await send({ packedOn: '2026-02-30' })).toEqual(refused(400, 'invalid-input', 'packedOn'));
    expect(await send({ containerKindId: wheat.Dell.bagId })).toEqual(refused(404, 'thing-not-found'));
    expect(await send({ foodId: wheat.Dell.bagId })).toEqual(refused(404, 'thing-not-found'));
  });
});

describe('a shelf', () => {
  test('is its household’s own: a neighbour’s container, and any duty’s look at it, is not found', async () => {
    const can = await shelves.aCan(households.Birchall.caller, wheat.Birchall);
    for (const caller of [households.Corran.caller, storehouse.coordinator]) {
      for (const call of [
        () => caller.get(at(`/containers/${can.id}`)),
        () => caller.post(at(`/containers/${can.id}/pours`), { bagId: wheat.Birchall.bagId, grams: 1 }),
        () => caller.post(at(`/containers/${can.id}/uses`), { grams: 1, to: 'eaten' }),
      ])
        expect(await refusalOf(app, call)).toEqual(refused(404, 'thing-not-found'));
      const { containers } = bodyOf(await caller.get(at('/containers?limit=200')));
      expect(containers.map(({ id }: { id: string }) => id)).not.toContain(can.id);
    }
  });

  test('comes page by page and as CSV, a header and a row for each container', async () => {
    const { caller } = households.Dell;
    bodyOf(await shelves.pour(caller, wheat.Dell, { kind: 'jar-quart', count: 5, gramsEach: 700 }), 201);
    const all = bodyOf(await caller.get(at('/containers'))).containers;
    const page = bodyOf(await caller.get(at('/containers?limit=3')));
    const rest = bodyOf(await caller.get(at(`/containers?after=${page.next}`)));
    expect([...page.containers, ...rest.containers]).toEqual(all);
    const csv: string = (await caller.get(at('/containers?format=csv'))).body;
    const lines = csv.trim().split('\r\n');
    expect(lines[0]).toBe('code,kind,food,grams,packedOn,openedOn,treatment,place,likelyDays,pastDays');
    expect(lines).toHaveLength(all.length + 1);
    expect(csv).toContain('Quart jar,Hard red winter wheat,700,2026-09-01,');
  });

  test('has no page after a key that is none', async () => {
    const answer = await households.Dell.caller.get(at('/containers?after=nothing'));
    expect([answer.status, answer.body.fields?.[0]?.field]).toEqual([400, 'after']);
  });

  test('is filled by a helper who acts for the household, and it is written down for whom', async () => {
    const { Dell, Corran } = households;
    const grant = { personId: Corran.personId, days: 10 };
    bodyOf(await Dell.caller.post(at(`/households/${Dell.householdId}/helpers`), grant), 201);
    const headers = { 'Sheafbook-For-Household': Dell.householdId };
    const body = shelves.pourBody(wheat.Dell, { kind: 'jar-quart', gramsEach: 600 });
    const filled = bodyOf(await Corran.caller.post(at('/containers'), body, headers), 201);
    expect((await Dell.caller.get(at(`/containers/${filled.containers[0].id}`))).body.grams).toBe(600);
    const [entry] = await app.admin<{ entered_for: string; person_id: string }[]>`
      select entered_for, person_id from book.entry where entry_id = ${filled.entryId}`;
    expect(entry).toEqual({ entered_for: Dell.householdId, person_id: Corran.personId });
    const shelf = await Dell.caller.get(at(`/households/${Dell.householdId}/private-reads`));
    expect(shelf.status).toBe(200);
  });
});

test('no code is given twice over bags and containers, and each carries its check character', async () => {
  const rows = await app.admin<{ code: string }[]>`
    select container_code as code from book.container union all select bag_code from book.bag`;
  const codes = rows.map(({ code }) => code);
  expect(codes.filter((code) => !isCode(code))).toEqual([]);
  expect(new Set(codes).size).toBe(codes.length);
});

test('the book holds up to its audit after all of this', async () => {
  const audit = bodyOf(await storehouse.coordinator.get(at('/audit')));
  expect(audit.findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
});
