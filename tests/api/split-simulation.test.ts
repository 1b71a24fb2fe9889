import { SPLIT_RULES } from '@sheafbook/sharing';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { fingerprintOf } from '../support/fingerprint.ts';
import { aLandedBuy, type TestLandedBuy } from '../support/landed-buy.ts';
import { GRAIN_RULES, splitGrain } from '../support/shared-buy.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestLandedBuy;
let splitIds: Record<string, string>;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aLandedBuy(app, storehouse);
  splitIds = await splitGrain(storehouse, buy, { ...GRAIN_RULES, beans: 'need-first' });
}, 60_000);
afterAll(() => app.close());

type Share = {
  ownerId: string;
  name: string;
  isCommonStock: boolean;
  claimGrams: number;
  awardGrams: number;
};
type Run = { rule: string; isKnown: boolean; shares: Share[] };
type Simulated = { id: string; rule: string; landedGrams: number; rules: Run[] };

const path = () => `${storehouse.path}/split-simulation`;
const simulated = async (caller = storehouse.coordinator): Promise<Simulated[]> =>
  bodyOf(await caller.get(path())).splits;
const gramsOf = (shares: readonly Share[]) =>
  Object.fromEntries(shares.map(({ ownerId, awardGrams }) => [ownerId, awardGrams]));

test('each rule’s column shares all that landed, and the rule that was chosen gives what was awarded', async () => {
  const splits = await simulated();
  expect(splits.map(({ id }) => id).toSorted()).toEqual(Object.values(splitIds).toSorted());
  for (const { id, rule, landedGrams, rules } of splits) {
    expect(rules.map((run) => run.rule)).toEqual([...SPLIT_RULES]);
    for (const { isKnown, shares } of rules)
      if (isKnown) expect(shares.reduce((sum, share) => sum + share.awardGrams, 0)).toBe(landedGrams);
    const sheet = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/splits/${id}`));
    const chosen = rules.find((run) => run.rule === rule);
    expect(chosen?.isKnown).toBe(true);
    expect(gramsOf(chosen?.shares ?? [])).toEqual(gramsOf(sheet.shares));
  }
});

test('the short wheat comes out otherwise under another rule, and need first is told only where it was read', async () => {
  const splits = await simulated();
  const wheat = splits.find(({ id }) => id === splitIds.wheat);
  const run = (rule: string) => wheat?.rules.find((known) => known.rule === rule);
  expect(wheat?.rule).toBe('equal-awards');
  // Job map 4.3: the 5 lb that are short are Ashdown's alone by equal awards, and everybody's by proportion.
  const lost = (rule: string) =>
    Object.fromEntries(
      (run(rule)?.shares ?? []).map(({ name, claimGrams, awardGrams }) => [name, claimGrams - awardGrams]),
    );
  expect(lost('equal-awards')).toEqual({ Ashdown: 2268, Birchall: 0, Corran: 0, Dell: 0 });
  expect(Object.values(lost('proportional')).every((grams) => grams > 0)).toBe(true);
  expect(run('need-first')).toEqual({ rule: 'need-first', isKnown: false, shares: [] });
  const beans = splits.find(({ id }) => id === splitIds.beans);
  expect(beans?.rules.every(({ isKnown }) => isKnown)).toBe(true);
});

test('a member sees its own line alone; a duty’s look is written down; nothing is posted', async () => {
  const { Dell } = buy.households;
  const { tables: _, ...before } = await fingerprintOf(app);
  for (const { rules } of await simulated(Dell.caller))
    for (const { shares } of rules)
      expect(shares.every(({ ownerId }) => ownerId === Dell.householdId)).toBe(true);
  const splits = await simulated();
  const { privateReads } = bodyOf(
    await Dell.caller.get(`${storehouse.path}/households/${Dell.householdId}/private-reads`),
  );
  const purposes = privateReads.map((look: { purpose: string }) => look.purpose);
  expect(purposes).toContain('what each rule would have given');
  const { tables: _after, ...after } = await fingerprintOf(app);
  expect(after).toEqual(before); // the look is noted, the ledger is as it was
  expect(JSON.stringify(splits)).not.toMatch(/stockUnits|dailyNeed/);
});

test('how far apart the splits left households is told by food group, and names nobody', async () => {
  const { groups } = bodyOf(await buy.households.Dell.caller.get(`${storehouse.path}/split-fairness`));
  const { splits } = bodyOf(await storehouse.coordinator.get(`${buy.path}/splits`));
  const foods = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/foods`)).foods;
  const borne = new Map<string, Map<string, number>>();
  for (const split of splits) {
    const { foodGroup } = foods.find((food: { foodCode: string }) => food.foodCode === split.foodCode);
    const of = borne.get(foodGroup) ?? new Map<string, number>();
    for (const share of split.shares)
      if (!share.isCommonStock) of.set(share.ownerId, (of.get(share.ownerId) ?? 0) + share.carryChangeGrams);
    borne.set(foodGroup, of);
  }
  expect(groups).toEqual(
    [...borne.keys()].toSorted().map((foodGroup) => {
      const grams = [...(borne.get(foodGroup)?.values() ?? [])];
      const ends = { leastGrams: Math.min(...grams), mostGrams: Math.max(...grams) };
      return { foodGroup, households: grams.length, ...ends };
    }),
  );
  // The wheat's missing 2,268 g were Ashdown's alone, so grains do not lie even.
  expect(
    groups.find((group: { foodGroup: string }) => group.foodGroup === 'grains').mostGrams,
  ).toBeGreaterThan(0);
});

test('only the last three splits in force are told', async () => {
  const before = await simulated();
  expect(before).toHaveLength(3);
  bodyOf(await storehouse.coordinator.post(`${storehouse.path}/splits/${splitIds.oats}/undoing`, {}), 200);
  expect((await simulated()).map(({ id }) => id)).not.toContain(splitIds.oats);
});
