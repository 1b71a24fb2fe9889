const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const en = {
  audit: 'Audit',
  traces: 'Traces',
  counts: 'Counts',
  year: 'Year',
  allHold: (count: number) => `The book holds: all ${count} checks hold.`,
  someFail: (failing: number, count: number) => `${failing} of ${count} checks do not hold.`,
  lookedAt: (entries: string, movements: string) =>
    `Recomputed just now from ${entries} entries and ${movements} movements.`,
  reviewNext: 'What a review does next',
  drawTraces: 'Draw ten traces',
  countStock: 'Count the common stock',
  signYear: 'Sign the year',
  invariant: 'What must hold',
  figure: 'Figure',
  state: 'State',
  holds: 'holds',
  fails: 'fails',
  exceptions: 'Exceptions',
  fromDay: 'From',
  toDay: 'Through',
  daysProblem: 'The last day lies before the first.',
  corrections: (count: number) => `${s(count, 'entry was', 'entries were')} taken back`,
  overrides: (count: number) => `${s(count, 'thing was', 'things were')} decided against the rule`,
  day: 'Day',
  takenBack: 'Taken back',
  decided: 'Decided',
  money: 'Money',
  undid: (no: number, undone: number, what: string) => `Entry ${no} undoes ${undone}: ${what}`,
  overrideKinds: {
    'fill-overridden': 'Bags decided by hand',
    'stage-moved': 'Buy moved',
    'deposit-waived': 'Deposit waived',
    'invoice-voided': 'Bill taken back',
    'written-off': 'Debt written off',
    'tin-differed': 'The tin differed',
    'line-set-aside': 'Line of the bank set aside',
    'fund-overpromised': 'Promised beyond what the fund had free',
  } as Record<string, string>,
  accessLog: 'Looks into other households’ things',
  looks: (count: number) => `${s(count, 'look', 'looks')} into other households’ things`,
  month: 'Month',
  who: 'Who',
  whatFor: 'What for',
  looksHead: 'Looks',
  householdsHead: 'Households',
  downloadLooks: 'Download the looks as CSV',
  canTrace: 'Can each be traced to its supplier and back?',
  allReachOrigin: 'Every container reaches a delivery or an intake.',
  notAllReachOrigin: 'Not every container reaches a delivery or an intake.',
  drawTells: 'Each household whose container is drawn finds in its record that you looked.',
  drawToday: (day: string) => `Draw ten by the day ${day}`,
  tracedEntry: (count: number) => `leads to ${s(count, 'movement', 'movements')}`,
  tracesTitle: 'Ten traces, drawn by a seed.',
  drawnTitle: (seed: string) => `Ten traces, drawn by “${seed}”.`,
  seed: 'Seed',
  seedHint: 'Any text. The same seed draws the same sample on anyone’s machine.',
  draw: 'Draw',
  drawnFrom: (count: number, all: number) =>
    `${count} of ${s(all, 'bag, container or entry of money', 'bags, containers and entries of money')}.`,
  addsUp: 'adds up',
  doesNotAddUp: 'does not add up',
  wayOf: (of: { food: string; supplier: string; mark: string; buy: string; day: string }) =>
    `${of.food} from ${of.supplier}${of.mark ? `, lot ${of.mark}` : ''}, for ${of.buy}, arrived ${of.day}.`,
  way: 'Way',
  place: 'Place',
  whose: 'Whose',
  gramsHead: 'Grams',
  ways: {
    bag: { in: 'into the bag', out: 'out of the bag', left: 'still in it' },
    container: { in: 'into the container', out: 'out of the container', left: 'still in it' },
  } as Record<string, Record<string, string>>,
  endsAtHome: 'ends at home',
  inOnly: 'Poured in; what became of it is the household’s own.',
  containerOf: (kind: string, food: string, isCommon: boolean): string =>
    `${kind}, ${food}, ${isCommon ? 'common stock' : 'of a household'}.`,
  lotOf: (supplier: string, mark: string, buy: string): string =>
    `From ${supplier}${mark ? `, lot ${mark}` : ''}, for ${buy}.`,
  openingOf: (note: string, importNo: number | null): string =>
    `${note || 'Opening stock'}${importNo === null ? '' : `, brought in by import ${importNo}`}.`,
  fromBag: (code: string, grams: string, day: string) => `${grams} g from bag ${code}, which arrived ${day}.`,
  entryHidden: 'An entry of money. What it says is for treasurer and reviewer.',
  entryOf: (day: string, by: string, buy: string | null): string =>
    `${day}, written by ${by}${buy ? `, for ${buy}` : ''}.`,
  toEntry: (no: number) => `Open entry ${no}`,
  placesOf: {
    supplier: 'from the supplier',
    bag: 'the bag',
    home: 'taken home',
    container: 'a container',
    eaten: 'eaten',
    given: 'given',
    animals: 'animals',
    composted: 'composted',
    spilled: 'spilled',
    sampled: 'sampled',
    discarded: 'discarded',
    transformed: 'transformed',
    moisture: 'dried, or grown damper',
    unexplained: 'unexplained',
  } as Record<string, string>,
  owners: { unassigned: 'nobody yet', common: 'common stock', household: 'a household' } as Record<
    string,
    string
  >,
  inIsOut: (came: string, went: string, left: string) => `${came} in = ${went} out + ${left} left`,
  howDrawn: 'How they are drawn, to draw them again',
  drawnBy:
    'Each code (of a bag, of a container, and # with the number of an entry of money) is hashed with SHA-256 after the seed and a line feed. Drawn are the four bags, three containers and three entries with the smallest hashes; places that a kind can’t fill go to the smallest hashes of the rest.',
  download: 'Download as CSV',
  countMatches: 'Do the counts match?',
  countedOf: (counted: number, all: number) => `${counted} of ${all} were counted.`,
  differenceWorth: (money: string) => `What differs and is not booked is worth ${money}.`,
  noCommonStock: 'There is no common stock to count.',
  countsTitle: (count: number, differing: number): string =>
    differing === 0
      ? `${s(count, 'vessel', 'vessels')} of common stock, and no difference is open.`
      : `${s(count, 'vessel', 'vessels')} of common stock; ${s(differing, 'differs', 'differ')} from the book.`,
  findStock: 'Find by code or food',
  notCommon: (code: string): string => `The book has no common stock under ${code}.`,
  allStock: 'Show all of it again',
  bookSays: (mass: string) => `book: ${mass}`,
  notCounted: 'not counted',
  meets: 'meets the book',
  differs: (mass: string, money: string, isBooked: boolean) =>
    `${mass}, ${money}${isBooked ? ', booked' : ''}`,
  bookDifference: 'Book the difference',
  bookSentence: (mass: string, money: string) =>
    `Moves ${mass} to or from the unexplained, and ${money} between 1400 Common food stock and 5000 Losses.`,
  reason: 'Reason',
  post: 'Post',
  countOf: (code: string) => `Counted in ${code}`,
  massProblem: 'Write a weight, such as 25, 25 lb or 12.5 kg.',
  writeDown: 'Write down',
  neverClosed: 'The books have not been closed yet.',
  closedThrough: (day: string) => `The books are closed through ${day}.`,
  savings: 'What was saved against shelf price',
  yearEnd: 'The end of a year',
  yearEnded: (day: string) =>
    `The last year ended on ${day}. Income and expenses must be in the fund when a year is closed; a close within a year only lists them.`,
  throughDay: 'Through the day',
  nothingToCarry: 'Nothing came in or went out that is not carried yet.',
  toFund: 'To 3000 Store fund',
  carry: 'Carry it into the store fund',
  carrySentence: (money: string) =>
    `Posts one entry that leaves each of these at 0.00 and ${money} in the fund.`,
  close: (day: string) => `Close the books through ${day}`,
  closeButton: 'Close',
  closeSentence: (day: string, open: number): string =>
    `Nothing can be posted to ${day} or earlier any more, ever. A digest of what is closed is kept.${
      open > 0 ? ' What is listed above stays open.' : ''
    }`,
  openAt: (day: string) => `What would be open on ${day}`,
  nothingOpen: 'nothing is open',
  blocksClose: 'settle this first',
  staysOpen: 'would stay open',
  missingAtClose: {
    'results-not-carried': (count, money, day) =>
      `${s(count, 'account', 'accounts')} of income and expenses, ${money}, not carried into the store fund${
        day ? ` for the year that ended on ${day}` : ''
      }.`,
    'buys-not-clear': (count) =>
      `${s(count, 'buy was', 'buys were')} shared out or called off, and not all is cleared:`,
    'buys-open': (count) => `${s(count, 'buy is', 'buys are')} not closed:`,
    'claims-open': (count, money) => `${s(count, 'claim', 'claims')} on suppliers open, ${money}:`,
    'deposits-held': (count, money) => `Deposits of ${money} held on ${s(count, 'buy', 'buys')}:`,
    'bank-differs': (_, money, day) => `Bank and book differ by ${money}${day ? ` on ${day}` : ''}.`,
    'bank-not-told': (count, _, day) =>
      `${s(count, 'entry', 'entries')} of the bank since it told its balance${day ? ` on ${day}` : ''}.`,
    'tin-not-counted': (count) => `${s(count, 'entry', 'entries')} of the tin since it was counted.`,
    'stock-not-counted': (count) =>
      `${s(count, 'bag or can', 'bags and cans')} of common stock not counted since the books were closed last.`,
    'stock-differs': (count) =>
      `${s(count, 'count', 'counts')} of common stock with a difference not booked.`,
  } as Record<string, (count: number, money: string, day: string | null) => string>,
  throughTitle: (day: string) => `Closed through ${day}`,
  closedBy: (name: string, at: string, entries: number | null): string =>
    entries === null ? `${name}, ${at}.` : `${name}, ${at}: ${s(entries, 'entry', 'entries')}.`,
  noDigest: 'This close kept no digest.',
  digestHolds: 'the digest still holds',
  digestFails: 'the digest no longer holds',
  takeText: 'Take along what it is reckoned from',
  takeKinds: 'Of which kind the accounts in it are (CSV)',
  howSummed: 'sha256sum of that text gives the digest. Each text begins with the digest of the close before.',
  duties: { reviewer: 'reviewer', treasurer: 'treasurer', coordinator: 'coordinator' } as Record<
    string,
    string
  >,
  signed: (duty: string) => `signed as ${duty}`,
  notSigned: (duty: string) => `not signed by the ${duty}`,
  signAs: (duty: string) => `Sign as ${duty}`,
  remarks: 'Remarks and exceptions',
  signSentence: (digest: string) =>
    `You sign what has the digest ${digest}… A signature is never taken back.`,
  sign: 'Sign',
};
export type ReviewWords = typeof en;
