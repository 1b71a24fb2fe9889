import {
  addFractions,
  assert,
  assertWhole,
  compareFractions,
  type Fraction,
  fraction,
  multiplyFractions,
  subtractFractions,
} from '@sheafbook/units';

/** How often somebody came of the times they signed up. Units: times. Errors: none. */
export type ShowRecord = { readonly shows: number; readonly signed: number };

/**
 * How likely somebody comes, leaning on 4 of 5 until they have a record of their own.
 * Units: none, 0 to 1. Errors: AssertionError when they came more often than they signed.
 * Source: a Beta(4, 1) prior; its weight is common practice, no source.
 */
export function showRate({ shows, signed }: ShowRecord): Fraction {
  assertWhole(shows, 'shows');
  assertWhole(signed, 'signed');
  assert(shows <= signed, 'nobody comes more often than they sign up');
  return fraction(shows + 4, signed + 5);
}

/**
 * How likely each number of people comes, exactly.
 * Units: none. Shape: one for 0, 1, … all of them. Errors: as `showRate`.
 * Source: the Poisson binomial distribution, by its recurrence.
 */
export function comingDistribution(records: readonly ShowRecord[]): Fraction[] {
  let chances = [fraction(1)];
  for (const record of records) {
    const comes = showRate(record);
    const stays = subtractFractions(fraction(1), comes);
    const longer = chances.concat(fraction(0)); // one more person can come than before
    chances = longer.map((chance, count) => {
      const without = multiplyFractions(chance, stays);
      const before = longer[count - 1];
      return before ? addFractions(without, multiplyFractions(before, comes)) : without;
    });
  }
  return chances;
}

/** How likely at least so many come. Units: people; 0 to 1. Errors: AssertionError when `people` is not whole and ≥ 0. */
export function chanceOfAtLeast(records: readonly ShowRecord[], people: number): Fraction {
  assertWhole(people, 'people');
  return comingDistribution(records).slice(people).reduce(addFractions, fraction(0));
}

/** How many come on average. Units: people. Errors: as `showRate`. */
export function expectedComing(records: readonly ShowRecord[]): Fraction {
  return records.map(showRate).reduce(addFractions, fraction(0));
}

/** Nine in ten: sign up more people until it is that likely. Units: none. Errors: none. Source: common practice, no source. */
export const SURE_ENOUGH = fraction(9, 10);

/**
 * How many more people without a record to ask until enough come nine times in ten.
 * Units: people. Errors: as `chanceOfAtLeast`.
 */
export function morePeopleToAsk(records: readonly ShowRecord[], people: number): number {
  const asked = [...records];
  while (compareFractions(chanceOfAtLeast(asked, people), SURE_ENOUGH) < 0) {
    asked.push({ shows: 0, signed: 0 });
  }
  return asked.length - records.length;
}
