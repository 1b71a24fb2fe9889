import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aFixedBuy, aGrainBuy, type TestGrainBuy } from '../support/fixed-buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { printed } from '../support/pdf.ts';
import { kindIdsOf } from '../support/shelf.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let fixed: TestGrainBuy;
let hale: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  fixed = await aFixedBuy(app, storehouse, { name: 'Autumn grain' });
  const { households } = fixed;
  await aGrainBuy(app, storehouse, { households, name: 'Winter grain' });
  hale = await aHousehold(app, storehouse, 'Hale');
  const opening = {
    of: 'household',
    householdId: households.Dell.householdId,
    balanceMinorUnits: 1_234,
    reason: 'old book',
  };
  bodyOf(await fixed.treasurer.post(`${storehouse.path}/opening-balances`, opening), 201);
  const notice = { audience: { to: 'everyone' }, about: 'The hall', says: 'Bring gloves.' };
  bodyOf(await storehouse.coordinator.post(`${storehouse.path}/notices`, notice), 201);
}, 60_000);
afterAll(() => app.close());

const pathOf = ({ householdId }: TestHousehold, query = 'language=en') =>
  `${storehouse.path}/households/${householdId}/month/paper?${query}`;

test('a household prints what is due, where it is expected, what it was told and how it stands, on one page', async () => {
  const { Dell } = fixed.households;
  const { text, pages } = await printed(Dell.caller, pathOf(Dell));
  expect(pages).toHaveLength(1);
  for (const wanted of [
    'The month ahead',
    'Dell, seat 4',
    'You owe',
    '12.34',
    'Autumn grain: your deposit is due',
    '23.00',
  ])
    expect(text).toContain(wanted);
  expect(text).toContain('Bring gloves.');
  for (const other of ['72.00', '63.00', '53.00', 'Corran', 'Ashdown', 'Birchall'])
    expect(text).not.toContain(other);
});

test('who has pledged nothing finds the closing of the gathering on it, with its hour', async () => {
  const { text } = await printed(hale.caller, pathOf(hale));
  expect(text).toContain('Winter grain: the gathering closes, and you have pledged nothing');
  expect(text).toContain('20 Sept 2026');
});

test('it comes in Spanish, in large print and on Letter', async () => {
  const { Dell } = fixed.households;
  const { text } = await printed(Dell.caller, pathOf(Dell, 'language=es&large=true&size=letter'));
  for (const wanted of ['El mes que viene', 'Debe', 'vence su depósito']) expect(text).toContain(wanted);
});

test('what waits on a shelf stands on it in words, in both languages', async () => {
  const { foods } = bodyOf(await hale.caller.get(`${storehouse.path}/foods`));
  const kinds = await kindIdsOf(storehouse);
  const wheat = {
    ...{
      foodId: foods[0].id,
      originNote: 'a market',
      harvestYear: 2024,
      containerKindId: kinds['pail-6-gallon-lined'],
    },
    ...{ count: 1, gramsEach: 1000, packedOn: '2025-09-01' },
  };
  bodyOf(await hale.caller.post(`${storehouse.path}/stock`, wheat), 201);
  const { text } = await printed(hale.caller, pathOf(hale));
  expect(text).toContain('containers of yours are to be looked at');
  expect((await printed(hale.caller, pathOf(hale, 'language=es'))).text).toContain(
    'toca mirar envases suyos',
  );
});

test('a coordinator prints it for a neighbour without any amount, and the neighbour sees that it was read', async () => {
  const { Dell } = fixed.households;
  const { text } = await printed(storehouse.coordinator, pathOf(Dell));
  expect(text).toContain('Autumn grain: your deposit is due');
  expect(text).toContain('This sheet says nothing of money.');
  expect(text).not.toMatch(/\d\.\d\d\b/);
  expect(text).not.toContain('what you owe is due');
  const reads = await app.admin<{ purpose: string }[]>`select purpose from book.private_read
    where household_id = ${Dell.householdId}`;
  expect(reads.map(({ purpose }) => purpose)).toContain('printing the month on one page');
});

test('nobody else prints it, and its code leads nobody else to it', async () => {
  const { Dell, Corran } = fixed.households;
  expect((await Corran.caller.get(pathOf(Dell))).body.code).toBe('not-your-household');
  expect((await fixed.treasurer.get(pathOf(Dell))).body.code).toBe('not-your-household');
  const [paper] = await app.admin<{ code: string }[]>`select paper_code as code from book.paper
    where kind = 'month' and household_id = ${Dell.householdId} limit 1`;
  const look = (caller: TestHousehold['caller']) => caller.get(`${storehouse.path}/papers/${paper?.code}`);
  expect((await look(Corran.caller)).body.code).toBe('not-your-household');
  expect(bodyOf(await look(Dell.caller))).toMatchObject({ kind: 'month' });
});
