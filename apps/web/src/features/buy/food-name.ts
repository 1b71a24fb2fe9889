import type { Language } from '../../text/taste.ts';
import { nameIn } from '../../ui/name-in.ts';

/** A food's name in the reader's language. */
export const foodNameOf = (
  { food }: { readonly food: { readonly nameEn: string; readonly nameEs: string } },
  language: Language,
): string => nameIn(language, food);
