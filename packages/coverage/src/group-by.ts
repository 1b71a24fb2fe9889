/** Values in groups of equal keys, groups and values in the order they came. Node 20 has no Map.groupBy. */
export function groupBy<Value>(values: readonly Value[], keyOf: (value: Value) => string): Value[][] {
  const groups = new Map<string, Value[]>();
  for (const value of values) {
    const group = groups.get(keyOf(value));
    if (group) group.push(value);
    else groups.set(keyOf(value), [value]);
  }
  return [...groups.values()];
}
