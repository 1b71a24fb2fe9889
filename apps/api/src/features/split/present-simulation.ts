import { seesAllShares } from './policy.ts';
import type { Simulation } from './use-cases-simulate.ts';

/** The last splits under each rule. A member sees what it would have had, and nobody else's part. */
export const presentSimulation = ({ actor, owners, splits }: Simulation) => ({
  splits: splits.map(({ split, buy, food, landedGrams, rules }) => ({
    id: split.splitId,
    buyId: split.buyId,
    buyName: buy.name,
    foodCode: food.foodCode,
    foodNameEn: food.nameEn,
    foodNameEs: food.nameEs,
    roundNo: split.roundNo,
    madeAt: split.madeAt.toISOString(),
    rule: split.rule,
    landedGrams,
    rules: rules.map(({ rule, awards }) => ({
      rule,
      /** False where the split did not freeze what this rule reads. */
      isKnown: awards !== null,
      shares: (awards ?? [])
        .filter(({ ownerId }) => seesAllShares(actor) || ownerId === actor.householdId)
        .map((award) => ({
          ...award,
          isCommonStock: award.ownerId === owners.commonId,
          seat: owners.seatOf(award.ownerId),
          name: owners.nameOf(award.ownerId),
        }))
        .toSorted((a, b) => a.seat - b.seat),
    })),
  })),
});
