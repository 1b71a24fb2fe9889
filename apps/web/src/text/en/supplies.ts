const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Supplies on hand, the list for the shop, and what a packing day costs. */
export const en = {
  shopping: 'What to buy',
  toShopping: 'What to buy',
  toShelf: 'Supplies on hand',
  toSettlement: 'What the day cost',
  backToDay: 'The packing day',
  nothingToBuy: (containers: number) =>
    containers === 0
      ? 'Nobody wants anything packed yet, so there is nothing to buy.'
      : `Nothing is to be bought for ${s(containers, 'container', 'containers')}.`,
  keepsNone: (containers: number) =>
    `The store keeps none of what ${s(containers, 'container needs', 'containers need')}.`,
  toBuy: (count: number, cost: string | null) =>
    cost === null
      ? `${s(count, 'thing is', 'things are')} to be bought; not every price is known.`
      : `${s(count, 'thing is', 'things are')} to be bought, for ${cost}.`,
  packs: (packs: number, pieces: string, isIce: boolean) =>
    `${s(packs, 'pack', 'packs')} of ${pieces}${isIce ? ' g' : ''}`,
  neededOnHand: (needed: string, onHand: string) => `${needed} needed, ${onHand} on hand`,
  ticksKept: 'Ticks stay on this phone, also without a signal and after it was shut.',
  writeDown: (count: number) => `Write down what was bought (${count})`,
  needs: 'What the day needs',
  supply: 'Supply',
  used: 'Needed',
  withSpare: 'With spares',
  onHand: 'On hand',
  spareSays: 'Spares: 3 in 100 cans and lids, 5 absorbers, 10 labels (common practice, no source).',
  notKept: 'What the store keeps none of',
  broughtByHouseholds: (count: string, kind: string) => `${kind}: households bring ${count}, clean and dry.`,
  noAbsorbers: (count: string, size: string) =>
    `Absorbers of ${size} ml: ${count} are needed. Keep them first.`,
  noDryIce: (grams: string) => `Dry ice: ${grams} g are needed. Keep it first.`,
  toBring: 'To hand on the day',
  toBringSays: 'A list of common practice, no source. Leave out what your line does without.',
  broughtAlong: {
    'over-lids': 'Plastic over-lids',
    clothing: 'Gloves, hair nets and aprons',
    cleaning: 'Brushes, white cloths, sanitiser, bin bags',
    measuring: 'A known weight for the scale; seam gauge or micrometer',
    spares: 'Spare chuck pins, tape, markers',
    power: 'Extension lead with a residual-current guard',
    safety: 'First-aid box and a step stool',
    papers: 'Blank run sheets and seam logs, printed',
  },
  openPacks: 'Opened packs',
  packLasts: (name: string, pieces: string, minutes: string) =>
    `${name}: a pack of ${pieces} lasts ${minutes} minutes at the line.`,
  intoJars: (jars: number, window: string, served: string) =>
    `Put it into ${jars} jars when you open it, filled to the brim: ${served} containers can be closed in the ${window} minutes that a packet may lie open.`,
  oneJar: (window: string) => `It is used up before its ${window} minutes in the open are over.`,
  absorberCaution:
    'Open the next pack only when the open one lasts no longer than a minute. Never seal a packet that feels hard or lay open over 30 minutes; the maker’s paper wins.',
  bought: 'What was bought',
  whoPaid: 'Who paid',
  ownHousehold: (name: string) => `${name}, in the shop`,
  bank: 'The bank',
  tin: 'The cash tin',
  nobody: 'Nobody: it was there, or given',
  paidFor: (name: string, pieces: string) => `Paid for ${pieces} × ${name}`,
  moneyProblem: 'Write an amount, such as 12.50.',
  boughtSays: 'The pieces come into the store’s stock, and whoever paid is owed for them.',
  writeItDown: 'Write it down',
  waits: 'A purchase waits on this phone for a signal.',
  sendAgain: 'Send it again',
  throwAway: 'Throw it away',
  lastGoodDay: (name: string) => `${name}: good until (as the pack says, if it does)`,
  goodUntil: (days: string) => `good until ${days}`,
  goodPieces: (day: string, pieces: string) => `${day} (${pieces})`,
  spoils: {
    past: (name: string, pieces: string, day: string) =>
      `${name}: ${pieces} of those on hand were good until ${day} only. Don’t pack with them: throw them away and count what is left. The maker’s paper comes first.`,
    passes: (name: string, pieces: string, day: string) =>
      `${name}: ${pieces} of those on hand are good until ${day} only, so not on the packing day. They are not counted for it.`,
  },
  shelfStands: (worth: string) => `Supplies on hand cost ${worth}.`,
  shelfEmpty: 'The store keeps no supplies yet.',
  pack: 'Pack',
  worth: 'Cost',
  add: 'Keep a further supply',
  addIt: 'Keep it',
  name: 'Name',
  sort: 'What it is',
  sorts: {
    container: 'Container',
    lid: 'Lid',
    liner: 'Liner',
    carton: 'Carton',
    absorber: 'Oxygen absorber',
    'dry-ice': 'Dry ice (in grams)',
    label: 'Label',
    glove: 'Gloves',
    other: 'Something else, once a day',
  },
  forKind: 'For which container',
  size: 'Oxygen that one takes up (ml)',
  holds: 'How many containers one holds',
  packPieces: 'Pieces in a pack',
  packPrice: (currency: string) => `Price of a pack (${currency})`,
  countProblem: 'Write a whole number.',
  count: 'Count what is there',
  which: 'Which supply',
  counted: (book: string) => `Counted (the book says ${book})`,
  why: 'Why it differs',
  countIt: 'Book the difference',
  buyOne: 'Write down what came',
  packsCame: 'Packs that came',
  next: 'Go on',
};
export type SuppliesText = typeof en;
