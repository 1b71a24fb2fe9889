import { readCode } from '@sheafbook/units';

/** Codes of labels as they are typed, one for each container, a comma between two; null for what is no code of ours. */
export const codesTyped = (text: string): (string | null)[] =>
  text
    .split(/[,;\n]/)
    .filter((part) => part.trim() !== '')
    .map((part) => readCode(part) ?? null);
