import type { Tx } from '@sheafbook/db';
import type { ContainerKindRow, ContainerRow, FoodRow, GiftFactRow } from '@sheafbook/db/tables';
import { listLastingRefusals, type RuleCard } from '@sheafbook/giving';
import type { GiftTerms } from '@sheafbook/keeping';
import { listFacts, listPantries } from '../pantry/queries.ts';
import { factsOf, isWithoutOxygen, ruleCardOf, weekdaysOf } from '../pantry/use-cases.ts';
import { loadRules } from '../storehouse/queries.ts';

/** What decides the three dates beside how long a container keeps. */
export type DateTerms = {
  readonly pantries: readonly { readonly card: RuleCard; readonly terms: GiftTerms }[];
  readonly said: ReadonlyMap<string, GiftFactRow>;
  readonly offerDays: number;
  readonly offerDaysWithoutPantry: number;
};

/** The cards of the pantries, what was said of containers, and the group's own days before which members are asked. */
export async function loadDateTerms(tx: Tx, storehouseId: string): Promise<DateTerms> {
  const { offerDays, offerDaysWithoutPantry } = await loadRules(tx, storehouseId);
  const found = await listPantries(tx, storehouseId);
  const pantries = found.map(({ current: { card, openings } }) => ({
    card: ruleCardOf(card),
    // Food is brought on the day itself.
    terms: { leastLifeDays: card.leastLifeDays, transportDays: 0, openWeekdays: weekdaysOf(openings) },
  }));
  const said = pantries.length === 0 ? [] : await listFacts(tx, storehouseId);
  return {
    ...{ pantries, offerDays, offerDaysWithoutPantry },
    said: new Map(said.map((row) => [row.containerId, row])),
  };
}

type Thing = { readonly container: ContainerRow; readonly kind: ContainerKindRow; readonly food: FoodRow };

/**
 * What those pantries ask of its days whose card takes such a container at all: the others' days are no dates of its. How full
 * it is, and what its line may have left in it, is asked when it is matched.
 */
export function termsFor({ container, kind, food }: Thing, { pantries, said }: DateTerms): GiftTerms[] {
  const { sealedBy, labelFacts, isTreatedSeed, isMouldy } = factsOf(
    container,
    said.get(container.containerId),
  );
  if (isMouldy) return [];
  const gift = {
    ...{ sealedBy, labelFacts, isTreatedSeed, foodCode: food.foodCode, kindCode: kind.kindCode, grams: 0 },
    ...{ isReducedOxygen: isWithoutOxygen(container), allergens: food.allergens },
    ...{ isOnHold: false, isOpened: container.openedOn !== null }, // a hold may end before the dates do
  };
  return pantries.flatMap(({ card, terms }) => (listLastingRefusals(card, gift).length === 0 ? [terms] : []));
}
