import type { SupplyPriceRow } from '@sheafbook/db/tables';
import { cautionOf, MISFIT_WORDS, type Misfit, treatmentOf } from '@sheafbook/keeping';
import type { findWaysToKeep } from './use-cases.ts';

type Found = Awaited<ReturnType<typeof findWaysToKeep>>;

export function presentWays({ food, kinds, grams, ways, refused }: Found) {
  const kindOf = new Map(
    kinds.map(({ containerKindId: id, kindCode, nameEn, nameEs, isDark, isReusable, needsOuter }) => [
      id,
      { id, kindCode, nameEn, nameEs, isDark, isReusable, needsOuter },
    ]),
  );
  return {
    food: { id: food.foodId, nameEn: food.nameEn, nameEs: food.nameEs },
    grams,
    ways:
      ways?.map(({ kindId, treatment, warnings, life, costPerYearMinorUnits, ...way }) => ({
        kind: kindOf.get(kindId) ?? null,
        treatment: presentTreatment(treatment),
        warnings: presentWhy(warnings),
        ...way,
        costPerYearMinorUnits: costPerYearMinorUnits === null ? null : Math.round(costPerYearMinorUnits),
        life: life && {
          lowDays: life.lowDays,
          likelyDays: life.likelyDays,
          highDays: life.highDays,
          weakestLink: life.weakestLink,
          isEstimate: life.isEstimate,
          source: life.source,
        },
      })) ?? null,
    refused: refused.map(({ kindId, treatment, misfits, nearest }) => ({
      kind: kindOf.get(kindId) ?? null,
      treatment: { code: treatment, names: treatmentOf(treatment).names },
      why: presentWhy(misfits),
      nearest: nearest && { code: nearest, names: treatmentOf(nearest).names },
    })),
  };
}

type Code = Parameters<typeof treatmentOf>[0];

function presentTreatment(code: Code) {
  const { names, needs, cautions } = treatmentOf(code);
  return { code, names, needs, cautions: cautions.map(cautionOf) };
}

const presentWhy = (misfits: readonly Misfit[]) =>
  misfits.map((misfit) => ({ misfit, say: MISFIT_WORDS[misfit] }));

export function presentSupplyPrices(rows: readonly SupplyPriceRow[]) {
  return { prices: rows.map(({ supplyCode, priceMinorUnits }) => ({ supplyCode, priceMinorUnits })) };
}
