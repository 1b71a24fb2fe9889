const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

const DAYS_A_YEAR = 365.25;
const DAYS_A_MONTH = 30.4375;
/** Years from two on, months below that: no finer than anybody knows. */
const time = (days: number): string =>
  days >= 2 * DAYS_A_YEAR
    ? s(Math.round(days / DAYS_A_YEAR), 'year', 'years')
    : s(Math.round(days / DAYS_A_MONTH), 'month', 'months');

/** What a food can be kept in, how long, and what that costs. */
export const en = {
  title: 'Ways to keep it',
  toShelf: 'Shelf',
  opening:
    'Name a food and how much of it: here stands what it can be kept in, how long, and what that costs.',
  yours: 'Yours, in bags',
  ofYours: (food: string, mass: string) => `${food}, ${mass}`,
  food: (name: string) => `Food: ${name}`,
  otherFood: 'Another food',
  mass: 'How much',
  massProblem: 'Write a weight, such as 120 lb or 50 kg.',
  moisture: 'Moisture in per cent, if measured',
  moistureHint: 'Leave it empty when nobody has measured it.',
  moistureProblem: 'Write per cent, such as 9.5, or nothing.',
  ask: 'Choose a food and write how much.',
  cheapest: 'Cheapest for each year kept',
  first: 'Keeps longest; its price is not known',
  others: (count: number) => `${s(count, 'other way', 'other ways')} that may be used`,
  modest: 'Something modest and safe is better than nothing.',
  way: (kind: string, treatment: string) => `${kind}, ${treatment.toLowerCase()}`,
  counts: (containers: number, each: string, last: string) =>
    containers === 1
      ? `1 container with ${last}.`
      : `${containers} containers, ${each} in each, ${last} in the last.`,
  packets: (list: string) => `Absorbers: ${list}.`,
  packet: (count: number, size: string) => `${count} × ${size} ml`,
  dryIce: (mass: string) => `Dry ice: ${mass}, and some more for what turns to gas on the way.`,
  needs: (what: string) => `It needs: ${what}.`,
  keeps: (low: number, likely: number, high: number) =>
    time(low) === time(high)
      ? `An estimate: keeps about ${time(likely)} at 70 °F (21 °C), in the dark.`
      : `An estimate: keeps about ${time(likely)} at 70 °F (21 °C), in the dark; between ${time(low)} and ${time(high)}.`,
  lifeUnknown: 'Nobody has said how this food keeps.',
  costs: (cost: string, perYear: string | null) =>
    perYear === null ? `Costs ${cost} in all.` : `Costs ${cost} in all, ${perYear} for each year kept.`,
  costUnknown: 'What it costs is not known: a price is missing.',
  keepDark: 'It lets light in: keep it dark.',
  wantsOuter: 'It wants a box, a pail or a crate around it.',
  cautions: 'Cautions',
  deferTo: (who: string) => `First comes the word of: ${who}.`,
  refused: (count: number) => `${s(count, 'combination', 'combinations')} that should not be used, and why`,
  nearest: (treatment: string) => `What does in this container: ${treatment.toLowerCase()}.`,
  noBulk: 'Nobody knows how heavy this food lies, so containers can’t be counted.',
};

export type WaysWords = typeof en;
