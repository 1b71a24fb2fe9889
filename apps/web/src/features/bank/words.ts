import { en } from '../../text/en/bank.ts';
import { es } from '../../text/es/bank.ts';
import { useWords } from '../../text/taste.ts';
import { useBooksText } from '../books/words.ts';

export const useBankText = () => useWords({ en, es });

/** The name of a kind of entry: the bank's own where it says more, else the journal's, which knows every kind. */
export function useEntryName(): (what: string) => string {
  const words = useBankText();
  const { whats } = useBooksText();
  return (what) => words.what[what] ?? whats[what] ?? what;
}
