const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The words of fixing a buy and of ordering it. */
export const en = {
  fixingTitle: (bags: string, total: string, currency: string) =>
    `Fixed now, this buy is ${bags} for ${total} ${currency}.`,
  bagsOf: (bags: number, food: string) => `${s(bags, 'bag', 'bags')} of ${food.toLowerCase()}`,
  nothingBought: 'As pledges stand, nothing would be bought.',
  nobodyLeftOut: 'Nobody is left out.',
  leftOut: (count: number) => `${s(count, 'pledge gets', 'pledges get')} nothing.`,
  whoGetsWhat: 'Who gets what',
  household: 'Household',
  wanted: 'Wanted',
  gets: 'Gets',
  unfilled: 'Common stock',
  sum: 'Together',
  whoIsLeftOut: 'Who is left out, and why',
  because: 'Because',
  reasons: {
    ceiling: 'its price is above the highest that they named',
    'does-not-fit': 'no whole bag comes together for it',
    'line-not-bought': 'too little is wanted for a bag',
    'no-quote': 'no quote stands for this food',
    substitute: 'the price is above their highest; they get their substitute',
    override: 'left out by hand',
  } as Record<string, string>,
  instead: (food: string) => `instead: ${food.toLowerCase()}`,
  watch: 'Look at this first',
  cheaper: (food: string, bags: number, cost: string) =>
    `${food}: ${s(bags, 'bag', 'bags')} would change the bill by ${cost}. A larger order costs no more, so place that one.`,
  lapsesSoon: (supplier: string, day: string) =>
    `The quote of ${supplier} stands until ${day}; deposits need about three days.`,
  certificate: (isProven: boolean): string =>
    isProven
      ? 'No other fill of these pledges is better; that is proven.'
      : 'This is the best fill that was found in time.',

  fixTitle: 'Fix this buy',
  fixWords: (households: number, mass: string, percent: number) =>
    `Promises ${mass} to ${s(households, 'household', 'households')} and asks each for a deposit of ${percent} % of its estimate. Pledges can’t be changed after that.`,
  fixNow: 'Fix this buy',
  cantFix: 'It can’t be fixed yet.',
  byHand: 'Set bags and shares by hand',
  byHandWords: 'Only what you change is sent. The reason is kept with the buy for everyone to read.',
  bagsOfOffer: (bag: string, supplier: string) => `Bags of ${bag} from ${supplier}`,
  getsOf: (name: string, unit: string) => `${name}, ${unit}`,
  holds: (at: { bags: string; allotted: string; left: string }) =>
    `The bags hold ${at.bags}; ${at.allotted} are given out, ${at.left} are left for common stock.`,
  overBy: (mass: string) => `${mass} more are given out than the bags hold.`,
  reason: 'Reason',
  reasonHint: 'Why the reckoned fill is not taken.',
  reasonNeeded: 'Write down the reason.',
  fixByHand: 'Fix it as set by hand',
  wholeProblem: 'Write a whole number.',
  unchanged: 'Nothing was changed, so this is the reckoned fill.',

  fixedTitle: (name: string) => `${name} is fixed. This is what was promised.`,
  notHere: (name: string) => `${name} can’t be fixed at its stage.`,
  reopen: 'Open it for pledges again',
  reopenWords:
    'Promises, asks for deposits and agreements to order go. Deposits that came in stay held until it is fixed anew.',
  told: 'Their deposit stays held, and I told them',
  reopenNow: 'Open for pledges again',

  orderTitle: (name: string, total: string, currency: string) =>
    `${name}: the order comes to ${total} ${currency}.`,
  orderedTitle: (name: string, count: number, numbers: string) =>
    count === 1
      ? `${name} is ordered under number ${numbers}.`
      : `${name} is ordered under numbers ${numbers}.`,
  reckonedAt: (total: string) =>
    `It was reckoned at ${total} when the buy was fixed; the suppliers ask otherwise now.`,
  agreements: 'Two agreements',
  agreementsWords: 'The second of two people sends the order. What is missing is looked at then.',
  asCoordinator: 'Coordinator',
  asTreasurer: 'Treasurer',
  agreedBy: (name: string, at: string) => `${name} agreed, ${at}`,
  notYet: 'not yet',
  agreeTitle: (isLast: boolean): string => (isLast ? 'Agree, and send the order' : 'Agree to order'),
  agreeFirst: 'Your agreement is written down. Nothing is ordered until the other duty agrees too.',
  agreeLast: (total: string, suppliers: number) =>
    `Orders ${total} from ${s(suppliers, 'supplier', 'suppliers')}, each under a number of its own.`,
  agreeAs: (duty: string) => `Agree as ${duty.toLowerCase()}`,
  alreadyAgreed: 'You have agreed. The other duty comes next.',
  note: 'Note for the supplier',
  noteHint: 'Such as: please send a lorry with a tail-lift.',
  deposits: 'Deposits',
  depositIn: 'in or waived',
  depositMissing: 'still to come',
  depositState: 'State',
  confirmTerms: 'What the suppliers ask now',
  orders: 'The order',
  orderNo: (number: number) => `Order no. ${number}`,
  orderedOn: (day: string) => `ordered ${day}`,
  deliverTo: 'Deliver to',
  askFor: 'Ask for',
  food: 'Food',
  bag: 'Bag',
  bags: 'Bags',
  aBag: 'A bag',
  goods: 'Goods',
  freight: 'Freight',
  total: 'Goods and freight',
  cancelled: (note: string) => `Cancelled: ${note}`,
};

export type OrderWords = typeof en;
