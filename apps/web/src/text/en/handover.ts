import { en as people } from './people.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The page from which whoever takes over a duty runs the group. */
export const en = {
  title: 'Hand-over',
  people: 'People',
  notYours: 'This page is for the coordinator and the treasurer.',
  stands: (buys: number, sessions: number, claims: number, toSign: number) =>
    `${s(buys, 'buy', 'buys')}, ${s(sessions, 'packing day', 'packing days')} and ${s(claims, 'claim', 'claims')} are open; ${s(toSign, 'thing waits', 'things wait')} for a signature.`,
  never:
    'Hand over a duty, on the page of the people, and never a password: whoever takes over signs in as themself.',
  withAmounts: 'You see amounts, since you keep the money.',
  withoutAmounts: 'What households owe is for the treasurer; of deposits you see whether they are still out.',
  nothing: 'Nothing.',
  duties: 'Who may do what',
  nobody: 'nobody',
  holder: (name: string, since: string, canSignIn: boolean) =>
    `${name}, since ${since}${canSignIn ? '' : ' (can’t sign in)'}`,
  dutyNames: people.duties,
  toSign: 'What waits for a signature',
  yearOpen: (day: string) => `The year ended on ${day} and is not closed`,
  close: (day: string) => `The close through ${day}`,
  order: (buy: string) => `The order of ${buy}`,
  buys: 'Open buys',
  steps: {
    planning: 'gather quotes and open it for pledges',
    gathering: 'gather pledges, then fix it',
    fixed: 'collect deposits and agree to order',
    ordered: 'land it',
    landed: 'split it, then share its costs out',
    'shared-out': 'hand the food over, then close it at 0.00',
  } as Record<string, string>,
  by: (when: string) => `by ${when}`,
  since: (when: string) => `since ${when}`,
  sessions: 'Packing days',
  sessionStages: { open: 'open', running: 'runs', signed: 'to be settled' } as Record<string, string>,
  claims: 'Open claims',
  bills: 'Bills that are not paid',
  deposits: 'Deposits that are still out',
  seatName: (name: string, seat: number) => `${name}, seat ${seat}`,
  balances: 'What households owe, all together',
  owing: 'Households that owe',
  owed: 'Owed to the storehouse',
  credit: 'In credit',
  lent: 'Lent',
  unit: (name: string, no: number) => `${name}, no. ${no}`,
  late: 'late',
  held: 'On hold',
  atRisk: 'Common stock at risk',
  atRiskSays: (mass: string) => `${mass} pass their eat-first date if nobody takes them.`,
  giving: 'Offered and given',
  offered: (food: string) => `${food}, offered to members`,
  out: (no: number, pantry: string) => `Manifest ${no} to ${pantry}: its receipt is not back`,
  unasked: (pantry: string) => `${pantry}: ask again what it takes`,
  askedOn: (day: string) => `asked on ${day}`,
  suppliers: 'Suppliers and their rules',
  noTerms: 'never quoted',
  quote: (reference: string, until: string) =>
    reference === '' ? `last quote stands until ${until}` : `last quote ${reference}, stands until ${until}`,
  lead: (days: number) => `${s(days, 'day', 'days')} from order to landing`,
  leastMoney: (money: string) => `at least ${money} of goods`,
  leastMass: (mass: string) => `at least ${mass}`,
  freeFreight: (money: string) => `freight free from ${money}`,
};
export type HandoverWords = typeof en;
