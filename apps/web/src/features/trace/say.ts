import { useText } from '../../text/taste.ts';
import { useTraceText } from './words.ts';

/** Allergens in the reader's words, one after another. */
export function useAllergenNames() {
  const { allergens, gluten } = useText();
  const names: Readonly<Record<string, string>> = { ...allergens, gluten };
  return (list: readonly string[]): string => list.map((one) => names[one] ?? one).join(', ');
}

type Owner = { readonly owner: string; readonly ownerName: string | null };

/** Whose it is, as far as the reader may know. */
export function useOwnerName() {
  const words = useTraceText();
  return ({ owner, ownerName }: Owner): string => {
    if (ownerName !== null) return ownerName;
    return { common: words.store, unassigned: words.nobody }[owner] ?? words.aHousehold;
  };
}
