import { type AnyColumn, and, eq, type SQL } from 'drizzle-orm';

type Keyed<Key extends string> = Readonly<Record<Key | 'storehouseId', AnyColumn>>;

/** The condition that joins two tables of one storehouse by a key, which the other table may name in its own way. */
export function joinOn<Key extends string, OtherKey extends string = Key>(
  table: Keyed<NoInfer<Key>>,
  other: Keyed<NoInfer<OtherKey>>,
  key: Key,
  otherKey = key as unknown as OtherKey,
): SQL | undefined {
  return and(eq(table.storehouseId, other.storehouseId), eq(table[key], other[otherKey]));
}
