import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy, aPledge, bodyOf, foodIdsOf } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let family: TestHousehold;
let foods: Record<string, string>;

const WHEAT = 'wheat-hard-red-winter';
const POUND = 453.59237;

beforeAll(async () => {
  app = await openTestApp('2026-09-01T15:00:00Z');
  storehouse = await aStorehouse(app);
  family = await aHousehold(app, storehouse, 'Birchall');
  foods = await foodIdsOf(storehouse);
});
afterAll(() => app.close());

const anEater = (name: string, birthOn: string, more: Record<string, unknown> = {}) => ({
  name,
  birthOn,
  sex: 'female',
  activity: 'moderate',
  presentPercent: 100,
  ...more,
});

async function bringIn(
  household: TestHousehold,
  foodCode: string,
  wish: { count: number; gramsEach: number },
) {
  const kinds = bodyOf(await household.caller.get(`${storehouse.path}/container-kinds`));
  const pail = kinds.containerKinds.find(
    (kind: { kindCode: string }) => kind.kindCode === 'pail-6-gallon-lined',
  );
  return household.caller.post(`${storehouse.path}/stock`, {
    foodId: foods[foodCode],
    originNote: 'Bought before we joined',
    containerKindId: pail.id,
    packedOn: '2026-08-01',
    ...wish,
  });
}

const addEater = (household: TestHousehold, eater: Record<string, unknown>) =>
  household.caller.post(`${storehouse.path}/households/${household.householdId}/eaters`, eater);

const readCoverage = async (household: TestHousehold) =>
  bodyOf(await household.caller.get(`${storehouse.path}/coverage`));

test('a household without eaters is told so, and not that it lasts for ever', async () => {
  expect(await readCoverage(family)).toMatchObject({
    state: 'no-eaters',
    wholeDays: null,
    adultEquivalents: 0,
  });
});

// Facts WE-1.1 to WE-1.4, a reprinted guideline: two adults and children of 8, 5 and 2 are 4.10 adult-equivalents; 620 lb
// of 1,640 lb of grain a year are 138.0 days, of which whole ones count as 137 (137.99). In pails of 16,000 g: 281,227 g
// (620 lb) less 1 g are 17 × 16,000 + 9,226.
test('a family of five with 620 lb of grain lasts 137 whole days by mass', async () => {
  for (const eater of [
    anEater('Mother', '1986-03-01'),
    anEater('Father', '1985-03-01', { sex: 'male' }),
    anEater('Eight', '2018-03-01'),
    anEater('Five', '2021-03-01'),
    anEater('Two', '2024-03-01'),
  ])
    bodyOf(await addEater(family, eater), 201);
  bodyOf(await bringIn(family, WHEAT, { count: 17, gramsEach: 16_000 }), 201);
  bodyOf(await bringIn(family, WHEAT, { count: 1, gramsEach: Math.round(620 * POUND) - 17 * 16_000 }), 201);
  const coverage = await readCoverage(family);
  expect(coverage.adultEquivalents).toBe(4.1);
  const grains = coverage.groups.find((group: { group: string }) => group.group === 'grains');
  expect(grains).toMatchObject({ stockGrams: 281_227, wholeDays: 137 });
  expect(grains.needGramsPerDay).toBeCloseTo((1640 * POUND) / 365, 1);
  expect(coverage).toMatchObject({ wholeDays: 0, runsOutFirst: 'legumes' });
});

test('a wheat-allergic eater is not fed by wheat', async () => {
  const household = await aHousehold(app, storehouse, 'Corran');
  bodyOf(await addEater(household, anEater('Ana', '1980-01-01')), 201);
  bodyOf(await addEater(household, anEater('Cy', '1980-01-01', { excludedAllergens: ['wheat'] })), 201);
  bodyOf(await bringIn(household, WHEAT, { count: 2, gramsEach: 15_000 }), 201);
  bodyOf(await bringIn(household, 'rice-white-long', { count: 1, gramsEach: 10_000 }), 201);
  const { groups } = await readCoverage(household);
  const grains = groups.find((group: { group: string }) => group.group === 'grains');
  // 400 lb a year are 497.09 g a day each: Cy has 10,000 g of rice alone, 20.1 days; Ana's wheat goes on to day 60.
  expect(grains.wholeDays).toBe(20);
  expect(grains.limitingEaters.map((eater: { name: string }) => eater.name)).toEqual(['Cy']);
  const ends = grains.endsByEater.map(({ name, wholeDays }: { name: string; wholeDays: number }) => [
    name,
    wholeDays,
  ]);
  expect(Object.fromEntries(ends)).toEqual({ Ana: 60, Cy: 20 });
});

describe('closing the gap in an open buy', () => {
  test('stays within the budget, leaves out what not everybody may eat, and adds up', async () => {
    const buy = await aBuy(app, storehouse, { name: 'Gap buy', foods: [WHEAT, 'beans-pinto'] });
    const pledger = await aHousehold(app, storehouse, 'Dell');
    await aPledge(pledger.caller, buy, { foodCode: WHEAT, wanted: 100 });
    await aPledge(pledger.caller, buy, { foodCode: 'beans-pinto', wanted: 50 });
    const path = `${storehouse.path}/coverage/gap?buy=${buy.buyId}&budgetMinorUnits=10000`;
    const plan = bodyOf(await family.caller.get(path));
    expect(plan.minorUnits).toBeLessThanOrEqual(10_000);
    const sum = plan.pledges.reduce(
      (total: number, pledge: { minorUnits: number }) => total + pledge.minorUnits,
      0,
    );
    expect(plan.minorUnits).toBe(sum);
    expect(plan.wholeDaysNow).toBe(0);
    expect(plan.wholeDays).toBeGreaterThanOrEqual(137);
    expect(plan.pledges.map((pledge: { foodCode: string }) => pledge.foodCode)).toContain('beans-pinto');
    expect(plan.leftOut).toEqual([]);

    const nobody = { excludedFoodCodes: [WHEAT] };
    bodyOf(await addEater(pledger, anEater('Without wheat', '1990-01-01', nobody)), 201);
    const without = bodyOf(await pledger.caller.get(path));
    expect(without.leftOut).toEqual([{ foodCode: WHEAT, because: 'not-for-every-eater' }]);
    expect((await app.as().get(path)).status).toBe(401);
  });

  test('a buy that is over can close no gap', async () => {
    const buy = await aBuy(app, storehouse, { name: 'Not yet open', foods: [WHEAT], isOpen: false });
    const answer = await family.caller.get(
      `${storehouse.path}/coverage/gap?buy=${buy.buyId}&budgetMinorUnits=1`,
    );
    expect([answer.status, answer.body.code]).toEqual([409, 'buy-stage-wrong']);
  });
});

test('sums over all households are held back below five, and told to each when shown', async () => {
  const totals = () => storehouse.coordinator.get(`${storehouse.path}/coverage/totals`);
  expect(bodyOf(await totals()).wholeDays).toEqual({ isShown: false });
  for (const name of ['Eskdale', 'Fenner', 'Garrow']) {
    const household = await aHousehold(app, storehouse, name);
    bodyOf(await addEater(household, anEater('One', '1990-01-01')), 201);
  }
  const shown = bodyOf(await totals());
  expect(shown.wholeDays).toMatchObject({ isShown: true, households: 6 });
  expect(shown.adultEquivalents).toEqual({ isShown: true, total: 10.1 });
  const log = bodyOf(
    await family.caller.get(`${storehouse.path}/households/${family.householdId}/private-reads`),
  );
  expect(JSON.stringify(log)).toContain('coverage totals');
});
