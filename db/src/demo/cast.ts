import type { HouseholdName } from './people.ts';
import type { Caller, Teller } from './teller.ts';

/** A household of the story with the session of whoever holds its login. */
export type Neighbour = {
  readonly name: HouseholdName;
  readonly personName: string;
  readonly householdId: string;
  readonly personId: string;
  readonly caller: Caller;
};

/** Everybody in the story, once the storehouse stands. */
export type Cast = {
  readonly teller: Teller;
  readonly storehouseId: string;
  readonly neighbours: readonly Neighbour[];
  readonly coordinator: Caller;
  readonly treasurer: Caller;
  readonly packingLead: Caller;
  readonly reviewer: Caller;
  of(name: HouseholdName): Neighbour;
  /** Ids of what the storehouse keeps lists of, by code. */
  readonly foodIds: ReadonlyMap<string, string>;
  readonly kindIds: ReadonlyMap<string, string>;
};

/** What a map must hold, or the story's own data are wrong. */
export function idIn(ids: ReadonlyMap<string, string>, code: string): string {
  const id = ids.get(code);
  if (id === undefined) throw new Error(`the story speaks of ${code}, which is not there`);
  return id;
}
