import { compareText } from './compare-text.ts';

/**
 * A value as JSON with the keys of every object sorted, so that a store that reorders keys changes nothing: two
 * values are the same when these texts are.
 * Units: none. Shape: arrays keep their order, keys stand in the order of their code units.
 * Errors: TypeError when the value holds a bigint or itself.
 */
export function sortedJson(value: unknown): string {
  return JSON.stringify(value, (_key, part: unknown) =>
    isPlainObject(part)
      ? Object.fromEntries(Object.entries(part).toSorted(([a], [b]) => compareText(a, b)))
      : part,
  );
}

function isPlainObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
