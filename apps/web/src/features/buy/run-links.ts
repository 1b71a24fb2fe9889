/** Where the pages about a buy are, by the addresses that the API names in its next steps. */
const PAGES: Readonly<Record<string, string>> = {
  '': '/run',
  next: '/run',
  quotes: '/quotes',
  comparison: '/quotes',
  pledges: '',
  'household-pledges': '/run',
  fill: '/run',
  fixing: '/fixing',
  deposits: '/run',
  'deposits/own': '',
  'order-consents': '/order',
  orders: '/order',
  landing: '/landing',
  bags: '/landing',
  splits: '/split',
  closing: '/closing',
  'pick-ups': '/handing-over',
};

/** Pages of the treasurer's desk that are about one buy, or about all. */
const BOOKS: Readonly<Record<string, (buy: string) => string>> = {
  deposits: () => '/books/deposits',
  invoices: (buy) => `/books/clearing/${buy}`,
  charges: (buy) => `/books/clearing/${buy}`,
  claims: () => '/books/claims',
};

/** The page that shows what an address of the API answers; null where the reader has no page for it. */
export function pageFor(apiPath: string | null, { isTreasurer }: { isTreasurer: boolean }): string | null {
  const notice = /\/api\/storehouses\/([^/]+)\/notices\/[^/]+\/reach$/.exec(apiPath ?? '');
  if (notice) return `/s/${notice[1]}/notices/written`;
  const packing = /\/api\/storehouses\/([^/]+)\/packing-sessions\/([^/]+?)(\/seals)?$/.exec(apiPath ?? '');
  if (packing) return `/s/${packing[1]}/packing/${packing[2]}${packing[3] ?? ''}`;
  const offer = /\/api\/storehouses\/([^/]+)\/offers\/([^/]+)$/.exec(apiPath ?? '');
  if (offer) return `/s/${offer[1]}/offers/${offer[2]}`;
  const hold = /\/api\/storehouses\/([^/]+)\/holds\/([^/]+)$/.exec(apiPath ?? '');
  if (hold) return `/s/${hold[1]}/holds/${hold[2]}`;
  const stock = /\/api\/storehouses\/([^/]+)\/(rotation|inspections|giving)\b/.exec(apiPath ?? '');
  if (stock) return `/s/${stock[1]}/${stock[2]}`;
  const desk = /\/api\/storehouses\/([^/]+)\/equipment-desk$/.exec(apiPath ?? '');
  if (desk) return `/s/${desk[1]}/equipment/desk`;
  const doubts = /\/api\/storehouses\/([^/]+)\/own-doubts$/.exec(apiPath ?? '');
  if (doubts) return `/s/${doubts[1]}/shelf/doubts`;
  const lids = /\/api\/storehouses\/([^/]+)\/lids(\?of=common)?$/.exec(apiPath ?? '');
  if (lids) return `/s/${lids[1]}/shelf/lids${lids[2] ?? ''}`;
  const ending = /\/api\/storehouses\/([^/]+)\/duties$/.exec(apiPath ?? '');
  if (ending) return `/s/${ending[1]}/people/duties`;
  const owed = /\/api\/storehouses\/([^/]+)\/suppliers-owed$/.exec(apiPath ?? '');
  if (owed) return isTreasurer ? `/s/${owed[1]}/books/suppliers` : null;
  const found = /\/api\/storehouses\/([^/]+)\/buys\/([^/]+)\/?(.*)$/.exec(apiPath ?? '');
  if (!found) return null;
  const [, storehouse = '', buy = '', what = ''] = found;
  const book = BOOKS[what];
  if (book && (isTreasurer || what !== 'deposits'))
    return isTreasurer ? `/s/${storehouse}${book(buy)}` : null;
  const page = PAGES[what];
  return page === undefined ? null : `/s/${storehouse}/buys/${buy}${page}`;
}
