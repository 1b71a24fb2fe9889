import type { KindWords, Source } from './appointment.ts';
import { BUYS } from './sources/buys.ts';
import { LOANS } from './sources/loans.ts';
import { MONEY } from './sources/money.ts';
import { PACKING } from './sources/packing.ts';
import { PICK_UPS } from './sources/pick-ups.ts';

/** Whatever has appointments; a further one is a file in `sources` and a line here. */
export const SOURCES: readonly Source[] = [BUYS, PICK_UPS, PACKING, LOANS, MONEY];

const WORDS = new Map<string, KindWords>(SOURCES.flatMap(({ words }) => Object.entries(words)));

/** The words of a kind; none for a kind that an older book had and this one no longer knows. */
export const wordsOfKind = (kind: string): KindWords | undefined => WORDS.get(kind);
