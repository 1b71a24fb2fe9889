import { createContext, useContext } from 'react';
import type { Formats } from '../text/format.ts';

/** Where the signed-in person stands: the storehouse, themselves and how figures are written for them. */
export type House = {
  readonly storehouse: string;
  readonly storehouseName: string;
  readonly massDisplay: 'lb' | 'kg';
  readonly personId: string;
  readonly personName: string;
  /** What this person may do here; the server decides, a page only leaves out what would be refused. */
  readonly duties: readonly string[];
  /** Null for a reviewer from outside, who has no household. */
  readonly household: string | null;
  readonly householdName: string;
  /** The other storehouses that this login belongs to. */
  readonly elsewhere: readonly { readonly storehouseId: string; readonly name: string }[];
  readonly format: Formats;
};

export const HouseContext = createContext<House | null>(null);

export function useHouse(): House {
  const house = useContext(HouseContext);
  if (!house) throw new Error('this page stands inside a storehouse');
  return house;
}

/** The two ids that addresses of one's own household are made of. */
export function useOwnHousehold(): { storehouse: string; household: string } {
  const { storehouse, household } = useHouse();
  return { storehouse, household: household ?? '' };
}
