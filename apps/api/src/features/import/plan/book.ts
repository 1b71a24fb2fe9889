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

/** What stands in the book already, growing with what the sheets bring, so that a later row may name an earlier one. */
export type Known = {
  readonly storehouseId: string;
  readonly commonId: string;
  readonly households: KnownHousehold[];
  readonly eaters: Set<string>;
  readonly foods: KnownFood[];
  readonly kinds: readonly ContainerKindRow[];
  readonly suppliers: { readonly id: string; readonly name: string }[];
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
  const named = households.find(({ name }) => foldText(name) === folded);
  if (named) return named;
  const seat = /^(?:seat|puesto)?\s*(\d{1,6})$/.exec(folded)?.[1];
  return seat === undefined ? undefined : households.find((household) => household.seat === Number(seat));
}

export const findFood = ({ foods }: Known, text: string): KnownFood | undefined =>
  foods.find(({ code, names }) => [code, ...names].some((name) => foldText(name) === foldText(text)));

export const findKind = ({ kinds }: Known, text: string): ContainerKindRow | undefined =>
  kinds.find(({ kindCode, nameEn, nameEs }) =>
    [kindCode, nameEn, nameEs].some((name) => foldText(name) === foldText(text)),
  );
