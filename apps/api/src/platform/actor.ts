import { assert } from '@sheafbook/units';

/** What a person may do in one storehouse. Duties only add rights; `member` needs none. */
export const DUTIES = ['coordinator', 'treasurer', 'packing_lead', 'equipment_keeper', 'reviewer'] as const;
export type Duty = (typeof DUTIES)[number];

/** Whoever is asking, in one storehouse, for the length of one request. */
export type Actor = {
  readonly loginId: string;
  readonly personId: string;
  readonly storehouseId: string;
  readonly currency: string;
  readonly timeZone: string;
  readonly duties: ReadonlySet<Duty>;
  /** The household acted for: one's own, or a neighbour's under a helper's grant in force. */
  readonly householdId: string | null;
  readonly isHelping: boolean;
};

/** No login and no person has this id; a row that names a person refuses it. */
const NOBODY = '00000000-0000-0000-0000-000000000000';

/** The storehouse itself, at work in the background: no login, no person, no household and no duty. */
export const storehouseItself = (
  storehouse: Pick<Actor, 'storehouseId' | 'currency' | 'timeZone'>,
): Actor => ({
  ...storehouse,
  loginId: NOBODY,
  personId: NOBODY,
  duties: new Set(),
  householdId: null,
  isHelping: false,
});

/** Whether nobody asks, but the storehouse is at work by itself. */
export const isStorehouseItself = ({ personId }: Actor): boolean => personId === NOBODY;

export const hasDuty = (actor: Actor, ...duties: readonly Duty[]): boolean =>
  duties.some((duty) => actor.duties.has(duty));

/** The household acted for, where the policy lets only households through. */
export function householdOf({ actor }: { readonly actor: Actor }): string {
  assert(actor.householdId !== null, 'the policy lets only households through');
  return actor.householdId;
}
