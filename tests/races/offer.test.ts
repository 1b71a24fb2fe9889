import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { offersOf } from '../support/offer.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { type Shelves, shelvesOf, type TestPiece, wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let shelves: Shelves;
let offers: ReturnType<typeof offersOf>;
let bag: TestPiece;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
  shelves = await shelvesOf(app, storehouse);
  offers = offersOf(app, storehouse);
  bag = await wheatOf(storehouse, buy, buy.households.Birchall);
});
afterAll(() => app.close());

const giver = () => buy.households.Birchall.caller;
const codes = (answers: readonly { status: number; body: { code?: string } }[]) =>
  answers.map(({ status, body }) => (status < 300 ? 'done' : body.code)).toSorted();
const named = { price: { kind: 'named', minorUnitsEach: 300 } } as const;

test('of households that take the last container in the same moment exactly one has it, and pays', async () => {
  const { Ashdown, Corran, Dell } = buy.households;
  const can = await shelves.aCan(giver(), bag);
  const offer = bodyOf(await offers.offer(giver(), [can.id], named), 201);
  const takers = [Ashdown, Corran, Dell];
  const answers = await Promise.all(
    [...takers, ...takers].map(({ caller }) => offers.claim(caller, offer.id, [can.id], 300)),
  );
  expect(codes(answers)).toEqual(['done', ...Array.from({ length: 5 }, () => 'offer-taken')]);
  const held = await Promise.all(takers.map(({ householdId }) => shelves.gramsIn(can.id, householdId)));
  expect(held.toSorted()).toEqual([0, 0, 1000]);
  const [paid] = await app.admin<{ entries: number; claims: number }[]>`
    select (select count(*)::int from book.entry where what = 'offer-claimed') as entries,
      (select count(*)::int from book.offer_claim) as claims`;
  expect(paid).toEqual({ entries: 1, claims: 1 });
});

test('one claim sent many times under one key is one claim', async () => {
  const can = await shelves.aCan(giver(), bag);
  const offer = bodyOf(await offers.offer(giver(), [can.id], named), 201);
  const send = () =>
    buy.households.Dell.caller.post(
      `${storehouse.path}/offers/${offer.id}/claims`,
      { containerIds: [can.id], minorUnits: 300 },
      { 'Idempotency-Key': 'a patchy signal' },
    );
  const answers = await Promise.all(Array.from({ length: 6 }, send));
  for (const { status, body } of answers) expect([status, body]).toEqual([201, answers[0]?.body]);
});

test('a container is offered twice, eaten from and taken back at once, and ends as one of these', async () => {
  const can = await shelves.aCan(giver(), bag);
  const [first, second, eaten] = await Promise.all([
    offers.offer(giver(), [can.id]),
    offers.offer(giver(), [can.id]),
    giver().post(`${storehouse.path}/containers/${can.id}/uses`, { grams: 1000, to: 'eaten' }),
  ]);
  const done = [first, second, eaten].filter(({ status }) => status === 201);
  expect(done).toHaveLength(1);
  const offer = [first, second].find(({ status }) => status === 201);
  if (!offer) return;
  const both = await Promise.all([
    offers.takeBack(giver(), offer.body.id),
    offers.claim(buy.households.Dell.caller, offer.body.id, [can.id]),
  ]);
  expect(both.filter(({ status }) => status < 300)).toHaveLength(1);
});

test('the database itself holds that a container stands in one offer, and is taken once', async () => {
  const can = await shelves.aCan(giver(), bag);
  const offer = bodyOf(await offers.offer(giver(), [can.id]), 201);
  const again = app.admin`insert into book.offer_container (storehouse_id, offer_id, container_id, grams,
      price_minor_units, offered_at, closes_at)
    select o.storehouse_id, o.offer_id, ${can.id}, 1000, 0, o.offered_at, o.closes_at
    from book.offer o where o.offer_id <> ${offer.id} order by o.offered_at limit 1`;
  await expect(again).rejects.toMatchObject({ constraint_name: 'offer_container_once' });
  bodyOf(await offers.claim(buy.households.Dell.caller, offer.id, [can.id]), 201);
  const twice = app.admin`insert into book.offer_claim select * from book.offer_claim where offer_id = ${offer.id}`;
  await expect(twice).rejects.toMatchObject({ constraint_name: 'offer_claim_once' });
});
