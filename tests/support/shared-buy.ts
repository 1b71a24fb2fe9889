import type { TestApp } from './app.ts';
import { bodyOf } from './buy.ts';
import type { GrainHouseholds } from './fixed-buy.ts';
import { aLandedBuy, type GrainFood, type LandingWish, type TestLandedBuy } from './landed-buy.ts';
import type { TestStorehouse } from './storehouse.ts';

export type GrainRules = Partial<Record<GrainFood, string>>;

/** The rules of the job map's whole buy (its section 4.3): equal awards of the short wheat, the rest in proportion. */
export const GRAIN_RULES = { wheat: 'equal-awards', oats: 'proportional', beans: 'proportional' } as const;

/** The job map's whole buy after sharing out, with what `POST …/sharing-out` answered. */
export type TestSharedBuy = TestLandedBuy & {
  splitIds: Record<GrainFood, string>;
  // biome-ignore lint/suspicious/noExplicitAny: a test reads an answer freely; its shape is what it asserts
  charges: any;
};

/** Splits every food of the grain buy; gives the id of each split. */
export async function splitGrain(
  storehouse: TestStorehouse,
  buy: TestLandedBuy,
  rules: GrainRules = GRAIN_RULES,
): Promise<Record<GrainFood, string>> {
  const split = async (food: GrainFood): Promise<string> => {
    const rule = rules[food];
    const path = `${buy.path}/lines/${buy[food]}/splits`;
    return bodyOf(await storehouse.coordinator.post(path, rule ? { rule } : {}), 201).id;
  };
  return { wheat: await split('wheat'), oats: await split('oats'), beans: await split('beans') };
}

/** The grain buy split and shared out; households owe what they were charged less their deposits. */
export async function aSharedBuy(
  app: TestApp,
  storehouse: TestStorehouse,
  wish: LandingWish & { rules?: GrainRules } = {},
): Promise<TestSharedBuy> {
  const { rules, ...landing } = wish;
  const buy = await aLandedBuy(app, storehouse, landing);
  const splitIds = await splitGrain(storehouse, buy, rules);
  const charges = bodyOf(await storehouse.coordinator.post(`${buy.path}/sharing-out`), 201);
  return { ...buy, splitIds, charges };
}

/** The supplier grants both claims of the grain buy by a credit note. */
export async function creditClaims(storehouse: TestStorehouse, buy: TestLandedBuy): Promise<void> {
  for (const [claimId, minorUnits] of [
    [buy.claims?.torn, 360],
    [buy.claims?.short, 2140],
  ] as const)
    bodyOf(await buy.treasurer.post(`${storehouse.path}/claims/${claimId}/credit`, { minorUnits }), 201);
}

type Named = { readonly name: string; readonly minorUnits: number };

/** What an answer charges each household, by name. */
export const chargeOf = (charges: { totals: readonly Named[] }): Record<string, number> =>
  Object.fromEntries(charges.totals.map(({ name, minorUnits }) => [name, minorUnits]));

/** What each share of a cost line comes to, by name; common stock is 'common'. */
export function sharesOf(
  charges: {
    lines: readonly { costLine: string; shares: readonly (Named & { isCommonStock: boolean })[] }[];
  },
  costLine: string,
): Record<string, number> {
  const sums: Record<string, number> = {};
  for (const line of charges.lines.filter((known) => known.costLine === costLine))
    for (const { name, minorUnits, isCommonStock } of line.shares) {
      const key = isCommonStock ? 'common' : name;
      sums[key] = (sums[key] ?? 0) + minorUnits;
    }
  return sums;
}

/** Every household's running balance, by name, and other accounts of money that are not at nothing. */
export async function balancesOf(app: TestApp, households: GrainHouseholds): Promise<Record<string, number>> {
  const rows = await app.admin<{ kind: string; owner_id: string | null; balance: string }[]>`
    select kind, owner_id, sum(inflow - outflow) as balance from book.account where unit_kind = 'currency'
    group by kind, owner_id having sum(inflow - outflow) <> 0 order by kind`;
  const names = new Map(Object.entries(households).map(([name, { householdId }]) => [householdId, name]));
  return Object.fromEntries(
    rows.map(({ kind, owner_id, balance }) => {
      const name = (owner_id && names.get(owner_id)) ?? '';
      return [kind === 'household' ? name : `${kind} ${name}`.trim(), Number(balance)];
    }),
  );
}
