import type { ContainerKindRow } from '@sheafbook/db/tables';
import { foldText } from '../sheet/kinds.ts';

export type KnownHousehold = {
  readonly id: string;
  readonly name: string;
  readonly seat: number;
  readonly hasLeft: boolean;
};
export type KnownFood = {
  readonly id: string;
  readonly code: string;
  readonly names: readonly string[];
  readonly bulkMicrogramsPerMillilitre: number | null;
  readonly isRetired: boolean;
};

/** By folded name and by seat: looking through all of them at every row would be most of a large sheet's cost. */
export type HouseholdsKnown = {
  readonly byName: Map<string, KnownHousehold>;
  readonly bySeat: Map<number, KnownHousehold>;
};

/** What stands in the book already, growing with what the sheets bring, so that a later row may name an earlier one. */
export type Known = {
  readonly storehouseId: string;
  readonly commonId: string;
  readonly households: HouseholdsKnown;
  readonly eaters: Set<string>;
  /** By folded code and by folded name in either language; of two of one name the first stands. */
  readonly foods: Map<string, KnownFood>;
  readonly kinds: readonly ContainerKindRow[];
  readonly suppliers: Map<string, { readonly id: string; readonly name: string }>;
  /** Opening balances posted and not reversed, by owner, or by till. */
  readonly openings: Map<string, number>;
  /** Containers brought in before, counted by what tells them apart. */
  readonly stock: Map<string, number>;
  readonly equipment: Set<string>;
};

export const keyOf = (...parts: readonly (string | number | null)[]): string => JSON.stringify(parts);

/** By its name, else by its seat, written "5" or "Seat 5". */
export function findHousehold({ households }: Known, text: string): KnownHousehold | undefined {
  const folded = foldText(text);
  const named = households.byName.get(folded);
  if (named) return named;
  const seat = /^(?:seat|puesto)?\s*(\d{1,6})$/.exec(folded)?.[1];
  return seat === undefined ? undefined : households.bySeat.get(Number(seat));
}

export function addHousehold({ households }: Pick<Known, 'households'>, household: KnownHousehold): void {
  const folded = foldText(household.name);
  if (!households.byName.has(folded)) households.byName.set(folded, household);
  households.bySeat.set(household.seat, household);
}

export const findFood = ({ foods }: Known, text: string): KnownFood | undefined => foods.get(foldText(text));

export function addFood({ foods }: Pick<Known, 'foods'>, food: KnownFood): void {
  for (const name of [food.code, ...food.names].map(foldText)) if (!foods.has(name)) foods.set(name, food);
}

export const findKind = ({ kinds }: Known, text: string): ContainerKindRow | undefined =>
  kinds.find(({ kindCode, nameEn, nameEs }) =>
    [kindCode, nameEn, nameEs].some((name) => foldText(name) === foldText(text)),
  );
