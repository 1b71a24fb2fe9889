import { actingHere } from '../../api/acting.ts';

type Whose = { readonly storehouse: string; readonly personId: string };

/** Where this browser keeps what happened at the shed door: each person's own, and apart for whom they act for. */
export const counterPlace = ({ storehouse, personId }: Whose): string =>
  `sheafbook.loans.${storehouse}.${personId}.${actingHere()?.household ?? ''}`;
