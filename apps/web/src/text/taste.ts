import { useSyncExternalStore } from 'react';
import type { Catalogue } from './en/core.ts';

export type Language = 'en' | 'es';
export type Taste = {
  readonly language: Language;
  /** Null: as the storehouse shows it. */
  readonly massUnit: 'lb' | 'kg' | null;
  readonly theme: 'auto' | 'light' | 'dark';
};

const PLACE = 'sheafbook.taste';
const listeners = new Set<() => void>();

/** Only the words of the language in use are fetched. */
const WORDS: Readonly<Record<Language, () => Promise<Catalogue>>> = {
  en: async () => (await import('./en/core.ts')).en,
  es: async () => (await import('./es/core.ts')).es,
};

let taste: Taste = readTaste();
let words: Catalogue;

function readTaste(): Taste {
  const kept = JSON.parse(localStorage.getItem(PLACE) ?? '{}') as Partial<Taste>;
  const spoken = navigator.language.startsWith('es') ? 'es' : 'en';
  return { language: kept.language ?? spoken, massUnit: kept.massUnit ?? null, theme: kept.theme ?? 'auto' };
}

/** Fetches the words before anything is drawn. */
export async function readyWords(): Promise<void> {
  words = await WORDS[taste.language]();
  document.documentElement.lang = taste.language;
  document.documentElement.dataset.theme = taste.theme;
}

export async function changeTaste(change: Partial<Taste>): Promise<void> {
  taste = { ...taste, ...change };
  localStorage.setItem(PLACE, JSON.stringify(taste));
  await readyWords();
  for (const tell of listeners) tell();
}

const listen = (tell: () => void) => {
  listeners.add(tell);
  return () => listeners.delete(tell);
};

export const useTaste = (): Taste => useSyncExternalStore(listen, () => taste);
/** The words that every page needs. */
export const useText = (): Catalogue => useSyncExternalStore(listen, () => words);

/** The words of one area, in both languages; they are fetched with the page that says them. */
export type AreaWords<Words> = { readonly en: Words; readonly es: NoInfer<Words> };
export const useWords = <Words>(area: AreaWords<Words>): Words => area[useTaste().language];
