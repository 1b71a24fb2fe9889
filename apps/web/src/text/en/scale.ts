const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const off = (grams: number): string =>
  grams === 0 ? 'to the gram' : `${Math.abs(grams)} g too ${grams > 0 ? 'much' : 'little'}`;

/** Whether a scale is true: what it shows of a known weight, and when that was written down. */
export const en = {
  ask: 'Is the scale true?',
  checked: 'Is the scale checked?',
  title: 'Is it true?',
  name: (item: string, unitNo: number) => `${item} ${unitNo}`,
  verdicts: {
    'never-checked': 'Not checked',
    off: 'Off',
    'check-is-old': 'Checked too long ago',
    true: 'True',
  },
  says: {
    'never-checked': (_grams: number, _day: string, _days: number) =>
      'Nobody has laid a known weight on it yet.',
    off: (grams: number, day: string, _days: number) =>
      `On ${day} it showed ${off(grams)}: do not weigh on it.`,
    'check-is-old': (_grams: number, day: string, days: number) =>
      `Last checked on ${day}, ${s(days, 'day', 'days')} before: lay a known weight on it again.`,
    true: (grams: number, day: string, _days: number) =>
      grams === 0
        ? `On ${day} it showed the weight to the gram.`
        : `On ${day} it showed ${off(grams)}, within its limit.`,
  },
  none: 'No thing in the list is a scale. Tick ‘Something is weighed on it’ where one is.',
  toCheck: 'Check it',
  noneBooked: 'No scale is booked for this day. Check the one that stands there with a known weight.',
  noneGood:
    'No scale of the group has a good check of the last 30 days. Lay a known weight on one before you weigh anything out.',
  toEquipment: 'See the scales',
  forDay: 'Scales of the day',
  words:
    'Lay on a weight whose grams you know, and write down what it shows. What it may be off by is said by its maker, or by your group.',
  laid: 'Weight laid on, in grams',
  shown: 'What the scale shows, in grams',
  limit: 'It may be off by, in grams',
  day: 'Day',
  gramsProblem: 'Write whole grams, such as 10000.',
  save: 'Write the check down',
  saved: 'It is written down.',
  checks: 'Its checks',
  noChecks: 'None is written down yet.',
  check: (day: string, who: string, unitNo: number) => `${day}, no. ${unitNo}, by ${who}`,
  reading: (laid: string, shown: string, limit: string) =>
    `${laid} g laid on, ${shown} g shown, limit ${limit} g`,
};
export type ScaleWords = typeof en;
