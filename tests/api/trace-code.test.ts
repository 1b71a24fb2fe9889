import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Caller, TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { type GrainHouseholds, openGrain } from '../support/fixed-buy.ts';
import { aPackingLead } from '../support/landed-buy.ts';
import { refusalOf, refused } from '../support/landing-books.ts';
import { aPlainBuy, splitPlain, type TestPlainBuy } from '../support/plain-buy.ts';
import { kindIdsOf, type TestCan, type TestPiece } from '../support/shelf.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

// The worked example of job map 12: the mark K-77 is two bags of 22,680 g, one Ashdown's and one Birchall's.
const BAG = 22_680;
const RICE = 'rice-white-long';

let app: TestApp;
let storehouse: TestStorehouse;
let households: GrainHouseholds;
let lead: Caller;
let buy: TestPlainBuy;
let lotId: string;
let ashdown: { bag: TestPiece; cans: TestCan[] };
let birchall: { bag: TestPiece; cans: TestCan[] };
beforeAll(async () => {
  ({ app, storehouse, households } = await openGrain());
  const { Ashdown, Birchall, Corran } = households;
  const bags = (supplierMark: string, count: number) =>
    Array.from({ length: count }, () => ({ supplierMark }));
  buy = await aPlainBuy(app, storehouse, {
    treasurer: Birchall.caller,
    foods: [
      {
        pledges: [Ashdown, Birchall].map(({ caller }) => ({ by: caller, wanted: 50, wholeBags: true })),
        bags: bags('K-77', 2),
      },
      { foodCode: RICE, pledges: [{ by: Corran.caller, wanted: 50 }], bags: bags('R-12', 1) },
    ],
  });
  await splitPlain(storehouse, buy);
  bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
  lead = (await aPackingLead(app, storehouse, Corran)).caller;
  const [row] = await app.admin<{ lotId: string }[]>`select lot_id as "lotId" from book.lot
    where supplier_mark = 'K-77'`;
  lotId = row?.lotId ?? '';
  const kinds = await kindIdsOf(storehouse);
  const pour = async (caller: Caller, count: number) => {
    const { bags: own } = bodyOf(await caller.get(at('/own-bags')));
    const [bag] = own;
    const body = { bagId: bag.bagId, containerKindId: kinds['can-no-10'], count, gramsEach: 2_600 };
    return { bag, cans: bodyOf(await caller.post(at('/containers'), body), 201).containers as TestCan[] };
  };
  ashdown = await pour(Ashdown.caller, 8);
  birchall = await pour(Birchall.caller, 4);
  for (const { id } of birchall.cans)
    bodyOf(await Birchall.caller.post(at(`/containers/${id}/uses`), { grams: 2_600, to: 'given' }), 201);
  const eaten = { grams: 6_200, to: 'eaten' };
  bodyOf(await Birchall.caller.post(at(`/bags/${birchall.bag.bagId}/uses`), eaten), 201);
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
type Line = { way: string; place: string; ownerName: string | null; grams: number };
type Thing = { kind: string; ownerName: string | null; vessel: { code: string; isHeld: boolean } | null };
const trace = async (caller: Caller, query: string) => bodyOf(await caller.get(at(`/trace?${query}`)));
const byCode = (caller: Caller, code: string, task = '') =>
  trace(caller, `code=${encodeURIComponent(code)}${task && `&task=${task}`}`);
const linesOf = (way: { balance: { lines: Line[] } }) =>
  way.balance.lines.map((line) => [line.way, line.place, line.ownerName, line.grams]);
const looksAt = async ({ caller, householdId }: GrainHouseholds['Dell']) =>
  bodyOf(await caller.get(at(`/households/${householdId}/private-reads`))).privateReads as {
    what: string;
    purpose: string;
  }[];

describe('the mark K-77 in a recall', () => {
  test('adds up to the gram: 20,800 + 1,880 + 10,400 + 6,200 + 6,080 = 45,360 g, 100.0 % known', async () => {
    const { found, way } = await byCode(lead, 'k-77', 'recall');
    expect(found).toMatchObject([{ kind: 'mark', label: 'K-77' }]);
    expect(linesOf(way)).toEqual([
      ['in', 'supplier', null, 2 * BAG],
      ['out', 'given', 'Birchall', 10_400],
      ['out', 'eaten', 'Birchall', 6_200],
      ['left', 'container', expect.stringMatching('Ashdown'), 20_800],
      ['left', 'bag', 'Birchall', 6_080],
      ['left', 'bag', expect.stringMatching('Ashdown'), 1_880],
    ]);
    expect(way.balance).toMatchObject({
      ...{ inGrams: 45_360, outGrams: 16_600, leftGrams: 28_760, knownPermille: 1000, addsUp: true },
    });
  });

  test('leads back to food, supplier, order and delivery, and forward to 2 bags and 8 + 4 cans', async () => {
    const { way } = await byCode(lead, 'K-77', 'recall');
    expect(way.lots).toMatchObject([
      {
        ...{ mark: 'K-77', supplier: { id: buy.supplierId }, buy: { id: buy.buyId }, orderNos: [1] },
        deliveries: [{ bags: 2 }],
      },
    ]);
    const count = (kind: string) => way.things.filter((thing: Thing) => thing.kind === kind).length;
    expect([count('bag'), count('container')]).toEqual([2, 12]);
    const poured = way.flows.filter(({ from, grams }: { from: string; grams: number }) => {
      return grams === 2_600 && from.startsWith(ashdown.bag.bagId);
    });
    expect(poured).toHaveLength(8);
  });

  test('is written down for each household with a part in it, and asks nothing of the others', async () => {
    await byCode(lead, 'K-77', 'recall');
    const look = expect.objectContaining({ what: 'containers', purpose: 'recall' });
    expect(await looksAt(households.Birchall)).toContainEqual(look);
    expect(await looksAt(households.Dell)).not.toContainEqual(look);
  });

  test('shows what is on hold', async () => {
    const of = { scope: 'lot', lotId };
    const hold = bodyOf(await lead.post(at('/holds'), { of, reason: 'A notice of the mill.' }), 201);
    const { way } = await byCode(lead, 'K-77', 'recall');
    expect(way.holds).toEqual([{ id: hold.id, scope: 'lot', sentence: 'A notice of the mill.' }]);
    const vessels = way.things.flatMap(({ vessel }: Thing) => vessel ?? []);
    expect(vessels.map(({ isHeld }: { isHeld: boolean }) => isHeld)).toEqual(Array(14).fill(true));
    bodyOf(await lead.post(at(`/holds/${hold.id}/release-request`), { finding: 'It was another mark.' }));
    bodyOf(await storehouse.coordinator.post(at(`/holds/${hold.id}/release`)));
  });
});

describe('without a recall', () => {
  test('a duty sees who got which share, and nothing of what became of it at home', async () => {
    const { way } = await byCode(storehouse.coordinator, 'K-77');
    expect(way).toMatchObject({ depth: 'shares', mayRecall: true, balance: { addsUp: true } });
    // Ashdown is the coordinator’s own household, and sees its own in full.
    expect(linesOf(way)).toEqual([
      ['in', 'supplier', null, 45_360],
      ['out', 'home', 'Birchall', 16_600],
      ['left', 'container', expect.stringMatching('Ashdown'), 20_800],
      ['left', 'bag', 'Birchall', 6_080],
      ['left', 'bag', expect.stringMatching('Ashdown'), 1_880],
    ]);
    for (const { code } of birchall.cans) expect(JSON.stringify(way)).not.toContain(code);
    const keeper = await byCode(households.Birchall.caller, 'K-77'); // the treasurer
    for (const { code } of ashdown.cans) expect(JSON.stringify(keeper)).not.toContain(code);
  });

  test('a neighbour’s can leads a duty back to its bag and does not say whose it is, and the neighbour finds that', async () => {
    const [can] = birchall.cans;
    const { way } = await byCode(storehouse.coordinator, can?.code ?? '');
    expect(linesOf(way)).toEqual([
      ['in', 'bag', null, 2_600],
      ['out', 'home', null, 2_600],
    ]);
    expect(way.before).toMatchObject([{ kind: 'bag', code: birchall.bag.bagCode }]);
    expect(JSON.stringify(way)).not.toContain('Birchall');
    expect(await looksAt(households.Birchall)).toContainEqual(
      expect.objectContaining({ what: 'containers', purpose: 'trace of a code' }),
    );
  });

  test('a member sees its own part, adding up by itself, also when it asks for a recall', async () => {
    const { Corran, Dell } = households;
    const rice = await byCode(Corran.caller, 'R-12', 'recall');
    expect(rice.way).toMatchObject({ depth: 'own', mayRecall: false, carryOversOfOthers: null });
    expect(linesOf(rice.way)).toEqual([
      ['in', 'share', 'Corran', BAG],
      ['left', 'bag', 'Corran', BAG],
    ]);
    const { way } = await byCode(Dell.caller, 'K-77');
    expect(way).toMatchObject({ lots: [{ mark: 'K-77' }], things: [], flows: [], balance: { lines: [] } });
    expect(JSON.stringify(way)).not.toMatch(/Ashdown|Birchall|45360|22680/);
  });
});

test('one’s own can goes back to the bag and on to the kitchen and the table', async () => {
  const [can] = ashdown.cans;
  const { caller } = households.Ashdown;
  bodyOf(await caller.post(at(`/containers/${can?.id}/kitchen`), {}), 201);
  bodyOf(await caller.post(at('/kitchen/uses'), { lotId, grams: 400, to: 'eaten' }), 201);
  const { way } = await byCode(caller, can?.code ?? '');
  expect(linesOf(way).map(([way_, place, , grams]) => [way_, place, grams])).toEqual([
    ['in', 'bag', 2_600],
    ['out', 'eaten', 400],
    ['left', 'kitchen', 2_200],
  ]);
  const kitchen = await trace(caller, `kind=kitchen&id=${households.Ashdown.householdId}`);
  expect(kitchen.way.balance).toMatchObject({
    inGrams: 2_600,
    outGrams: 400,
    leftGrams: 2_200,
    addsUp: true,
  });
  expect(kitchen.way.before.map(({ code }: { code: string }) => code)).toEqual([
    can?.code,
    ashdown.bag.bagCode,
  ]);
});

test('a lot, a delivery, an order number and a bag lead to the same grams', async () => {
  const [{ id: deliveryId }] = (await byCode(lead, 'K-77')).way.lots[0].deliveries;
  const whole = await trace(lead, `kind=lot&id=${lotId}&task=recall`);
  expect(whole.way.balance.inGrams).toBe(45_360);
  const lorry = await trace(lead, `kind=delivery&id=${deliveryId}&task=recall`);
  expect(lorry.way.balance).toMatchObject({ inGrams: 3 * BAG, addsUp: true });
  expect((await byCode(lead, 'Order 1')).found).toMatchObject([{ kind: 'delivery', id: deliveryId }]);
  const bag = await byCode(lead, ashdown.bag.bagCode, 'recall');
  expect(bag.way.balance).toMatchObject({ inGrams: BAG, addsUp: true });
});

describe('is refused, and says which field', () => {
  const asked = (caller: () => Caller, query: string) => () => caller().get(at(`/trace?${query}`));
  const unknown = '0192f0c8-5a00-7000-8000-000000000001';
  test.for([
    { why: 'a code that nothing has', query: 'code=Z-99', status: 404, field: 'code' },
    { why: 'a thing that is not here', query: `kind=bag&id=${unknown}`, status: 404, field: 'id' },
    { why: 'nothing asked', query: '', status: 400, field: 'code' },
    { why: 'an id of no kind', query: `id=${unknown}`, status: 400, field: 'kind' },
  ])('$why', async ({ query, status, field }) => {
    const code = status === 404 ? 'thing-not-found' : 'invalid-input';
    expect(
      await refusalOf(
        app,
        asked(() => lead, query),
      ),
    ).toEqual(refused(status, code, field));
  });

  test('one wrong character, which the last one tells, with what it may be', async () => {
    const { bagCode } = ashdown.bag;
    const wrong = `${bagCode[0] === 'A' ? 'B' : 'A'}${bagCode.slice(1)}`;
    const { status, body } = await lead.get(at(`/trace?code=${wrong}`));
    expect([status, body.fields[0].field, body.near]).toEqual([
      404,
      'code',
      expect.arrayContaining([bagCode]),
    ]);
    expect(body.detail).toMatch(/^One character is wrong: .* It may be /);
    const turned = `${bagCode[1]}${bagCode[0]}${bagCode.slice(2)}`;
    if (turned !== bagCode)
      expect((await lead.get(at(`/trace?code=${turned}`))).body.near).toContain(bagCode);
  });

  test('a neighbour’s can and kitchen to a member, exactly as if they were not there', async () => {
    const [can] = birchall.cans;
    const { caller } = households.Dell;
    expect(
      await refusalOf(
        app,
        asked(() => caller, `code=${can?.code}`),
      ),
    ).toEqual(refused(404, 'thing-not-found', 'code'));
    const wrong = `${can?.code[0] === 'A' ? 'B' : 'A'}${can?.code.slice(1)}`;
    expect((await caller.get(at(`/trace?code=${wrong}`))).body.near).not.toContain(can?.code);
    const kitchen = `kind=kitchen&id=${households.Birchall.householdId}`;
    expect(
      await refusalOf(
        app,
        asked(() => caller, kitchen),
      ),
    ).toEqual(refused(404, 'thing-not-found', 'id'));
  });
});

describe('a recall of the mark', () => {
  let hold: { id: string };
  const path = (rest: string) => at(`/holds/${hold.id}${rest}`);
  type Row = { name: string; grams: number; acknowledgedAt: string | null; answer: object | null };
  const standing = async () =>
    bodyOf(await storehouse.coordinator.get(path('/standing'))) as { households: Row[]; pantries: object[] };

  test('tells the two households that had some, and shows who has said what', async () => {
    const of = { scope: 'mark', supplierId: buy.supplierId, mark: 'K-77' };
    hold = bodyOf(await lead.post(at('/holds'), { of, reason: 'The mill found stones.' }), 201);
    const { households: rows } = await standing();
    expect(rows.map(({ name, grams, answer }) => [name, grams, answer])).toEqual([
      [expect.stringMatching('Ashdown'), 22_280, null], // 2,200 g of it in the kitchen
      ['Birchall', 6_080, null],
    ]);
    const { Birchall, Dell } = households;
    const said = { hasSome: true, eatenOn: '2026-08-30', givenOn: null, note: 'two loaves' };
    expect(bodyOf(await Birchall.caller.put(path('/answer'), said))).toMatchObject({
      ...{ isConcerned: true, answer: said, held: [{ code: birchall.bag.bagCode, grams: 6_080 }] },
    });
    expect((await standing()).households[1]).toMatchObject({ name: 'Birchall', answer: said });
    expect(await looksAt(Birchall)).toContainEqual(
      expect.objectContaining({ what: 'notices', purpose: 'recall' }),
    );
    const answer = () => Dell.caller.put(path('/answer'), said);
    expect(await refusalOf(app, answer)).toEqual(refused(404, 'thing-not-found'));
    const later = { ...said, eatenOn: '2027-01-01' };
    expect(await refusalOf(app, () => Birchall.caller.put(path('/answer'), later))).toEqual(
      refused(400, 'invalid-input', 'eatenOn'),
    );
  });

  test('throws one’s own part away with its reason in one step, and leaves a neighbour’s on hold', async () => {
    const { Ashdown, Birchall, Dell } = households;
    const destroy = (caller: Caller, of: string) =>
      caller.post(path('/destruction'), { of, reason: 'Stones.' });
    expect(await refusalOf(app, () => destroy(Dell.caller, 'household'))).toEqual(
      refused(409, 'nothing-to-hold'),
    );
    expect(await refusalOf(app, () => destroy(Dell.caller, 'common'))).toEqual(refused(403, 'duty-missing'));
    expect(bodyOf(await destroy(Birchall.caller, 'household'), 201)).toEqual({
      ...{ grams: 6_080, codes: [birchall.bag.bagCode] },
    });
    const { way } = await byCode(lead, 'K-77', 'recall');
    expect(linesOf(way)).toContainEqual(['out', 'discarded', 'Birchall', 6_080]);
    expect(way.balance).toMatchObject({ inGrams: 45_360, addsUp: true });
    expect((await standing()).households.map(({ grams }) => grams)).toEqual([22_280, 0]);
    expect(bodyOf(await Ashdown.caller.get(path('')))).toMatchObject({ ended: null });
    bodyOf(await destroy(Ashdown.caller, 'household'), 201);
    expect((await standing()).households.map(({ grams }) => grams)).toEqual([0, 0]);
  });
});
