import { days, en as eatFirst } from './eat-first.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** What to eat next, and what would not be eaten in time. */
export const en = {
  title: 'Eat next',
  shelf: 'Your shelf',
  nothing: 'There is nothing on your shelf to eat from yet.',
  nothingWords:
    'Record what you have at home, or pack what a buy brought you; then this says what to open first.',
  inTime: 'At your pace all of it is eaten in time.',
  atRisk: eatFirst.atRisk,
  eatNext: 'Eat next',
  take: 'To the kitchen',
  takeOne: (code: string) => `Take ${code} to the kitchen`,
  taken: (mass: string, food: string) => `${mass} of ${food} are in the kitchen.`,
  thenNext: (code: string) => `After it comes ${code}.`,
  lastOne: 'It was the last of this food.',
  earlier: (code: string) =>
    `${code} ends earlier and still stands shut; it would have been the one to open.`,
  undo: 'Put it back',
  open: 'open',
  noPlace: 'nobody said where',
  keeps: eatFirst.keeps,
  untold: 'nobody said how it keeps',
  wholeQueue: (count: string) => `Show all ${count}`,
  tooMuch: (mass: string) => `${mass} too much`,
  leaveShut: 'Leave these shut',
  theKitchen: 'what is in the kitchen',
  oneIsOpen: (food: string, count: number, code: string) =>
    `${food}, ${s(count, 'container', 'containers')}: finish ${code} first, it is open.`,
  olderButKeeps: (food: string, count: number, code: string) =>
    `${food}, ${s(count, 'container', 'containers')}: older than ${code}, and still good for longer. Being old is no reason to open one.`,
  opensCosts: (count: number) => `Opened now, it would lose ${days(count)} of its life.`,
  foundUnfit: 'Found unfit: not in the queue',
  foundUnfitWords: 'The last look found what people do not eat. Taste none of it.',
  foundUnfitOpen: 'Open one here for what was found and what to do.',
  inKitchen: 'In the kitchen',
  since: (day: string) => `since ${day}`,
  eaten: 'Eaten',
  heldInKitchen: 'On hold: don’t eat it',
  eatenOne: (food: string) => `${food} is eaten`,
  riskTitle: 'What would pass its day, by month',
  whatIf: 'What if',
  asItIs: 'Nothing changes',
  eatFaster: 'You ate half as much again',
  repack: 'You packed anew what may be sealed in cans',
  give: 'You gave away what you would not begin in time',
  moveTo: (place: string) => `All stood in: ${place}`,
  asked: 'Choose one to see a second line.',
  saves: (saved: string, left: string, given: string) =>
    `That would save ${saved}; ${left} would still be too much. Given away: ${given}.`,
  month: 'Month',
  ifNothing: 'If nothing changes',
  ifSo: 'If so',
  inAll: 'In all',
  byPlace: 'By place',
  place: 'Place',
  paceTitle: 'What a month eats',
  paceWords: 'The steady pace is the least that eats everything in time.',
  food: 'Food',
  eatenAMonth: 'You eat',
  steadyAMonth: 'Steady pace',
  past: (mass: string) => `(${mass} past its day)`,
  howReckoned:
    'How long each keeps is an estimate from its pack, its treatment and the warmth of its places. What your eaters need of a group is taken from its foods as they are there (common practice, no source). Food that is swollen, wet, mouldy or smells wrong is never tasted; ask your county extension office.',
};

export type RotationWords = typeof en;
