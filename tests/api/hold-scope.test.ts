import { spellCode } from '@sheafbook/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import { type Caller, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { stockOf } from '../support/kitchen.ts';
import { aPackingLead } from '../support/landed-buy.ts';
import { refusalOf, refused } from '../support/landing-books.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { type Shelves, shelvesOf, type TestCan, type TestPiece, wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let shelves: Shelves;
let lead: Caller;
let bag: TestPiece;
let can: TestCan;
let facts: { lotId: string; deliveryId: string; supplierId: string; mark: string; foodId: string };
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
  shelves = await shelvesOf(app, storehouse);
  lead = (await aPackingLead(app, storehouse, buy.households.Corran)).caller;
  bag = await wheatOf(storehouse, buy, buy.households.Dell);
  can = await shelves.aCan(buy.households.Dell.caller, bag);
  await app.admin`update book.lot l set supplier_mark = 'K-77' from book.bag b
    where b.lot_id = l.lot_id and b.bag_id = ${bag.bagId}`;
  const [row] = await app.admin<(typeof facts)[]>`
    select b.lot_id as "lotId", b.delivery_id as "deliveryId", l.supplier_id as "supplierId", l.supplier_mark as mark,
      l.food_id as "foodId" from book.bag b join book.lot l using (storehouse_id, lot_id) where b.bag_id = ${bag.bagId}`;
  if (!row) throw new Error('the bag has a lot');
  facts = row;
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const begin = (of: object) => lead.post(at('/holds'), { of, reason: 'A notice of the supplier.' });
async function release(id: string): Promise<void> {
  bodyOf(await lead.post(at(`/holds/${id}/release-request`), { finding: 'The test came back clean.' }));
  bodyOf(await storehouse.coordinator.post(at(`/holds/${id}/release`)));
}
const onHoldOf = async (caller: Caller) =>
  bodyOf(await caller.get(at('/coverage'))).onHold as { grams: number }[];

/** Everything that takes grams of Dell's from the bag or the can, with the code that refuses it while they are held. */
const takings = () => {
  const { caller } = buy.households.Dell;
  const uses = (path: string, to: string) => () => caller.post(at(`${path}/uses`), { grams: 10, to });
  const ways = ['eaten', 'given', 'animals', 'composted', 'spilled', 'sampled'];
  return [
    ...ways.map((to) => ({ call: uses(`/containers/${can.id}`, to), code: 'on-hold' })),
    ...ways.map((to) => ({ call: uses(`/bags/${bag.bagId}`, to), code: 'bag-on-hold' })),
    { call: () => shelves.pour(caller, bag), code: 'bag-on-hold' },
    {
      call: () => caller.post(at(`/containers/${can.id}/pours`), { bagId: bag.bagId, grams: 10 }),
      code: 'bag-on-hold',
    },
    {
      call: () => caller.post(at(`/pours/${can.entryId}/undoing`), { reason: 'Wrong can.' }),
      code: 'on-hold',
    },
  ];
};

describe('a hold hides what it reaches everywhere', () => {
  const scopes = {
    lot: () => ({ scope: 'lot', lotId: facts.lotId }),
    delivery: () => ({ scope: 'delivery', deliveryId: facts.deliveryId }),
    'supplier’s mark': () => ({ scope: 'mark', supplierId: facts.supplierId, mark: facts.mark }),
    'food of some days': () => ({
      ...{ scope: 'food', foodId: facts.foodId, fromOn: '2026-01-01', toOn: '2026-12-31' },
    }),
  };
  test.for(Object.entries(scopes))('%s: bag and can, in every way out and in coverage', async ([, of]) => {
    const { Dell } = buy.households;
    const hold = bodyOf(await begin(of()), 201);
    expect(hold).toMatchObject({ scope: of().scope, grams: expect.any(Number), ended: null });
    for (const { call, code } of takings()) expect(await refusalOf(app, call)).toEqual(refused(409, code));
    const held = (await onHoldOf(Dell.caller)).reduce((sum, { grams }) => sum + grams, 0);
    const [own] = await app.admin<{ grams: string }[]>`select sum(inflow - outflow) as grams from book.account
      where owner_id = ${Dell.householdId} and vessel_id in (${bag.bagId}, ${can.id})`;
    expect(held).toBeGreaterThanOrEqual(Number(own?.grams));
    const again = await begin(of());
    expect([again.status, again.body.code]).toEqual([409, 'already-on-hold']);
    await release(hold.id);
    bodyOf(await shelves.pour(Dell.caller, bag), 201);
    expect(await onHoldOf(Dell.caller)).toEqual([]);
  });

  test('chosen cans alone: the bag that they came from may still be poured', async () => {
    const { Dell } = buy.households;
    const hold = bodyOf(await begin({ scope: 'containers', containerIds: [can.id] }), 201);
    expect(hold).toMatchObject({ vessels: 1, about: '' });
    const [eat] = takings();
    const answer = await eat?.call();
    expect(answer?.body).toMatchObject({ code: 'on-hold', containers: [{ code: can.code }] });
    bodyOf(await shelves.pour(Dell.caller, bag), 201);
    await release(hold.id);
  });

  test('the database refuses it too, whoever forgot to ask', async () => {
    const hold = bodyOf(await begin({ scope: 'containers', containerIds: [can.id] }), 201);
    const post = (to: string) =>
      app.admin.begin(async (tx) => {
        await tx`select set_config('app.storehouse', ${storehouse.storehouseId}, true)`;
        await tx`insert into book.account (storehouse_id, unit_id, unit_kind, kind, vessel_id, vessel_kind, owner_id, guard)
          select a.storehouse_id, a.unit_id, 'lot', 'mass', v.vessel_id, v.kind, a.owner_id, 'not_below'
          from book.account a join book.vessel v on v.storehouse_id = a.storehouse_id and v.kind = ${to}
          where a.vessel_id = ${can.id} on conflict do nothing`;
        return tx`select p.entry_no from book.account a
          join book.account d on d.unit_id = a.unit_id and d.owner_id = a.owner_id and d.vessel_kind = ${to},
          lateral book.post_entry('a-test', '2026-09-01', '2026-09-01T12:00:00Z', ${buy.households.Dell.personId}, null, null,
            null, null, '', array[a.unit_id], array[a.account_id], array[d.account_id], array[5::bigint]) p
          where a.vessel_id = ${can.id}`;
      });
    await expect(post('eaten')).rejects.toMatchObject({ constraint_name: 'nothing_held_moves' });
    await expect(post('given')).rejects.toMatchObject({ constraint_name: 'nothing_held_moves' });
    // Undoing the pour takes grams out of the held can into a bag that nobody holds: no way out either.
    const undo = app.admin.begin(async (tx) => {
      await tx`select set_config('app.storehouse', ${storehouse.storehouseId}, true)`;
      return tx`select p.entry_no from book.movement m, lateral book.post_entry('pour-undone', '2026-09-01',
        '2026-09-01T12:00:00Z', ${buy.households.Dell.personId}, null, null, null, m.entry_id, '', array[m.unit_id],
        array[m.destination_id], array[m.source_id], array[m.amount]) p where m.entry_id = ${can.entryId}`;
    });
    await expect(undo).rejects.toMatchObject({ constraint_name: 'nothing_held_moves' });
    expect(await post('discarded')).toHaveLength(1);
    await release(hold.id);
    expect(await post('eaten')).toHaveLength(1);
  });
});

describe('a hold of a bag', () => {
  test('reaches what was poured out of it, and ends with it', async () => {
    const { Dell } = buy.households;
    const hold = bodyOf(await lead.post(at(`/bags/${bag.bagId}/holds`), { reason: 'A smell of mice' }), 201);
    const [eat] = takings();
    expect(await refusalOf(app, eat?.call ?? (() => begin({})))).toEqual(refused(409, 'on-hold'));
    bodyOf(await Dell.caller.post(at(`/containers/${can.id}/uses`), { grams: 100, to: 'discarded' }), 201);
    await release(hold.id);
  });
});

test('of chosen cans ends when they are thrown away; of a food it stays, since more of that may come', async () => {
  const { caller } = buy.households.Dell;
  const foodId = (await foodIdsOf(storehouse))['rice-white-long'];
  const stock = { foodId, containerKindId: shelves.kinds['can-no-10'], count: 1, gramsEach: 2_000 };
  const endedOf = async (of: (canId: string) => object) => {
    const wish = { ...stock, packedOn: '2026-08-01', originNote: 'A gift.' };
    const [rice] = bodyOf(await caller.post(at('/stock'), wish), 201).containers;
    const { id } = bodyOf(await begin(of(rice.id)), 201);
    const all = { grams: 2_000, to: 'discarded' };
    bodyOf(await caller.post(at(`/containers/${rice.id}/uses`), all), 201);
    return { id, ended: bodyOf(await lead.get(at(`/holds/${id}`))).ended };
  };
  expect((await endedOf((id) => ({ scope: 'containers', containerIds: [id] }))).ended).toBe('nothing-left');
  const window = { foodId, fromOn: '2026-01-01', toOn: '2026-12-31' };
  const { id, ended } = await endedOf(() => ({ scope: 'food', ...window }));
  expect(ended).toBeNull();
  await release(id);
});

test('a household that comes into a hold after it began is told by the book, once, and a food has both its names', async () => {
  const { caller } = buy.households.Ashdown;
  const foodId = (await foodIdsOf(storehouse))['rice-white-long'];
  const of = { scope: 'food', foodId, fromOn: '2026-07-01', toOn: '2026-07-31' };
  const stock = { foodId, containerKindId: shelves.kinds['can-no-10'], count: 1, gramsEach: 2_000 };
  const bring = async (packedOn: string) => {
    const wish = { ...stock, packedOn, originNote: 'A gift.' };
    return bodyOf(await caller.post(at('/stock'), wish), 201).containers[0];
  };
  bodyOf(
    await buy.households.Dell.caller.post(at('/stock'), {
      ...stock,
      packedOn: '2026-07-10',
      originNote: 'x',
    }),
    201,
  );
  const hold = bodyOf(await begin(of), 201);
  expect([hold.about, hold.aboutEs]).toEqual(['White rice, long grain', 'Arroz blanco largo']);
  const told = async () =>
    bodyOf(await caller.get(at('/notices'))).notices.filter(({ path }: { path: string }) =>
      path.endsWith(hold.id),
    );
  const rice = await bring('2026-07-12');
  await bring('2026-08-12'); // of other days
  for (const _ of [1, 2]) {
    await enqueueEverywhere(app.outside, 'tell-late-owners');
    await doWork(app);
    const [notice, ...more] = await told();
    expect(more).toEqual([]);
    expect(notice).toMatchObject({ kind: 'held', isSafety: true });
    expect(notice.words).toContain(`It is in ${spellCode(rice.code)}.`);
  }
  const waits = async (language: string) => {
    const { items } = bodyOf(await lead.get(at('/next-steps'), { 'Accept-Language': language }));
    return items.find(({ path }: { path: string }) => path.endsWith(hold.id)).words;
  };
  expect(await waits('en')).toBe('White rice, long grain is on hold: find out what is the matter.');
  expect(await waits('es')).toBe('Arroz blanco largo está retenido: averigüe qué pasa.');
  bodyOf(await storehouse.coordinator.post(at(`/holds/${hold.id}/release-request`), { finding: 'Clean.' }));
  expect(await waits('es')).toBe('Arroz blanco largo está retenido: apruebe su liberación, o déjelo.');
  await release(hold.id);
});

test('a household that ate all of it is told too, and asked what became of it', async () => {
  const { Dell } = buy.households;
  const { grams } = bodyOf(await Dell.caller.get(at(`/containers/${can.id}`)));
  bodyOf(await Dell.caller.post(at(`/containers/${can.id}/uses`), { grams, to: 'eaten' }), 201);
  const hold = bodyOf(await begin({ scope: 'containers', containerIds: [can.id] }), 201);
  const { notices } = bodyOf(await Dell.caller.get(at('/notices')));
  expect(notices[0]).toMatchObject({
    ...{ kind: 'held', isSafety: true },
    words:
      'Food that you had is on hold: A notice of the supplier. By the book you have none of it left. Look whether that is so, eat none of it, and say what became of it.',
  });
  await release(hold.id);
});

describe('a hold of a place of the store’s', () => {
  const oats = { food: 'oats-rolled', gramsEach: 1_000 };
  const place = async (caller: Caller, of: string, name: string): Promise<string> => {
    const facts = { kind: 'room', isLit: false, isDamp: true, isRodentProof: false };
    return bodyOf(await caller.post(at('/places'), { of, name, ...facts }), 201).id;
  };
  const set = async (caller: Caller, containerIds: string[], placeId: string | null) =>
    bodyOf(await caller.post(at('/container-moves'), { containerIds, placeId }), 201);

  test('has what each household has in it, what comes into it, and not what left it before nor what is eaten', async () => {
    const { Ashdown, Birchall, Dell } = buy.households;
    const [ash, birch] = [await stockOf(storehouse, Ashdown), await stockOf(storehouse, Birchall)];
    const shed = await place(storehouse.coordinator, 'store', 'The shed');
    const home = await place(Birchall.caller, 'household', 'Our cellar');
    const [own, eaten, later] = await ash.bringIn({ ...oats, count: 3 });
    const [stands, left] = await birch.bringIn({ ...oats, count: 2 });
    const idOf = (can: { id: string } | undefined) => can?.id ?? '';
    await set(Ashdown.caller, [idOf(own), idOf(eaten)], shed);
    await set(Birchall.caller, [idOf(stands), idOf(left)], shed);
    bodyOf(
      await Ashdown.caller.post(at(`/containers/${idOf(eaten)}/uses`), { grams: 1_000, to: 'eaten' }),
      201,
    );
    await set(Birchall.caller, [idOf(left)], home); // to a place that nobody else sees

    const hold = bodyOf(await begin({ scope: 'place', placeId: shed }), 201);
    expect(hold).toMatchObject({
      scope: 'place',
      about: 'The shed',
      place: { id: shed },
      vessels: 2,
      grams: 2_000,
    });
    expect((await begin({ scope: 'place', placeId: shed })).body.code).toBe('already-on-hold');
    expect((await ash.take({ id: idOf(own) })).body.code).toBe('on-hold');
    expect((await birch.take({ id: idOf(stands) })).body.code).toBe('on-hold');
    bodyOf(await birch.take({ id: idOf(left) }, 100), 201);
    bodyOf(await ash.take({ id: idOf(later) }, 100), 201);
    await set(Ashdown.caller, [idOf(later)], shed);
    expect((await ash.take({ id: idOf(later) }, 100)).body.code).toBe('on-hold');

    const noticesOf = async (caller: Caller) =>
      bodyOf(await caller.get(at('/notices'))).notices.filter(({ path }: { path: string }) =>
        path.endsWith(hold.id),
      );
    expect((await noticesOf(Birchall.caller))[0].words).toContain(spellCode(stands?.code ?? ''));
    expect(await noticesOf(Dell.caller)).toEqual([]);

    const ways = async (caller: Caller, query: string) =>
      bodyOf(await caller.get(at(`/trace?${query}`))).way.things.flatMap(
        ({ isStart, vessel }: { isStart: boolean; vessel: { code: string } | null }) =>
          isStart && vessel ? [vessel.code] : [],
      );
    const all = [own?.code, later?.code, stands?.code].toSorted();
    expect((await ways(lead, `kind=place&id=${shed}&task=recall`)).toSorted()).toEqual(all);
    expect((await ways(lead, `code=the%20shed&task=recall`)).toSorted()).toEqual(all);
    expect((await ways(Birchall.caller, `kind=place&id=${shed}`)).toSorted()).toEqual([stands?.code]);

    // It stands although all is thrown away: the next thing put there is in the same doubt.
    for (const { caller } of [Ashdown, Birchall])
      bodyOf(
        await caller.post(at(`/holds/${hold.id}/destruction`), { of: 'household', reason: 'Mice.' }),
        201,
      );
    expect(bodyOf(await lead.get(at(`/holds/${hold.id}`))).ended).toBeNull();
    await release(hold.id);
  });

  test('has what is filled anew or put back in it: poured into an emptied can, brought back from the kitchen', async () => {
    const { Ashdown, Birchall } = buy.households;
    const cellar = await place(storehouse.coordinator, 'store', 'The wet cellar');
    const [piece, birch] = [await wheatOf(storehouse, buy, Ashdown), await stockOf(storehouse, Birchall)];
    const [full, emptied] = [
      await shelves.aCan(Ashdown.caller, piece),
      await shelves.aCan(Ashdown.caller, piece),
    ];
    const cooked = await birch.bringCan(oats);
    await set(Ashdown.caller, [full.id, emptied.id], cellar);
    await set(Birchall.caller, [cooked.id], cellar);
    const eaten = { grams: emptied.grams, to: 'eaten' };
    bodyOf(await Ashdown.caller.post(at(`/containers/${emptied.id}/uses`), eaten), 201);
    const { entryId } = bodyOf(await birch.take(cooked), 201);
    const hold = bodyOf(await begin({ scope: 'place', placeId: cellar }), 201);
    expect(hold.vessels).toBe(1);

    const pour = { bagId: piece.bagId, grams: 500 };
    const poured = await Ashdown.caller.post(at(`/containers/${emptied.id}/pours`), pour);
    expect(bodyOf(poured, 201)).toMatchObject({ grams: 500 });
    expect((await shelves.pour(Ashdown.caller, piece)).status).toBe(201); // the bag itself is free
    const sip = { grams: 10, to: 'eaten' };
    const eat = () => Ashdown.caller.post(at(`/containers/${emptied.id}/uses`), sip);
    expect(await refusalOf(app, eat)).toEqual(refused(409, 'on-hold'));
    bodyOf(await birch.undo(entryId), 201);
    expect((await birch.take(cooked)).body.code).toBe('on-hold');
    expect(bodyOf(await lead.get(at(`/holds/${hold.id}`)))).toMatchObject({ vessels: 3, grams: 2_500 });
    await enqueueEverywhere(app.outside, 'tell-late-owners');
    await doWork(app);
    const { notices } = bodyOf(await Birchall.caller.get(at('/notices')));
    expect(notices[0].path).toContain(hold.id); // it had none of it as the hold began

    // What was thrown away under the hold leaves it; what is poured into the same can there is in it again.
    const thrown = { grams: 500, to: 'discarded' };
    bodyOf(await Ashdown.caller.post(at(`/containers/${emptied.id}/uses`), thrown), 201);
    expect(bodyOf(await lead.get(at(`/holds/${hold.id}`))).grams).toBe(2_000);
    bodyOf(await Ashdown.caller.post(at(`/containers/${emptied.id}/pours`), pour), 201);
    expect(await refusalOf(app, eat)).toEqual(refused(409, 'on-hold'));
    await release(hold.id);
    bodyOf(await eat(), 201);
  });

  test('is of the store’s places alone: where a household keeps its own is not there for others', async () => {
    const home = await place(buy.households.Dell.caller, 'household', 'Our attic');
    expect(await refusalOf(app, () => begin({ scope: 'place', placeId: home }))).toEqual(
      refused(404, 'thing-not-found', 'of.placeId'),
    );
    const empty = await place(storehouse.coordinator, 'store', 'The empty room');
    expect(await refusalOf(app, () => begin({ scope: 'place', placeId: empty }))).toEqual(
      refused(409, 'nothing-to-hold'),
    );
  });
});

describe('is refused, and changes nothing', () => {
  const unknown = '0192f0c8-5a00-7000-8000-000000000001';
  test.for([
    { why: 'a lot that is not here', of: { scope: 'lot', lotId: unknown }, field: 'of.lotId' },
    {
      why: 'a can that is not here',
      of: { scope: 'containers', containerIds: [unknown] },
      field: 'of.containerIds',
    },
    {
      why: 'a mark that nobody delivered',
      of: { scope: 'mark', supplierId: unknown, mark: 'X' },
      field: 'of.mark',
    },
    { why: 'a place that is not here', of: { scope: 'place', placeId: unknown }, field: 'of.placeId' },
    {
      why: 'a session that is not here',
      of: { scope: 'session', sessionId: unknown },
      field: 'of.sessionId',
    },
  ])('$why', async ({ of, field }) => {
    expect(await refusalOf(app, () => begin(of))).toEqual(refused(404, 'thing-not-found', field));
  });
  test.for([
    {
      why: 'days that run backwards',
      of: { scope: 'food', foodId: unknown, fromOn: '2026-02-01', toOn: '2026-01-01' },
      field: 'of.toOn',
    },
    {
      why: 'numbers of no line',
      of: { scope: 'session', sessionId: unknown, fromSerial: 1, toSerial: 2 },
      field: 'of.line',
    },
    { why: 'no container', of: { scope: 'containers', containerIds: [] }, field: 'of.containerIds' },
  ])('$why', async ({ of, field }) => {
    expect(await refusalOf(app, () => begin(of))).toEqual(refused(400, 'invalid-input', field));
  });
  test('a food of days on which nothing came', async () => {
    const of = { scope: 'food', foodId: facts.foodId, fromOn: '2019-01-01', toOn: '2019-12-31' };
    expect(await refusalOf(app, () => begin(of))).toEqual(refused(409, 'nothing-to-hold'));
  });
});

test('the book holds up to its audit after all of this', async () => {
  const audit = bodyOf(await storehouse.coordinator.get(at('/audit')));
  expect(audit.findings.filter(({ holds }: { holds: boolean }) => !holds)).toEqual([]);
});
