import { actingHere } from '../../api/acting.ts';

type Whose = { readonly storehouse: string; readonly personId: string };

/** Where this browser keeps what was bought without a signal: each person's own, and apart for whom they act for. */
export function boughtPlace({ storehouse, personId }: Whose): string {
  const acting = actingHere();
  return `sheafbook.bought.${storehouse}.${personId}${acting ? `.${acting.household}` : ''}`;
}
