import { afterAll, beforeAll, expect, test } from 'vitest';
import type { TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aPackingSession, aPourBody, bringWheat, openHall, type TestHall } from '../support/packing.ts';
import { aSeamer, THICK } from '../support/seam.ts';
import type { TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let hall: TestHall;
beforeAll(async () => {
  ({ app, storehouse, hall } = await openHall());
});
afterAll(() => app.close());

type Answer = { status: number; body: { code?: string; containers?: { serial: number }[] } };

test('a check that fails while pours are on their way: each is held with the window or refused, none slips between', async () => {
  const day = await aPackingSession(storehouse, hall);
  const { caller } = hall.lead;
  bodyOf(await caller.post(`${day}/start`));
  await bringWheat(hall, day, 'Dell');
  const seamer = await aSeamer(storehouse, hall);
  const pour = (): Promise<Answer> =>
    caller.post(`${day}/pours`, aPourBody(hall, { name: 'Dell', grams: [10], targetGrams: 10 }));
  bodyOf((await pour()) as never, 201);
  const fail = seamer.check(day, { serial: 1, measures: THICK });
  const answers = await Promise.all([
    ...Array.from({ length: 6 }, pour),
    fail,
    ...Array.from({ length: 6 }, pour),
  ]);
  const pours = answers.filter((answer) => answer !== answers[6]) as Answer[];
  expect((await fail).status).toBe(201);
  const closed = pours.flatMap(({ body }) => body.containers?.map(({ serial }) => serial) ?? []);
  const { holds } = bodyOf(await caller.get(`${storehouse.path}/seals`));
  const held = holds.map(({ serial }: { serial: number }) => serial);
  expect(held).toEqual(Array.from({ length: 1 + closed.length }, (_, at) => at + 1)); // every can there is
  const others = pours.filter(({ status }) => status !== 201);
  expect(others.map(({ body }) => body.code)).toEqual(others.map(() => 'line-is-stopped'));
  expect(closed.length + others.length).toBe(12);
  expect((await pour()).body.code).toBe('line-is-stopped');
});
