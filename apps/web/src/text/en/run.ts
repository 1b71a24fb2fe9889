const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The words of whoever runs a buy: its page, its quotes, its fixing and its order. */
export const en = {
  runBuy: 'Run this buy',
  seeRun: 'How the buy is run',
  planOne: 'Plan a buy',
  stagesOf: 'Stages of the buy',
  stageAt: (at: number, of: number) => `${at} of ${of}`,

  planned: (name: string, foods: number, quotes: number) =>
    `${name} is being planned: ${s(foods, 'food', 'foods')}, ${s(quotes, 'quote', 'quotes')}.`,
  gathersDays: (name: string, days: number) => `${name} gathers pledges for ${s(days, 'day', 'days')} more.`,
  gathersToday: (name: string, at: string) => `${name} gathers pledges until ${at} today.`,
  gatheringOver: (name: string) => `The time to pledge in ${name} is over.`,
  tipPrice: (food: string, bags: number, extra: number) =>
    `${food}: ${s(bags, 'bag is', 'bags are')} filled; ${s(extra, 'more bag brings', 'more bags bring')} the next price.`,
  tipFreight: (food: string, bags: number, extra: number) =>
    `${food}: ${s(bags, 'bag is', 'bags are')} filled; ${s(extra, 'more bag brings', 'more bags bring')} free freight.`,
  fixedWaits: (name: string, count: number) =>
    `${name} is fixed. ${s(count, 'deposit is', 'deposits are')} still to come.`,
  fixedReady: (name: string) => `${name} is fixed. Nothing is missing but the two agreements to order.`,

  notOrderedYet: (name: string) => `${name} is not ordered yet. It is fixed first.`,
  nextStep: 'The next step',
  missingTitle: 'Still missing',
  see: 'See',
  whoMoves: (duties: string) => `This is for: ${duties}.`,
  duties: {
    coordinator: 'coordinator',
    treasurer: 'treasurer',
    packing_lead: 'packing lead',
    equipment_keeper: 'equipment keeper',
    reviewer: 'reviewer',
  } as Record<string, string>,

  openForPledges: 'Open for pledges',
  openPosts: (households: number, closes: string) =>
    `Every food can then be pledged for, by ${s(households, 'household', 'households')}, until ${closes}. Foods can no longer be added once somebody has pledged.`,
  lookBeforeFixing: 'Look before fixing',
  toOrder: 'To the order',
  toLanding: 'To the landing',
  toSplit: 'To the split',
  toClosing: 'To the closing',
  askTitle: (extra: number, food: string, by: string) =>
    `Ask for ${s(extra, 'more bag', 'more bags')} of ${food.toLowerCase()} by ${by}`,
  askWords: (extra: number, cost: string, saved: string) =>
    `${extra === 1 ? 'It costs' : 'They cost'} ${cost} between all. Those already in save ${saved} together.`,
  askFree: (saved: string) => `The bill in all does not rise by it. Those already in save ${saved} together.`,
  copyAsk: 'Copy the words for the neighbours',
  copied: 'Copied. Paste it where your neighbours talk.',
  copyByHand: 'Mark the words below and copy them.',
  askMessage: (at: { buy: string; food: string; mass: string; cost: string; saved: string; by: string }) =>
    `${at.buy}: ${at.mass} more of ${at.food.toLowerCase()} would bring everyone a lower price. In all it costs ${at.cost} more, and those already in save ${at.saved} together. Pledges close ${at.by}.`,

  quotesLanded: (food: string, quotes: number) => `${food}: ${s(quotes, 'quote', 'quotes')}, landed`,
  freightByOrder: 'each with its own freight',
  perUnitLanded: (unit: string): string => (unit === 'kg' ? '¢ a kilogram, landed' : '¢ a pound, landed'),
  curveLabel: (food: string) =>
    `Landed price of ${food} by weight, quote by quote; the table below says the same`,
  pledgedMark: (mass: string) => `pledged ${mass}`,
  leastMark: (mass: string) => `least ${mass}`,
  mostMark: (mass: string) => `most ${mass}`,
  hatched: 'hatched: dearer than the jump',
  jumpMark: (bags: number, price: string) => `${s(bags, 'bag', 'bags')}, ${price}`,
  supplierAndBag: 'Supplier, bag',
  priceABag: 'Price a bag',
  freight: 'Freight',
  from: (price: string, bags: number) => (bags === 1 ? price : `${price} from ${bags}`),
  incremental: 'each step for its own bags',
  freightFrom: (money: string, mass: string) => `${money} from ${mass}`,
  freeFrom: (money: string) => `0.00 from ${money}`,
  atLeastGoods: (money: string) => `${money} at least`,
  atLeastMass: (mass: string) => `${mass} at least`,
  mostBagsOf: (bags: number) => `${s(bags, 'bag', 'bags')} at most`,
  till: (bag: string, day: string) => `${bag}, till ${day}`,
  lapsing: 'Quotes that lapse soon',
  daysToSpare: (days: number) => `${s(days, 'day', 'days')} to spare`,
  lapsesBefore: 'lapses before the order',
  belowMinimum: 'below its minimum',
  cheapest: 'cheapest',
  chosen: 'chosen',
  notOffered: 'not so much',
  noQuoteForFood: 'No quote stands for this food yet.',
  deadZones: (spans: string) => `Never order ${spans}: a larger order costs less.`,
  span: (from: string, to: string) => `${from} to ${to}`,

  lines: 'Foods',
  lineFacts: (at: { least: string; wanted: string; most: string }) =>
    `least ${at.least}, wanted ${at.wanted}, most ${at.most}`,
  bagsOrdered: (bags: number) => s(bags, 'bag', 'bags'),
  bagsFull: 'Bags filled',
  toNextBag: 'Next bag lacks',
  toGo: (mass: string) => `${mass} to go`,
  full: 'full',
  nobody: 'nobody yet',
  landedPrice: 'Landed',
  tipColumn: 'A few more bags',
  tipCell: (extra: number, cost: string, saved: string) => `${extra} more: ${cost}, saves ${saved}`,
  noTip: 'no jump near',

  wholeBuy: 'The whole buy now',
  wholeBetween: 'Between least and most',
  wholeMass: 'In whole bags',
  commonStock: 'Left for common stock',

  pledges: 'Pledges',
  pledgesInAll: (least: string, most: string) => `in all: least ${least}, most ${most}`,
  household: 'Household',
  threeColumn: 'Least, wanted, most',
  wantedColumn: 'Wanted',
  fillColumn: 'Fill',
  findHousehold: 'Find a household',
  nothingFound: 'No household has that name.',
  inOf: (count: number, of: number) => `${count} of ${of}`,
  noPledges: 'Nobody has pledged for this food yet.',
  late: 'Who is late',
  notPledged: (count: number) => `${s(count, 'household has', 'households have')} not pledged: `,
  allPledged: 'Every household has pledged for something.',
  depositsMissing: (count: number) => `${s(count, 'deposit is', 'deposits are')} still to come: `,
  allDeposits: 'Every deposit is in or waived.',
  amountsHidden: 'How much, and why somebody was let off, is between the household and the treasurer.',

  more: 'More about this buy',
  editPlan: 'Name, days, place and foods',
  toQuotes: 'Quotes',
  promised: 'What was promised, and opening it again',
  theOrder: 'The order and its numbers',
  theLanding: 'The landing: counts, bags and weights',
  theSplit: 'The split of each food',
  handingOver: 'Handing over',
  theClosing: 'What it cost, and the closing',
  asMember: 'The buy as members see it',
  takeOut: 'Take a household out',
  takeOutWords: {
    gathering: 'Its pledges go, and a deposit that is held goes back onto its balance.',
    fixed:
      'The bags are filled again without it. Its deposit pays for what that costs the others, as far as it reaches; the rest goes back. Both agreements to order are given anew.',
    ordered:
      'Its food is offered to those who pledged for more, then to common stock. It pays for what nobody takes.',
    landed:
      'Its food is offered to those who pledged for more, then to common stock. It pays for what nobody takes.',
  } as Record<string, string>,
  chooseHousehold: 'Choose a household',
  declined: 'Asked to take the food over, and said no',
  reason: 'Reason',
  reasonHint: 'It is kept with the buy.',
  reasonNeeded: 'Write down the reason.',
  takeOutNow: (name: string) => `Take ${name} out`,
  takenOut: (name: string, taken: string, left: string) =>
    `${name} is out. Others took ${taken}; ${left} stays with the household.`,
  takenOutPledges: (name: string) => `${name} is out of the buy.`,
  withdrawnBefore: 'Taken out so far',
  callOff: 'Call the buy off',
  callOffWords: 'Every deposit goes back onto its household’s balance. Nobody is charged anything.',
  callOffOrdered:
    'The buy is ordered: cancel with the suppliers first. What they still bill is borne by the store fund.',
  cancellationNote: 'What was agreed with the suppliers',
  cancellationCost: (supplier: string) => `Still billed by ${supplier}`,
  callOffNow: (name: string) => `Call ${name} off`,

  needsMe: 'What needs you today',
  nothingNeedsMe: 'Nothing waits for your duties.',
  byDay: (day: string) => `by ${day}`,
  overdue: 'overdue',

  moneyProblem: 'Write an amount, such as 41.20.',
  numberProblem: 'Write a whole number.',
  massProblem: 'Write a weight, such as 25, 25 lb or 12.5 kg.',
};

export type RunWords = typeof en;
