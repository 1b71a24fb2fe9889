/**
 * Orders two texts by their code units, the same on every machine and in every language.
 * Units: none. Errors: none.
 */
export function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
