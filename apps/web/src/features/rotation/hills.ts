type Name = { readonly nameEn: string; readonly nameEs: string };
export type Sum = {
  readonly month: string;
  readonly atRiskGrams: number;
  readonly foods?: readonly { readonly food: Name | null; readonly atRiskGrams: number }[];
};

/** A month on the axis of the hills, with the grams that end in it now and if things were otherwise. */
export type HillMonth = {
  readonly month: string;
  readonly grams: number;
  readonly otherGrams: number;
  /** What ends in it now, the most first. */
  readonly foods: readonly Name[];
};

const LEAST_MONTHS = 12;

/**
 * Every month from this one, or an earlier one that has some, to the last that has some and a year at the least; those
 * between with nothing, so that the axis is even in time.
 */
export function hillMonths(now: readonly Sum[], other: readonly Sum[], thisMonth: string): HillMonth[] {
  const all = [...now, ...other].map(({ month }) => month);
  const first = [thisMonth, ...all].toSorted()[0] ?? thisMonth;
  const last = all.toSorted().at(-1) ?? thisMonth;
  const months: HillMonth[] = [];
  for (let month = first; month <= last || months.length < LEAST_MONTHS; month = monthAfter(month)) {
    const sum = now.find((one) => one.month === month);
    months.push({
      month,
      grams: sum?.atRiskGrams ?? 0,
      otherGrams: other.find((one) => one.month === month)?.atRiskGrams ?? 0,
      foods: (sum?.foods ?? [])
        .toSorted((a, b) => b.atRiskGrams - a.atRiskGrams)
        .flatMap(({ food }) => (food ? [food] : [])),
    });
  }
  return months;
}

function monthAfter(month: string): string {
  const [year, of] = [Number(month.slice(0, 4)), Number(month.slice(5))];
  return of === 12 ? `${year + 1}-01` : `${year}-${String(of + 1).padStart(2, '0')}`;
}

/** The places of the peaks, the highest first: months that have more than the one before and no less than the next. */
export function peaksOf(grams: readonly number[]): number[] {
  return grams
    .map((own, at) => ({ own, at }))
    .filter(({ own, at }) => own > (grams[at - 1] ?? 0) && own >= (grams[at + 1] ?? 0))
    .toSorted((a, b) => b.own - a.own || a.at - b.at)
    .map(({ at }) => at);
}

type Label = { readonly at: number; readonly x: number; readonly width: number };

/** Of labels in order of weight those that find room on one line without touching a heavier one, moved in from the edges. */
export function placeLabels(labels: readonly Label[], width: number): Label[] {
  const placed: Label[] = [];
  for (const label of labels) {
    const half = label.width / 2;
    const x = Math.min(Math.max(label.x, half), width - half);
    const isFree = placed.every((other) => Math.abs(other.x - x) >= half + other.width / 2 + 8);
    if (isFree && label.width <= width) placed.push({ ...label, x });
  }
  return placed;
}
