import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { refusalOf, refused } from '../support/fingerprint.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { type Shelves, shelvesOf, type TestPiece, wheatOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let shelves: Shelves;
let wheat: TestPiece;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse);
  shelves = await shelvesOf(app, storehouse);
  wheat = await wheatOf(storehouse, buy, buy.households.Ashdown);
});
afterAll(() => app.close());

const at = (path: string) => `${storehouse.path}${path}`;
const ashdown = () => buy.households.Ashdown.caller;

test('a can is packed with an absorber once its wheat is measured to be dry, and says so', async () => {
  const filled = await shelves.pour(ashdown(), wheat, { treatment: 'oxygen-absorber', moistureTenths: 95 });
  const { containers, warnings } = bodyOf(filled, 201);
  expect(warnings).toEqual([]);
  const can = bodyOf(await ashdown().get(at(`/containers/${containers[0].id}`)));
  expect(can).toMatchObject({ treatment: 'oxygen-absorber', moistureTenths: 95, packedOn: '2026-09-01' });
});

test('what is not measured or too moist goes into no pack without oxygen, and what does instead is told', async () => {
  const unmeasured = () => shelves.pour(ashdown(), wheat, { treatment: 'oxygen-absorber' });
  expect(await refusalOf(app, unmeasured)).toEqual(refused(422, 'treatment-does-not-fit', 'moistureTenths'));
  expect((await unmeasured()).body).toMatchObject({
    misfits: ['moisture-unknown'],
    nearest: 'freeze-thaw-freeze',
  });
  const moist = () => shelves.pour(ashdown(), wheat, { treatment: 'oxygen-absorber', moistureTenths: 101 });
  expect(await refusalOf(app, moist)).toEqual(refused(422, 'treatment-does-not-fit', 'treatment'));
  expect((await moist()).body.misfits).toEqual(['too-moist-without-oxygen']);
});

test('dry ice never goes into a metal can', async () => {
  const call = () => shelves.pour(ashdown(), wheat, { treatment: 'dry-ice', moistureTenths: 95 });
  expect(await refusalOf(app, call)).toEqual(refused(422, 'treatment-does-not-fit', 'treatment'));
  expect((await call()).body.detail).toBe('Dry ice is never put in a metal can: its gas can burst it.');
});

test('a weak choice is allowed with a word, and no treatment never needs one', async () => {
  const earth = bodyOf(await shelves.pour(ashdown(), wheat, { treatment: 'food-grade-earth' }), 201);
  expect(earth.warnings).toEqual([
    'An extension page does not recommend it at home; the label of the product governs.',
  ]);
  expect(bodyOf(await shelves.pour(ashdown(), wheat, { treatment: 'none' }), 201).warnings).toEqual([]);
});

test('what was done long ago is recorded as it was, with a word on what does not fit, also in Spanish', async () => {
  const stock = {
    foodId: bodyOf(await ashdown().get(at('/foods?search=brown rice'))).foods[0].id,
    originNote: 'from before',
    containerKindId: shelves.kinds['can-no-10'],
    count: 1,
    gramsEach: 2000,
    packedOn: '2021-03-01',
    treatment: 'oxygen-absorber',
  };
  const { containers, warnings } = bodyOf(await ashdown().post(at('/stock'), stock), 201);
  expect(warnings).toEqual([
    'Fatty or milled food is not packed without oxygen: it can be unsafe and turns rancid all the same.',
  ]);
  const path = at(`/containers/${containers[0].id}/treatment`);
  const spanish = { 'Accept-Language': 'es' };
  const said = bodyOf(await ashdown().put(path, { treatment: 'dry-ice', moistureTenths: 120 }, spanish));
  expect(said).toMatchObject({ treatment: 'dry-ice', moistureTenths: 120 });
  expect(said.warnings[0]).toBe('El hielo seco nunca se pone en una lata de metal: su gas puede reventarla.');
});

test('a neighbour’s container is not there to be spoken of', async () => {
  const can = await shelves.aCan(ashdown(), wheat);
  const path = at(`/containers/${can.id}/treatment`);
  const call = () => buy.households.Birchall.caller.put(path, { treatment: 'none', moistureTenths: null });
  expect(await refusalOf(app, call)).toEqual(refused(404, 'thing-not-found'));
});
