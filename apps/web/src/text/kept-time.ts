import { type RoughSpan, roughSpan } from '@sheafbook/units';

type OneAndMany = readonly [one: string, many: string];

/** How long food keeps, in the words of a language. */
export function keptTime(days: number, words: Readonly<Record<RoughSpan['unit'], OneAndMany>>): string {
  const { count, unit } = roughSpan(days);
  return `${count} ${words[unit][count === 1 ? 0 : 1]}`;
}
