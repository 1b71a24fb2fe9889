import { actingHere } from '../../api/acting.ts';

type Whose = { readonly storehouse: string; readonly personId: string };

/** Where this browser keeps what was written down at the lines: each person's own, and apart for whom they act for. */
export const linePlaces = ({ storehouse, personId }: Whose) => {
  const acting = actingHere();
  return {
    prefix: `sheafbook.log.${storehouse}.`,
    suffix: acting ? `.${personId}.${acting.household}` : `.${personId}`,
  };
};

export function linePlace(whose: Whose, session: string): string {
  const { prefix, suffix } = linePlaces(whose);
  return `${prefix}${session}${suffix}`;
}
