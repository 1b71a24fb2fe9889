import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf, foodIdsOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { kindIdsOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let corran: TestHousehold;
let kinds: Record<string, string>;
let foods: Record<string, string>;
beforeAll(async () => {
  app = await openTestApp(); // 1 September 2026
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  corran = await aHousehold(app, storehouse, 'Corran');
  kinds = await kindIdsOf(storehouse);
  foods = await foodIdsOf(storehouse);
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const cans = async ({ caller }: TestHousehold, count = 1): Promise<string[]> => {
  const { containers } = bodyOf(
    await caller.post(at('/stock'), {
      ...{ foodId: foods['wheat-hard-red-winter'], originNote: 'a neighbour’s', count, gramsEach: 2_500 },
      ...{ containerKindId: kinds['can-no-10'], packedOn: '2024-03-01', treatment: 'oxygen-absorber' },
    }),
    201,
  );
  return containers.map(({ id }: { id: string }) => id);
};
let made = 0;
const aPlace = async (caller: TestHousehold['caller'], of = 'household'): Promise<string> => {
  const facts = { kind: 'cellar', isLit: false, isDamp: null, isRodentProof: true };
  return bodyOf(await caller.post(at('/places'), { of, name: `Place ${++made}`, ...facts }), 201).id;
};
const move = (caller: TestHousehold['caller'], wish: Record<string, unknown>) =>
  caller.post(at('/container-moves'), wish);
const movesOf = async (caller: TestHousehold['caller'], container = '') =>
  bodyOf(await caller.get(at(`/containers/${container}/moves`))).moves;

test('many containers stand at a place since a day, and the way of each can be read', async () => {
  const { caller } = birchall;
  const ids = await cans(birchall, 3);
  const [cellar, store] = [await aPlace(caller), await aPlace(storehouse.coordinator, 'store')];
  const moved = bodyOf(
    await move(caller, { containerIds: ids, placeId: cellar, movedOn: '2024-03-01' }),
    201,
  );
  expect(moved).toMatchObject({ movedOn: '2024-03-01', place: { id: cellar, isStores: false } });
  expect(moved.containers.map(({ id }: { id: string }) => id)).toEqual(ids.toSorted());
  bodyOf(await move(caller, { containerIds: [ids[0]], placeId: store }), 201);
  expect(await movesOf(caller, ids[0])).toEqual([
    {
      ...{ id: expect.any(String), movedOn: '2024-03-01', toldTenths: null, movedBy: expect.any(String) },
      ...{ place: { id: cellar, name: expect.any(String), kind: 'cellar', isStores: false } },
      movedAt: app.clock.now.toISOString(),
    },
    expect.objectContaining({
      movedOn: '2026-09-01',
      place: expect.objectContaining({ id: store, isStores: true }),
    }),
  ]);
  expect(await movesOf(caller, ids[1])).toHaveLength(1);
});

test('a place that the book does not know may be told as warm as somebody says', async () => {
  const [id = ''] = await cans(birchall);
  const told = { containerIds: [id], placeId: null, movedOn: '2024-03-01', toldTenths: 180 };
  bodyOf(await move(birchall.caller, told), 201);
  expect(await movesOf(birchall.caller, id)).toMatchObject([{ place: null, toldTenths: 180 }]);
});

describe('is refused, and moves nothing', () => {
  test.for([
    { because: 'before it was packed', wish: { movedOn: '2024-02-29' }, field: 'movedOn' },
    { because: 'tomorrow', wish: { movedOn: '2026-09-02' }, field: 'movedOn' },
    { because: 'to nothing at all', wish: { containerIds: [] }, field: 'containerIds' },
    { because: 'colder than can be', wish: { placeId: null, toldTenths: -3000 }, field: 'toldTenths' },
    {
      because: 'told as warm at a place with a record of its own',
      wish: { toldTenths: 180 },
      field: 'toldTenths',
    },
  ])('$because', async ({ wish, field }) => {
    const { caller } = birchall;
    const body = { containerIds: await cans(birchall, 2), placeId: await aPlace(caller), ...wish };
    expect(await refusalOf(app, () => move(caller, body))).toEqual(refused(400, 'invalid-input', field));
  });

  test('the same container twice', async () => {
    const [id] = await cans(birchall);
    const body = { containerIds: [id, id], placeId: null };
    expect((await move(birchall.caller, body)).body.fields).toMatchObject([{ field: 'containerIds' }]);
  });

  test('a neighbour’s container, or one’s own to a neighbour’s place', async () => {
    const [own, place] = [await cans(birchall), await aPlace(birchall.caller)];
    const theirs = await cans(corran);
    const there = (containerIds: string[], placeId: string | null) => () =>
      move(corran.caller, { containerIds, placeId });
    expect(await refusalOf(app, there([...theirs, ...own], null))).toEqual(refused(404, 'thing-not-found'));
    expect(await refusalOf(app, there(theirs, place))).toEqual(refused(404, 'thing-not-found'));
    const read = await corran.caller.get(at(`/containers/${own[0]}/moves`));
    expect(read.body.code).toBe('thing-not-found');
  });
});

test('the database itself holds whose place it is and when it was packed', async () => {
  const [[id], place] = [await cans(birchall), await aPlace(corran.caller)];
  const insert = (placeId: string | null, movedOn: string) => app.admin`
    insert into book.container_move (storehouse_id, container_id, moved_on, place_id, moved_by, moved_at)
    values (${storehouse.storehouseId}, ${id ?? ''}, ${movedOn}, ${placeId}, ${birchall.personId}, ${app.clock.now})`;
  await expect(insert(place, '2026-08-01')).rejects.toMatchObject({
    constraint_name: 'container_move_to_own_place',
  });
  await expect(insert(null, '2024-02-29')).rejects.toMatchObject({
    constraint_name: 'container_move_after_packing',
  });
  await expect(insert(null, '2026-09-03')).rejects.toMatchObject({
    constraint_name: 'container_move_happened',
  });
});

test('common stock is moved by those who keep it, among the store’s places, and its way is everybody’s to see', async () => {
  const [id = ''] = await cans(birchall);
  await app.admin`update book.container set household_id = null where container_id = ${id}`;
  const [home, store] = [await aPlace(storehouse.coordinator), await aPlace(storehouse.coordinator, 'store')];
  const to = (caller: TestHousehold['caller'], placeId: string) => () =>
    move(caller, { containerIds: [id], placeId });
  expect(await refusalOf(app, to(corran.caller, store))).toEqual(refused(403, 'duty-missing'));
  expect((await to(storehouse.coordinator, home)()).body.fields[0].message).toBe(
    'Common stock stands in a place of the store’s.',
  );
  bodyOf(await to(storehouse.coordinator, store)(), 201);
  expect(await movesOf(corran.caller, id)).toMatchObject([{ place: { id: store } }]);
});
