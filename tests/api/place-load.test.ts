import { afterAll, beforeAll, expect, test } from 'vitest';
import { type Answer, openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { stockOf } from '../support/kitchen.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

// Shelves that carry 5,000 g of food, and cans of 2,000 g each.
const CAN_GRAMS = 2_000;
const MOST_GRAMS = 5_000;

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let corran: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  corran = await aHousehold(app, storehouse, 'Corran');
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
type Caller = Pick<TestHousehold, 'caller'>;
let made = 0;
const aPlace = async ({ caller }: Caller, of: string, mostGrams: number | null = MOST_GRAMS) => {
  const facts = { kind: 'room', isLit: false, isDamp: false, isRodentProof: true };
  return bodyOf(
    await caller.post(at('/places'), { of, name: `Shelves ${++made}`, ...facts, mostGrams }),
    201,
  );
};
const cansOf = async (household: TestHousehold, count: number): Promise<string[]> => {
  const stock = await stockOf(storehouse, household);
  const cans = await stock.bringIn({ count, gramsEach: CAN_GRAMS, treatment: 'none' });
  return cans.map(({ id }: { id: string }) => id);
};
const move = ({ caller }: Caller, containerIds: string[], placeId: string | null): Promise<Answer> =>
  caller.post(at('/container-moves'), { containerIds, placeId });
const loadOf = async ({ caller }: Caller, id: string) =>
  bodyOf(await caller.get(at(`/places/${id}`))).loadGrams;

test('shelves take what they carry, whoever sets it there in how many goes, and not a can more', async () => {
  const { id } = await aPlace(birchall, 'household');
  const [first = '', second = '', third = ''] = await cansOf(birchall, 3);
  const all = () => move(birchall, [first, second, third], id);
  expect(await refusalOf(app, all)).toEqual(refused(409, 'place-full', 'placeId'));
  bodyOf(await move(birchall, [first, second], id), 201);
  bodyOf(await move(birchall, [second], id), 201); // what stands there counts once
  expect(await loadOf(birchall, id)).toBe(2 * CAN_GRAMS);
  expect(await refusalOf(app, () => move(birchall, [third], id))).toEqual(
    refused(409, 'place-full', 'placeId'),
  );
  const use = { grams: CAN_GRAMS, to: 'eaten', note: '' };
  bodyOf(await birchall.caller.post(at(`/containers/${first}/uses`), use), 201);
  bodyOf(await move(birchall, [third], id), 201);
  expect(await loadOf(birchall, id)).toBe(2 * CAN_GRAMS);
});

test('in a room of the store’s all households’ food counts, and nobody but its keepers reads how much it is', async () => {
  const keeper = { caller: storehouse.coordinator };
  const { id, mostGrams } = await aPlace(keeper, 'store');
  expect(mostGrams).toBe(MOST_GRAMS);
  bodyOf(await move(birchall, await cansOf(birchall, 2), id), 201);
  const [own = ''] = await cansOf(corran, 1);
  const refuse = () => move(corran, [own], id);
  expect(await refusalOf(app, refuse)).toEqual(refused(409, 'place-full', 'placeId'));
  expect(JSON.stringify((await refuse()).body)).not.toMatch(/4.?000|Birchall/);
  expect([await loadOf(corran, id), await loadOf(keeper, id)]).toEqual([null, 2 * CAN_GRAMS]);
  await expect(
    app.admin`insert into book.container_move (storehouse_id, container_id, moved_on, place_id, moved_by, moved_at)
      values (${storehouse.storehouseId}, ${own}, '2026-09-01', ${id}, ${corran.personId}, ${app.clock.now})`,
  ).rejects.toMatchObject({ constraint_name: 'place_carries_no_more' });
});

test('of two who set the last can there at once one does', async () => {
  const { id } = await aPlace({ caller: storehouse.coordinator }, 'store', 3_000);
  const [[one = ''], [other = '']] = [await cansOf(birchall, 1), await cansOf(corran, 1)];
  const answers = await Promise.all([move(birchall, [one], id), move(corran, [other], id)]);
  expect(answers.map(({ status }) => status).toSorted()).toEqual([201, 409]);
  expect(answers.find(({ status }) => status === 409)?.body.code).toBe('place-full');
});

test('what they carry is said in grams above nothing, is taken out again, and stays when an edit leaves it out', async () => {
  const place = await aPlace(birchall, 'household');
  const put = (more: object) => {
    const { name, kind, isLit, isDamp, isRodentProof } = place;
    const facts = { name, kind, isLit, isDamp, isRodentProof, ...more };
    return birchall.caller.put(at(`/places/${place.id}`), facts);
  };
  for (const mostGrams of [0, -1, 1.5, 'much'])
    expect(await refusalOf(app, () => put({ version: 1, mostGrams }))).toEqual(
      refused(400, 'invalid-input', 'mostGrams'),
    );
  expect(bodyOf(await put({ version: 1 }))).toMatchObject({ mostGrams: MOST_GRAMS, version: 2 });
  expect(bodyOf(await put({ version: 2, mostGrams: null }))).toMatchObject({ mostGrams: null });
  bodyOf(await move(birchall, await cansOf(birchall, 4), place.id), 201);
  // Said lower than what stands there, it takes nothing more and gives up nothing.
  expect(bodyOf(await put({ version: 3, mostGrams: 6_000 }))).toMatchObject({ mostGrams: 6_000 });
  expect(await loadOf(birchall, place.id)).toBe(4 * CAN_GRAMS);
  const [more = ''] = await cansOf(birchall, 1);
  expect(await refusalOf(app, () => move(birchall, [more], place.id))).toMatchObject({ code: 'place-full' });
  bodyOf(await move(birchall, [more], null), 201);
});
