import { useBooksText } from './words.ts';

/** Where money goes in and out: the bank and the cash tin, and first what else is possible, such as a credit note. */
export function useTills(otherwise?: string) {
  const t = useBooksText();
  return [
    ...(otherwise === undefined ? [] : [{ value: '', name: otherwise }]),
    { value: 'bank', name: t.byBank },
    { value: 'cash', name: t.inCash },
  ];
}

export const isTill = (value: unknown): value is 'bank' | 'cash' => value === 'bank' || value === 'cash';
