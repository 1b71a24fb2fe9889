/** When a kind is told, and whether it may be stopped. Everything that reminds is a line here. */
type Rule = {
  /** So many days before it is due, each once. */
  readonly before?: readonly number[];
  /** On the day itself, until it is over. */
  readonly onTheDay?: true;
  /** Once more when it is over and still open. */
  readonly overdue?: true;
  /** What has no day: once, or once in each month or week while it stands. */
  readonly open?: 'once' | 'monthly' | 'weekly';
  /** About safety: told at once, at any hour, and never stopped. */
  readonly isSafety?: true;
};

/** The days before are common practice, no source. */
export const KINDS = {
  'pledge-closing': { before: [3], onTheDay: true },
  'deposit-due': { before: [3], onTheDay: true, overdue: true },
  'landing-day': { before: [3], onTheDay: true },
  'food-waiting': { before: [7, 2], onTheDay: true, overdue: true },
  'pick-up': { before: [1], onTheDay: true, overdue: true },
  'packing-time': { before: [2], onTheDay: true },
  'packing-help': { before: [2], onTheDay: true },
  'loan-due': { before: [1], onTheDay: true, overdue: true },
  'equipment-late': { before: [1], onTheDay: true },
  'equipment-offered': { before: [1], onTheDay: true },
  // Told as soon as somebody asks: nobody books further ahead than this.
  'equipment-asked': { before: [90, 1], onTheDay: true },
  'relay-asked': { before: [90, 1], onTheDay: true },
  'late-return': { overdue: true },
  // By its calendar it has a day; by its uses it has none and is due.
  'service-due': { before: [7], onTheDay: true, overdue: true, open: 'monthly' },
  'unfit-equipment': { open: 'once' },
  'offer-open': { before: [7], onTheDay: true },
  'offer-near': { open: 'once' },
  'gift-closes-near': { open: 'once' },
  'eat-first-near': { open: 'once' },
  'balance-due': { open: 'monthly' },
  'quote-lapses': { before: [7, 3], onTheDay: true, overdue: true },
  'bill-due': { before: [3], onTheDay: true, overdue: true },
  'claim-window': { before: [2], onTheDay: true },
  'hand-over': { before: [1], onTheDay: true },
  'duty-ends': { before: [30, 7], onTheDay: true, overdue: true },
  'move-buy': { onTheDay: true, overdue: true },
  notice: { open: 'once' },
  'hold-open': { open: 'weekly', isSafety: true },
  // Told when it is due, not on the morning of that day.
  'seam-check': { overdue: true, isSafety: true },
  'suspects-open': { open: 'weekly', isSafety: true },
  // Told when the last of its day tells something, not on the morning of that day.
  'lid-check': { overdue: true },
  unreached: { overdue: true, isSafety: true },
  safety: { open: 'once', isSafety: true },
} as const satisfies Readonly<Record<string, Rule>>;

export type ReminderKind = keyof typeof KINDS;
export const REMINDER_KINDS = Object.keys(KINDS) as ReminderKind[];
/** Those that a person may stop. */
export const STOPPABLE = REMINDER_KINDS.filter((kind) => !ruleOf(kind).isSafety);

export function ruleOf(kind: ReminderKind): Rule {
  return KINDS[kind];
}
