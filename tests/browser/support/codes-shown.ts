import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

// Words that only the program speaks, such as loan-back: a member who reads one reads a name that somebody forgot.

const schema = readFileSync(fileURLToPath(new URL('../../../db/schema.sql', import.meta.url)), 'utf8');
const events = readFileSync(
  fileURLToPath(new URL('../../../apps/web/src/text/en/books.ts', import.meta.url)),
  'utf8',
);
const openItems = readFileSync(
  fileURLToPath(new URL('../../../apps/api/src/features/next-step/open-item.ts', import.meta.url)),
  'utf8',
);

/** What the schema's checks allow, what entries of the journal are, and what may need somebody: those of several words. */
const CODES = new Set(
  [schema, events, openItems]
    .flatMap((text) => [...text.matchAll(/'([a-z]+(?:[-_][a-z]+)+)'/g)].map(([, code = '']) => code))
    .filter((code) => !isPlainEnglish(code)),
);

/** Compounds of the language itself. */
function isPlainEnglish(code: string): boolean {
  return ['pick-up', 'need-first', 'run-sheet', 'write-off'].includes(code);
}

/** The codes that stand in a text as they are. */
export function codesShown(text: string): string[] {
  const shown = [...text.matchAll(/(?<![\w/-])[a-z]+(?:[-_][a-z]+)+(?![\w/-])/g)].map(([word]) => word);
  return [...new Set(shown.filter((word) => CODES.has(word)))];
}

export const countOfCodes = CODES.size;
