import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { stockOf, type TestStock } from '../support/kitchen.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let dell: TestHousehold;
let lead: TestHousehold;
let stock: TestStock;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  dell = await aHousehold(app, storehouse, 'Dell');
  lead = await aHousehold(app, storehouse, 'Lorne', { duties: ['packing_lead'] });
  stock = await stockOf(storehouse, dell);
});
afterAll(() => app.close());

const at = (rest: string) => `${storehouse.path}${rest}`;
const endedOf = async (id: string) => bodyOf(await lead.caller.get(at(`/holds/${id}`))).ended;

/** Two cans of one lot, some of the first and all of the second in the kitchen, each can with a hold of its own. */
async function twoHolds(food: string): Promise<{ lotId: string; some: string; all: string }> {
  const [first, second] = await stock.bringIn({ food, count: 2, gramsEach: 1_000 });
  if (!first || !second) throw new Error('two were asked for');
  bodyOf(await stock.take(first, 400), 201);
  bodyOf(await stock.take(second), 201);
  const hold = async (containerId: string): Promise<string> => {
    const of = { scope: 'containers', containerIds: [containerId] };
    return bodyOf(await lead.caller.post(at('/holds'), { of, reason: 'A dent.' }), 201).id;
  };
  const [some, all] = [await hold(first.id), await hold(second.id)];
  const { lots } = await stock.kitchen();
  return { lotId: lots[0].lotId, some, all };
}

test('a lot in a kitchen that two holds stand on ends both where it was all that one of them had', async () => {
  const { some, all } = await twoHolds('rice-white-long');
  const reason = { of: 'household', reason: 'It smelt.' };
  const gone = bodyOf(await dell.caller.post(at(`/holds/${some}/destruction`), reason), 201);
  expect(gone.grams).toBe(600 + 1_400);
  expect([await endedOf(some), await endedOf(all)]).toEqual(['nothing-left', 'nothing-left']);
});

test('and thrown away in the kitchen it ends the one that had nothing else', async () => {
  const { lotId, some, all } = await twoHolds('oats-rolled');
  bodyOf(await stock.eat(lotId, 1_400, 'discarded'), 201);
  expect([await endedOf(some), await endedOf(all)]).toEqual([null, 'nothing-left']);
});

test('whoever would eat of it is refused by the name that the food has in the reader’s language', async () => {
  const { lotId } = await twoHolds('beans-pinto');
  const eat = (language: string) =>
    dell.caller.post(at('/kitchen/uses'), { lotId, grams: 10, to: 'eaten' }, { 'Accept-Language': language });
  const [english, spanish] = [await eat('en'), await eat('es')];
  expect([english.body.code, spanish.body.code]).toEqual(['on-hold', 'on-hold']);
  expect(english.body.detail).toMatch(/^Some of the Pinto beans in your kitchen came out of what is on hold/);
  expect(spanish.body.detail).toMatch(/[Ff]rijol/);
  expect(spanish.body.detail).not.toMatch(/Pinto beans|kitchen/);
});
