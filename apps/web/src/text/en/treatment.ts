const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** What can be done to food as it is packed, and what should not be. */
export const en = {
  title: 'Treatments',
  toKinds: 'Container kinds',
  stands: (count: number) => `${s(count, 'way', 'ways')} to treat food as it is packed.`,
  opening:
    'None of this dries food, and none is a way of canning. Local codes, product labels and trained people come first.',
  most: (mass: string) => `At most ${mass} at a time.`,
  deferTo: (who: string) => `First comes the word of: ${who}.`,
  noSteps: 'Fill and close. Clean, dry food in a closed container is better than none.',
  wait: (time: string) => `Then wait ${time}.`,
  days: (count: number) => s(count, 'day', 'days'),
  hours: (count: number) => s(count, 'hour', 'hours'),
  minutes: (count: number) => s(count, 'minute', 'minutes'),
  containers: 'containers',
  foods: 'foods',
  fits: (what: string, count: number, of: number) => `Fits ${count} of ${of} ${what}`,
  which: (what: string) => `Which ${what}, and why not the others`,
  testFirst: (foods: string) => `Measure the moisture first, 10 % at most: ${foods}.`,
  notToDo: 'What not to do',
  idea: 'People try to',
  why: 'Why not',
  source: 'Says who',
};

export type TreatmentWords = typeof en;
