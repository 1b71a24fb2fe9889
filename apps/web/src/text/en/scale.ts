const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const off = (grams: number): string =>
  grams === 0 ? 'to the gram' : `${Math.abs(grams)} g too ${grams > 0 ? 'much' : 'little'}`;

/** What a thermometer shows beside what it should. */
type OffDegrees = { readonly degrees: string; readonly isHigh: boolean; readonly isExact: boolean };
const high = ({ degrees, isHigh, isExact }: OffDegrees): string =>
  isExact ? 'exactly what it should' : `${degrees} too ${isHigh ? 'much' : 'little'}`;

/** Whether a scale is true: what it shows of a known weight, and when that was written down; thermometers likewise. */
export const en = {
  ask: 'Is the scale or thermometer true?',
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
  thermometer: {
    says: {
      'never-checked': (_off: OffDegrees, _day: string, _days: number) =>
        'Nobody has held it in a known temperature yet.',
      off: (off: OffDegrees, day: string, _days: number) =>
        `On ${day} it showed ${high(off)}: do not go by it.`,
      'check-is-old': (_off: OffDegrees, day: string, days: number) =>
        `Last checked on ${day}, ${s(days, 'day', 'days')} before: hold it in a known temperature again.`,
      true: (off: OffDegrees, day: string, _days: number) =>
        off.isExact
          ? `On ${day} it showed ${high(off)}.`
          : `On ${day} it showed ${high(off)}, within its limit.`,
    },
    none: 'No thing in the list is a thermometer. Tick ‘It is a thermometer’ where one is.',
    words: {
      F: 'Hold it in something whose temperature you know, and write down what it shows once it stands still. Crushed ice with a little water, stirred, is 32 °F. Water boils at 212 °F at sea level, and at fewer degrees the higher you live: write what that is at your place. What it may be off by is said by its maker, or by your group.',
      C: 'Hold it in something whose temperature you know, and write down what it shows once it stands still. Crushed ice with a little water, stirred, is 0 °C. Water boils at 100 °C at sea level, and at fewer degrees the higher you live: write what that is at your place. What it may be off by is said by its maker, or by your group.',
    },
    caution:
      'Boiling water and its steam burn: keep children away and your hand out of the steam. Put a room thermometer into water only where its maker says that it may get wet; else lay it beside one that is true.',
    known: (unit: string) => `What it should show, in °${unit}`,
    shown: (unit: string) => `What the thermometer shows, in °${unit}`,
    limit: (unit: string) => `It may be off by, in °${unit}`,
    degreesProblem: 'Write degrees, such as 32 or 0.5.',
    reading: (known: string, shown: string, limit: string) =>
      `should show ${known}, showed ${shown}, limit ${limit}`,
  },
};
export type ScaleWords = typeof en;
