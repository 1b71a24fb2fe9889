type Sum = { readonly month: string; readonly atRiskGrams: number };

/** A month on the axis of the hills, with the grams that end in it now and if things were otherwise. */
export type HillMonth = { readonly month: string; readonly grams: number; readonly otherGrams: number };

/** Every month from the first that has some to the last, those between with nothing, so that the axis is even in time. */
export function hillMonths(now: readonly Sum[], other: readonly Sum[]): HillMonth[] {
  const all = [...now, ...other].map(({ month }) => month).toSorted();
  const [first, last] = [all[0], all.at(-1)];
  if (first === undefined || last === undefined) return [];
  const gramsIn = (sums: readonly Sum[], month: string) =>
    sums.find((sum) => sum.month === month)?.atRiskGrams ?? 0;
  const months: HillMonth[] = [];
  for (let month = first; month <= last; month = monthAfter(month))
    months.push({ month, grams: gramsIn(now, month), otherGrams: gramsIn(other, month) });
  return months;
}

function monthAfter(month: string): string {
  const [year, of] = [Number(month.slice(0, 4)), Number(month.slice(5))];
  return of === 12 ? `${year + 1}-01` : `${year}-${String(of + 1).padStart(2, '0')}`;
}
