import { keptTime } from '../kept-time.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

const TIMES = { day: ['day', 'days'], month: ['month', 'months'], year: ['year', 'years'] } as const;

/** How long a container keeps and why, and where it stands. */
export const en = {
  title: 'How long it keeps',
  time: (days: number): string => keptTime(days, TIMES),
  keeps: (time: string, year: string) => `It keeps about ${time} where it stands: eat it first in ${year}.`,
  eatNow: (pastDays: number) =>
    pastDays === 0
      ? 'Eat it now, after a look at it.'
      : `It is past its day by about ${keptTime(pastDays, TIMES)}: eat it now, after a look at it.`,
  unfit: 'Nobody is to eat it: what the last look found does not allow it.',
  estimate: 'This is a careful estimate.',
  classUnknown: 'Nobody has said how this food keeps, so no time is given.',
  atLeast: 'At least',
  likely: 'Likely',
  atMost: 'At most',
  usedUp: 'Used up so far',
  why: 'Why',
  packs: {
    'can-oxygen-free': 'Sealed can without oxygen.',
    'foil-oxygen-free': 'Foil without oxygen.',
    'glass-oxygen-free': 'Glass without oxygen.',
    'pet-oxygen-free': 'Plastic bottle without oxygen.',
    'closed-with-air': 'Closed, with air in it.',
    'bare-pail': 'Bare plastic, which lets oxygen through slowly.',
    'open-sack': 'Open, or a wall that nobody knows.',
  } as Record<string, string>,
  reasons: {
    pack: 'The pack is the weakest link: the food itself would keep longer.',
    food: 'The food is the weakest link: the pack would allow more.',
    moisture: 'It is moist: each per cent above 10 halves its life.',
    'moisture-unknown': 'Nobody measured its moisture.',
    light: 'Light gets to it, or nobody has said that it stands in the dark.',
    opened: 'It is opened.',
    'found-soon': 'What the last look found gives it 30 days from then (common practice, no source).',
    'found-unfit': 'The last look found what people do not eat.',
    'warm-past': 'It stood warmer than 70 °F (21 °C), which used up its life faster.',
    'gap-in-readings': 'Some days nobody read the warmth; there the warmer neighbour counts.',
    'told-history': 'How warm it was is the word of whoever kept it.',
    'unknown-history': 'Where it stood, or how warm it was there, is not known: it is taken as warm.',
    'unknown-treatment': 'What was done as it was packed is not known: it is taken as nothing.',
    'unknown-container': 'What its wall keeps out is not known: it is taken as open.',
    estimate: 'No published figure stands behind this; it is common practice.',
  } as Record<string, string>,
  helps: 'What would help most',
  moveTo: (place: string) => `Move it to: ${place}`,
  ways: {
    repack: 'Pack it anew with an absorber',
    'repack-in-can': 'Pack it into a sealed can with an absorber',
  } as Record<string, string>,
  stays: 'Where it stood, and the life that used up',
  place: 'Place',
  days: 'Days',
  used: 'Life used, in days at 70 °F',
  unknownPlace: 'A place nobody has named',
  since: (day: string, degrees: string, known: string) => `since ${day}, as ${degrees} ${known}`,
  known: {
    read: '',
    told: '(as told)',
    gap: '(with gaps)',
    unknown: '(taken as, nobody knows)',
  } as Record<string, string>,
  moveTitle: 'Say where it stands',
  sinceWhen: 'Since',
  ofStore: (name: string) => `${name} (the store’s)`,
  wholeLot: (count: number) => `The ${s(count, 'other', 'others')} of this lot too`,
  move: 'It stands there',
  moved: 'It is in the book.',
};
export type KeepingWords = typeof en;
