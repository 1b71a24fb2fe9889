import { assert, assertWhole, compareText } from '@sheafbook/units';

/**
 * A food that runs over a line. `carries` is what it leaves behind for whoever comes next: its allergens, and gluten.
 * Units: containers. Errors: none by itself.
 */
export type FoodRun = {
  readonly foodCode: string;
  readonly carries: readonly string[];
  readonly units: number;
  /** What nobody who gets this food may meet in it: an eater's allergies. */
  readonly mustNotMeet: readonly string[];
};

/** Minutes between two foods. Units: minutes. Errors: none. Source: common practice, no source. */
export const CHANGEOVER_MINUTES = { wipeDown: 5, fullClean: 20 } as const;

/** The order of a day, what lies between, or why there is none. Units: minutes. Errors: none by itself. */
export type FoodOrder =
  | {
      readonly isPossible: true;
      readonly order: readonly FoodRun[];
      /** One a food; the first of them is 0. */
      readonly changeovers: readonly number[];
      readonly totalMinutes: number;
    }
  | { readonly isPossible: false; readonly foodCodes: readonly string[] };

/**
 * Minutes from one food to the next: a wipe-down when the next one carries all that the last one did, a full clean
 * otherwise.
 * Units: minutes. Errors: none.
 */
export function changeoverMinutes(from: Pick<FoodRun, 'carries'>, to: Pick<FoodRun, 'carries'>): number {
  const isCovered = from.carries.every((allergen) => to.carries.includes(allergen));
  return isCovered ? CHANGEOVER_MINUTES.wipeDown : CHANGEOVER_MINUTES.fullClean;
}

const MOST_FOODS = 14;

/**
 * The order with the fewest minutes of changing over in which a food for an allergic eater runs before every food that
 * carries the allergen, at whatever cost. Ties, in turn: foods that carry nothing come first, then those that carry less,
 * then fewer containers first, then by code.
 * Units: minutes. Shape: impossible when two foods must each come before the other, or one carries what it must not meet.
 * Errors: AssertionError when a code comes twice or there are more than 14 foods.
 * Source: exact dynamic programme over subsets (Held and Karp 1962).
 */
export function orderFoods(runs: readonly FoodRun[]): FoodOrder {
  assert(runs.length <= MOST_FOODS, `a line runs at most ${MOST_FOODS} foods a day`);
  assert(new Set(runs.map(({ foodCode }) => foodCode)).size === runs.length, 'each food comes once');
  for (const { units } of runs) assertWhole(units, 'units');
  // In the order of the tie-break: a smaller list of positions is then the better of two orders that cost the same.
  const sorted = runs.toSorted(byTieBreak);
  const before = sorted.map((run) => sorted.map((other) => other !== run && mustPrecede(run, other)));
  const spoilt = sorted.filter((run) => run.mustNotMeet.some((allergen) => run.carries.includes(allergen)));
  if (spoilt.length > 0) return { isPossible: false, foodCodes: spoilt.map(({ foodCode }) => foodCode) };
  const best = cheapestFrom(sorted, before);
  if (!best) return { isPossible: false, foodCodes: sorted.map(({ foodCode }) => foodCode) };
  const order = best.positions.map((position) => sorted[position] as FoodRun);
  const changeovers = order.map((run, position) => {
    const last = order[position - 1];
    return last ? changeoverMinutes(last, run) : 0;
  });
  return { isPossible: true, order, changeovers, totalMinutes: best.minutes };
}

/** The food for the allergic eater runs before the food that carries the allergen. */
const mustPrecede = (run: FoodRun, other: FoodRun) =>
  run.mustNotMeet.some((allergen) => other.carries.includes(allergen));

function byTieBreak(a: FoodRun, b: FoodRun): number {
  return a.carries.length - b.carries.length || a.units - b.units || compareText(a.foodCode, b.foodCode);
}

type Path = { readonly minutes: number; readonly positions: readonly number[] };

/** Best completion for each set of foods that ran and the last of them. */
function cheapestFrom(runs: readonly FoodRun[], before: readonly (readonly boolean[])[]): Path | null {
  const all = (1 << runs.length) - 1;
  const known = new Map<string, Path | null>();
  const complete = (done: number, last: number | null): Path | null => {
    if (done === all) return { minutes: 0, positions: [] };
    const key = `${done}/${last}`;
    const found = known.get(key);
    if (found !== undefined) return found;
    let best: Path | null = null;
    for (const [next, run] of runs.entries()) {
      if (done & (1 << next) || !isReady(before, next, done)) continue;
      const rest = complete(done | (1 << next), next);
      if (!rest) continue;
      const from = last === null ? undefined : runs[last];
      const minutes = rest.minutes + (from ? changeoverMinutes(from, run) : 0);
      if (!best || minutes < best.minutes) best = { minutes, positions: [next, ...rest.positions] };
    }
    known.set(key, best);
    return best;
  };
  return complete(0, null);
}

/** All that must run before it have run. */
const isReady = (before: readonly (readonly boolean[])[], next: number, done: number) =>
  before.every((precedes, other) => !precedes[next] || (done & (1 << other)) !== 0);
