import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aPantryWish, PLAIN_CARD } from '../support/giving.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const add = (wish: object) => storehouse.coordinator.post(at('/pantries'), wish);

test('a newer card stands beside the older ones, each with who wrote it; nobody changes one', async () => {
  const pantry = bodyOf(await add(aPantryWish()), 201);
  expect(pantry).toMatchObject({ version: 1, card: { version: 1, ...PLAIN_CARD } });
  const card = { ...PLAIN_CARD, acceptsHomePacked: null, confirmedOn: '2026-08-30' };
  const renew = (version: number) =>
    storehouse.coordinator.put(at(`/pantries/${pantry.id}/card`), { version, card });
  const renewed = bodyOf(await renew(1));
  expect(
    renewed.cards.map(({ version, acceptsHomePacked }: typeof renewed) => [version, acceptsHomePacked]),
  ).toEqual([
    [2, null],
    [1, true],
  ]);
  expect(renewed.card).toEqual(renewed.cards[0]);
  expect(await refusalOf(app, () => renew(1))).toEqual(refused(409, 'stale-version'));
  const may = await app.admin<{ may: boolean }[]>`
    select has_table_privilege('sheafbook_app', 'book.pantry_card', 'update, delete') as may`;
  expect(may).toEqual([{ may: false }]);
});

test.for([
  [{ acceptsMakerSealed: null, acceptsHomePacked: null }, 'card.acceptsMakerSealed'],
  [{ openings: [] }, 'card.openings'],
  [{ containerKindCodes: [] }, 'card.containerKindCodes'],
  [{ foodCodesWanted: [] }, 'card.foodCodesWanted'],
  [{ foodCodesWanted: ['wheat'], foodCodesNotWanted: ['wheat'] }, 'card.foodCodesWanted'],
] as const)('a card that accepts nothing is refused: %j', async ([change, field]) => {
  const answer = () => add(aPantryWish('Nobody’s', change));
  expect(await refusalOf(app, answer)).toEqual(refused(422, 'card-accepts-nothing', field));
});

test('the database refuses such a card too, whatever the code does', async () => {
  const { id } = bodyOf(await add(aPantryWish('Old hall')), 201);
  const copy = (change: string) => app.admin`
    insert into book.pantry_card select (jsonb_populate_record(c, jsonb_build_object('card_version', 9) || ${change}::text::jsonb)).*
    from book.pantry_card c where pantry_id = ${id}`;
  await expect(copy('{"accepts_maker_sealed": null, "accepts_home_packed": false}')).rejects.toMatchObject({
    constraint_name: 'pantry_card_takes_a_seal',
  });
  await expect(copy('{"container_kind_codes": []}')).rejects.toMatchObject({
    constraint_name: 'pantry_card_takes_a_kind',
  });
  await expect(
    copy('{"food_codes_wanted": ["wheat"], "food_codes_not_wanted": ["wheat", "salt"]}'),
  ).rejects.toMatchObject({ constraint_name: 'pantry_card_takes_a_food' });
  await copy('{}'); // what says enough goes in
});

test('a card is to be asked after once half a year has passed', async () => {
  const days = { early: '2026-01-01', late: '2026-08-01' };
  const said = async (name: string, confirmedOn: string) =>
    bodyOf(await add(aPantryWish(name, { confirmedOn })), 201).isUnconfirmed;
  expect([await said('Asked in January', days.early), await said('Asked lately', days.late)]).toEqual([
    true,
    false,
  ]);
  const ahead = () => add(aPantryWish('Of tomorrow', { confirmedOn: '2099-01-01' }));
  expect(await refusalOf(app, ahead)).toEqual(refused(400, 'invalid-input', 'card.confirmedOn'));
});

test('two pantries don’t bear one name, and a door closes after it opens', async () => {
  bodyOf(await add(aPantryWish('Harbour table')), 201);
  expect(await refusalOf(app, () => add(aPantryWish('Harbour table')))).toEqual(
    refused(409, 'already-there', 'name'),
  );
  const backwards = { openings: [{ weekday: 1, opensAt: '12:00', closesAt: '09:00' }] };
  expect(await refusalOf(app, () => add(aPantryWish('Backwards', backwards)))).toEqual(
    refused(400, 'invalid-input', 'card.openings.0.closesAt'),
  );
});
