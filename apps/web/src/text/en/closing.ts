const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Words of the end of a buy. */
export const en = {
  closing: 'Closing',
  toBuy: 'The buy',
  notForYou:
    'Coordinator, treasurer and reviewer see what keeps a buy from closing. Your own part stands in your statement.',
  tooEarly: 'A buy closes after it is shared out.',
  isClosed: (money: string) => `Closed at ${money}.`,
  isReady: (money: string) => `Everything is in: the buy stands at ${money} and can be closed.`,
  lacks: (count: number) => `${s(count, 'thing keeps', 'things keep')} the buy from closing.`,
  whatLacks: 'What is missing',
  times: (count: number) => `(${count})`,
  toSplit: 'To the splits',
  toBags: 'To the bags',
  seeSplits: 'The splits of this buy',
  clearing: 'On the buy’s clearing account',
  unassigned: 'Nobody’s yet',
  charged: 'Charged in all',
  commonStock: 'Common stock',
  noCharges: 'Nothing has been charged yet.',
  whoBears: 'Who bears what',
  household: 'Household',
  charge: 'Charge',
  whole: 'Whole',
  tieBreak: '* got the odd cent: it goes to the largest remainder, then to the lower seat.',
  costLines: {
    freight: 'Freight',
    'freight:by-weight': 'Freight by weight',
    'freight:by-value': 'Freight by value',
    'freight:per-household': 'Freight per household',
    levy: 'Store fund',
    other: 'Other costs',
    credit: 'Credit on the order',
    withheld: 'Withheld on withdrawal',
  } as Record<string, string>,
  closedWords: 'The account stays at 0.00: nothing can be posted on it any more.',
  rechargeTitle: 'The charges are behind the bills',
  rechargePosts:
    'Posts the difference to those who bear it: each cost is shared again, and every household gets what it paid too much or pays what it paid too little.',
  recharge: 'Charge anew',
  treasurerCloses: 'The treasurer closes it.',
  closeTitle: 'Close it for good',
  closePosts: 'Holds the clearing account and the deposits of this buy at 0.00 from here on.',
  close: 'Close the buy',
};
export type ClosingWords = typeof en;
