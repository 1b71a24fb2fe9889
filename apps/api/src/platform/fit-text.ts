import type { FieldProblem } from './problem.ts';

/**
 * Names each text that PostgreSQL can't keep as it was sent: one with a NUL, or with half of a surrogate pair, which
 * JSON can spell and UTF-8 can't.
 */
export function listUnfitTexts(value: unknown, path: readonly string[] = []): FieldProblem[] {
  if (typeof value === 'string') return isFit(value) ? [] : [{ field: path.join('.'), message: MESSAGE }];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => listUnfitTexts(inner, [...path, key]));
}

const MESSAGE = 'This text holds something that is no character.';
const isFit = (text: string): boolean => !text.includes('\0') && !/\p{Surrogate}/u.test(text);
