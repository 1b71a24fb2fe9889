import type { Language } from '../text/taste.ts';

export type Named = { readonly nameEn: string; readonly nameEs: string };

/** The name of a food, a kind or whatever has one in each language, in the reader's; what is not there has none: ''. */
export const nameIn = (language: Language, thing: Named | null | undefined): string =>
  (language === 'es' ? thing?.nameEs : thing?.nameEn) ?? '';
