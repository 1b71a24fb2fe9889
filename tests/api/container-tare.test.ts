import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf } from '../support/money-books.ts';
import { aPackingSession, cansOf, openHall, type TestHall } from '../support/packing.ts';
import { printed } from '../support/pdf.ts';
import type { TestStorehouse } from '../support/storehouse.ts';
import { TEN_ALIKE, TEN_UNLIKE } from '../support/tare.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
let can: string;
let now: Date;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
  can = hall.shelves.kinds['can-no-10'] ?? '';
  now = app.clock.now;
});
afterAll(() => app.close());
beforeEach(() => {
  app.clock.now = now;
});

const weigh = (wish: Record<string, unknown> = {}, caller = hall.lead.caller) =>
  caller.post(`${storehouse.path}/container-tares`, { containerKindId: can, readings: TEN_ALIKE, ...wish });
const later = (minutes: number) => {
  app.clock.now = new Date(now.getTime() + minutes * 60_000);
};
const tareOfKind = async () =>
  bodyOf(
    await storehouse.coordinator.get(`${storehouse.path}/container-kinds?limit=all`),
  ).containerKinds.find(({ id }: { id: string }) => id === can).tareGrams;

test('ten empties give a kind its tare, each batch anew; ten that are too unlike take it away (job map 6)', async () => {
  const read = () => hall.buy.households.Dell.caller.get(`${storehouse.path}/container-tares`);
  expect(bodyOf(await read()).tares).toEqual([]);
  bodyOf(await weigh(), 201);
  expect(bodyOf(await read()).tares).toMatchObject([
    {
      ...{ kind: { id: can, code: 'can-no-10' }, readings: TEN_ALIKE, meanGrams: 321, spreadGrams: 6 },
      ...{ leastGrams: 318, mostGrams: 324, isAlike: true, weighedAt: now.toISOString() },
    },
  ]);
  expect(await tareOfKind()).toBe(321);
  later(10);
  const { tares } = bodyOf(await weigh({ readings: TEN_UNLIKE }), 201);
  expect(tares).toMatchObject([{ readings: TEN_UNLIKE, spreadGrams: 7, isAlike: false }]);
  expect(await tareOfKind()).toBeNull();
  later(20);
  bodyOf(await weigh({ readings: TEN_ALIKE.map((grams) => grams + 9) }), 201);
  expect(await tareOfKind()).toBe(330);
});

test('what a phone weighed without a signal keeps its hour, and a later weighing stays the last', async () => {
  later(60);
  bodyOf(await weigh({ readings: TEN_ALIKE.map((grams) => grams + 20) }), 201);
  later(90);
  const { tares } = bodyOf(
    await weigh({ weighedAt: new Date(now.getTime() + 30 * 60_000).toISOString() }),
    201,
  );
  expect(tares).toMatchObject([{ meanGrams: 341 }]);
  expect(await tareOfKind()).toBe(341);
});

test('a weighing that is sent twice under one key is one weighing', async () => {
  later(120);
  const send = () =>
    hall.lead.caller.post(
      `${storehouse.path}/container-tares`,
      { containerKindId: can, readings: TEN_ALIKE },
      { 'Idempotency-Key': 'ten-empties' },
    );
  bodyOf(await send(), 201);
  const count = async () =>
    Number((await app.admin<{ count: string }[]>`select count(*) from book.container_tare`)[0]?.count);
  const before = await count();
  bodyOf(await send(), 201);
  expect(await count()).toBe(before);
});

test('the run sheet says what an empty one weighs and what a full one shows, or that each is weighed first', async () => {
  later(180);
  const day = await aPackingSession(storehouse, hall);
  const { caller } = hall.buy.households.Dell;
  bodyOf(await caller.put(`${day}/wishes`, { wishes: [cansOf(hall, { containers: 4, gramsEach: 2600 })] }));
  const said = async (language: string) =>
    (await printed(hall.lead.caller, `${day}/papers/run-sheet?language=${language}`)).text.replace(
      /\s+/g,
      ' ',
    );
  bodyOf(await weigh(), 201);
  expect(await said('en')).toContain('empty 321 g, full 2,921 g');
  expect(await said('es')).toMatch(/vacío 321 g, lleno 2921 g/);
  later(190);
  bodyOf(await weigh({ readings: TEN_UNLIKE }), 201);
  expect(await said('en')).toContain('weigh each one empty first');
});

describe('bad input', () => {
  test.for([
    { wish: { readings: TEN_ALIKE.slice(0, 9) }, field: 'readings', because: 'nine are too few' },
    { wish: { readings: [...TEN_ALIKE, 320] }, field: 'readings', because: 'eleven are too many' },
    {
      wish: { readings: [...TEN_ALIKE.slice(0, 9), 0] },
      field: 'readings.9',
      because: 'a can weighs something',
    },
    {
      wish: { readings: [320.5, ...TEN_ALIKE.slice(1)] },
      field: 'readings.0',
      because: 'half grams are no grams',
    },
    {
      wish: { readings: [100_001, ...TEN_ALIKE.slice(1)] },
      field: 'readings.0',
      because: 'nobody lifts that',
    },
    { wish: { weighedAt: '2099-01-01T00:00:00Z' }, field: 'weighedAt', because: 'that is still to come' },
  ])('$wish is refused, since $because', async ({ wish, field }) => {
    const refused = await refusalOf(app, () => weigh(wish));
    expect(refused).toMatchObject({ status: 400, code: 'invalid-input', isUnchanged: true });
    expect(refused.fields).toContain(field);
  });

  test('a kind that is not there is not found, and a member only reads', async () => {
    const nowhere = { containerKindId: storehouse.storehouseId };
    expect(await refusalOf(app, () => weigh(nowhere))).toMatchObject({ status: 404, isUnchanged: true });
    expect(await refusalOf(app, () => weigh({}, hall.buy.households.Dell.caller))).toMatchObject({
      ...{ status: 403, code: 'duty-missing', isUnchanged: true },
    });
  });

  test('the book itself takes neither nine readings nor an empty can of nothing', async () => {
    const { storehouseId } = storehouse;
    const insert = (readings: number[]) => app.admin`
      insert into book.container_tare (storehouse_id, container_kind_id, readings, weighed_by, weighed_at, recorded_at)
      values (${storehouseId}, ${can}, ${readings}, ${hall.lead.personId}, now(), now())`;
    await expect(insert(TEN_ALIKE.slice(0, 9))).rejects.toThrow(/container_tare_of_ten/);
    await expect(insert([0, ...TEN_ALIKE.slice(1)])).rejects.toThrow(/container_tare_weighs_something/);
  });
});
