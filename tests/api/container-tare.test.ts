import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf } from '../support/money-books.ts';
import {
  aPackingSession,
  aPourBody,
  bringWheat,
  cansOf,
  openHall,
  type TestHall,
} from '../support/packing.ts';
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

describe('a pour that was weighed with its container', () => {
  let day: string;
  const pour = (weighed: unknown, grams: number[] = [2600]) =>
    hall.lead.caller.post(`${day}/pours`, { ...aPourBody(hall, { name: 'Ashdown', grams }), weighed });
  const gross = (grossGrams: number[], tareGrams: number | number[] = 321) => ({
    ...{ how: typeof tareGrams === 'number' ? 'tare-of-kind' : 'own-tare', grossGrams, tareGrams },
  });
  const poured = async () => bodyOf(await hall.lead.caller.get(`${day}/log`)).pours;
  beforeAll(async () => {
    app.clock.now = new Date(now.getTime() + 200 * 60_000);
    day = await aPackingSession(storehouse, hall);
    bodyOf(await hall.lead.caller.post(`${day}/start`));
    await bringWheat(hall, day, 'Ashdown');
    bodyOf(await weigh(), 201);
  });
  beforeEach(() => later(210));

  test('goes into the book as its net, with what the scale showed and which ten were taken off', async () => {
    bodyOf(await pour(gross(Array.from({ length: 3 }, () => 2640)), [2319, 2319, 2319]), 201);
    bodyOf(await pour(gross([2930, 2925], [330, 325]), [2600, 2600]), 201);
    bodyOf(await pour({ how: 'net' }, [100]), 201);
    const log = bodyOf(await hall.lead.caller.get(`${day}/log`));
    expect(log.pours).toMatchObject([
      ...Array.from({ length: 3 }, () => ({
        ...{ grams: 2319, grossGrams: 2640, tareGrams: 321, weighedHow: 'tare-of-kind' },
      })),
      { grams: 2600, grossGrams: 2930, tareGrams: 330, weighedHow: 'own-tare' },
      { grams: 2600, grossGrams: 2925, tareGrams: 325, weighedHow: 'own-tare' },
      { grams: 100, grossGrams: null, tareGrams: null, weighedHow: 'net' },
    ]);
    expect(log.mass).toMatchObject({ inContainersGrams: 3 * 2319 + 2 * 2600 + 100, unaccountedGrams: 0 });
    const [named] = await app.admin<{ readings: number[] }[]>`
      select readings from book.container_tare join book.packing_pour using (storehouse_id, container_tare_id)`;
    expect(named?.readings).toEqual(TEN_ALIKE);
  });

  test('counts what a phone took off by the weighing that it knew, also after a later one', async () => {
    bodyOf(await weigh({ readings: TEN_UNLIKE }), 201);
    bodyOf(await pour(gross([2921])), 201);
    expect((await poured()).at(-1)).toMatchObject({ grams: 2600, tareGrams: 321 });
  });

  test.for([
    {
      weighed: gross([321]),
      grams: [2600],
      field: 'weighed.grossGrams.0',
      because: 'the can alone weighs that',
    },
    {
      weighed: gross([300], [321]),
      grams: [2600],
      field: 'weighed.tareGrams.0',
      because: 'the tare is above gross',
    },
    { weighed: gross([2921]), grams: [2601], field: 'grams.0', because: 'gross less tare is another net' },
    {
      weighed: gross([2921]),
      grams: [2600, 2600],
      field: 'weighed.grossGrams',
      because: 'a gross is missing',
    },
    {
      ...{ weighed: { how: 'own-tare', grossGrams: [2921, 2921], tareGrams: [321] }, grams: [2600, 2600] },
      ...{ field: 'weighed.tareGrams', because: 'a tare is missing' },
    },
    {
      weighed: gross([2922], 322),
      grams: [2600],
      field: 'weighed.tareGrams',
      because: 'no ten weighed that',
    },
    { weighed: { how: 'by-eye' }, grams: [2600], field: 'weighed.how', because: 'nobody weighs by eye' },
  ])('$weighed for $grams is refused, since $because', async ({ weighed, grams, field }) => {
    const refused = await refusalOf(app, () => pour(weighed, grams));
    expect(refused).toMatchObject({ status: 400, code: 'invalid-input', isUnchanged: true });
    expect(refused.fields).toContain(field);
  });

  test('a net over what the can holds is refused at its grams', async () => {
    const refused = await refusalOf(app, () => pour(gross([5321]), [5000]));
    expect(refused).toMatchObject({ code: 'over-capacity', isUnchanged: true, fields: ['grams.0'] });
  });

  test('the book itself takes no three figures that do not add up', async () => {
    const spoil = app.admin`update book.packing_pour set gross_grams = 2999 where weighed_how = 'own-tare'`;
    await expect(spoil).rejects.toThrow(/packing_pour_net_adds_up/);
  });
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
