/** Where the figure behind an invariant stands, as far as it has a page. */
const AUDIT_PLACES = {
  'entry-sides': '/s/$storehouse/books/entries',
  'zero-after-each': '/s/$storehouse/books/entries',
  'running-totals': '/s/$storehouse/books/trial-balance',
  'units-balance': '/s/$storehouse/books/trial-balance',
  guards: '/s/$storehouse/books/trial-balance',
  digests: '/s/$storehouse/books/year',
  'bank-matches': '/s/$storehouse/books/bank',
  'tin-counts': '/s/$storehouse/books/tin',
  'ended-buys': '/s/$storehouse/books/deposits',
  'ended-sessions': '/s/$storehouse/packing',
  'cost-lines': '/s/$storehouse/buys',
  splits: '/s/$storehouse/buys',
  'answers-again': '/s/$storehouse/buys',
  stages: '/s/$storehouse/buys',
  pledges: '/s/$storehouse/buys',
  fills: '/s/$storehouse/buys',
  lots: '/s/$storehouse/books/counts',
  lineage: '/s/$storehouse/books/traces',
  codes: '/s/$storehouse/books/traces',
} as const;

/** What only treasurer and reviewer may open; a coordinator's line leads nowhere instead of to a refusal. */
const FOR_BOOKS: ReadonlySet<string> = new Set([
  '/s/$storehouse/books/entries',
  '/s/$storehouse/books/trial-balance',
  '/s/$storehouse/books/bank',
  '/s/$storehouse/books/tin',
  '/s/$storehouse/books/deposits',
]);

export function auditPlace(key: string, readsBooks: boolean) {
  const place = key in AUDIT_PLACES ? AUDIT_PLACES[key as keyof typeof AUDIT_PLACES] : undefined;
  return place !== undefined && (readsBooks || !FOR_BOOKS.has(place)) ? place : undefined;
}
