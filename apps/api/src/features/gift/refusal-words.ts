import type { GiftRefusal } from './match.ts';

/** Why something may not be given, as a sentence on one container. */
export const REFUSAL_WORDS: Readonly<Record<GiftRefusal, (code: string) => string>> = {
  'on-hold': (code) => `${code} is on hold.`,
  'treated-seed': (code) => `${code} holds treated seed, which is never food.`,
  mouldy: (code) => `${code} was found mouldy.`,
  'found-unfit': (code) => `What was found in ${code} lets it go to no pantry.`,
  opened: (code) => `${code} has been opened.`,
  'not-sealed': (code) => `${code} is not sealed.`,
  'maker-sealed-not-taken': () => 'The pantry does not take what a maker sealed.',
  'home-packed-not-taken': (code) => `${code} was packed at home, which the pantry does not take.`,
  'licensed-kitchen-not-taken': (code) =>
    `${code} was packed in a licensed kitchen, which the pantry does not take.`,
  'reduced-oxygen-not-taken': (code) =>
    `${code} was packed at home without oxygen, which the pantry takes only where its card says so.`,
  'oxygen-unknown': (code) =>
    `Nobody said how ${code} was packed, and the pantry takes no food that was packed at home without oxygen.`,
  'container-kind': (code) => `${code} is of a kind that the pantry does not take.`,
  'label-lacks': (code) => `The label of ${code} lacks something that the pantry asks for.`,
  'food-not-wanted': (code) => `${code} holds a food that the pantry does not want.`,
  allergen: (code) => `${code} holds an allergen that the pantry does not take.`,
  'too-little-life': (code) => `${code} keeps for fewer days than the pantry asks for: its gift has closed.`,
  'past-its-date': (code) => `${code} is past its date: its gift has closed.`,
  'heavier-than-a-visit': (code) => `${code} weighs more than the pantry takes at a time.`,
  'life-unknown': (code) => `Nobody has said how long the food in ${code} keeps.`,
  offered: (code) => `${code} is being offered to members.`,
  'already-out': (code) => `${code} is on another manifest already.`,
};
