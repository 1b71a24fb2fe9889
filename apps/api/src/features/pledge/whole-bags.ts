/**
 * The bag size that a whole-bag pledge counts in: the largest of which all three masses are whole bags; undefined when
 * there is none. A size that fits the wanted alone would leave the least or the most inside a bag.
 */
export function bagSizeOfPledge(
  bagSizes: readonly number[],
  { least, wanted, most }: { least: number; wanted: number; most: number },
): number | undefined {
  return bagSizes
    .toSorted((a, b) => b - a)
    .find((size) => [least, wanted, most].every((units) => units % size === 0));
}
