import type { MissingCode } from '@sheafbook/ledger';
import { type Actor, hasDuty } from '../../platform/actor.ts';
import { mayFix } from '../fill/use-cases.ts';
import { maySeePledges } from '../pledge/use-cases.ts';
import { seesWhoPaid } from './policy.ts';

type Page = {
  readonly title: string;
  readonly path: string;
  readonly isFor?: (actor: Actor) => boolean;
};

const PAGES = {
  buy: { title: 'The buy', path: '' },
  quotes: { title: 'Quotes', path: '/quotes' },
  comparison: { title: 'Quotes side by side', path: '/comparison', isFor: maySeePledges },
  pledges: { title: 'Pledges', path: '/pledges' },
  householdPledges: {
    title: 'Pledges of each household',
    path: '/household-pledges',
    isFor: maySeePledges,
  },
  fill: { title: 'Bags as they fill', path: '/fill' },
  fixing: { title: 'What fixing would do', path: '/fixing', isFor: mayFix },
  ownDeposit: {
    title: 'Own deposit',
    path: '/deposits/own',
    isFor: (actor) => actor.householdId !== null,
  },
  deposits: { title: 'Deposits', path: '/deposits', isFor: seesWhoPaid },
  consents: { title: 'Agreements to order', path: '/order-consents' },
  orders: { title: 'Orders to the suppliers', path: '/orders' },
  landing: { title: 'Landing sheet', path: '/landing' },
  bags: { title: 'Numbered bags', path: '/bags' },
  splits: { title: 'Splits', path: '/splits' },
  invoices: { title: 'Invoices', path: '/invoices' },
  claims: { title: 'Claims', path: '/claims' },
  charges: { title: 'Charges', path: '/charges' },
  closing: {
    title: 'What keeps the buy from closing',
    path: '/closing',
    isFor: (actor) => hasDuty(actor, 'coordinator', 'treasurer', 'reviewer'),
  },
  pickUps: { title: 'Pick-ups', path: '/pick-ups' },
} as const satisfies Record<string, Page>;
type PageName = keyof typeof PAGES;

const PAGES_AT: Readonly<Record<string, readonly PageName[]>> = {
  planning: ['quotes', 'comparison'],
  gathering: ['fill', 'fixing', 'pledges', 'householdPledges', 'comparison', 'quotes'],
  fixed: ['deposits', 'ownDeposit', 'consents', 'quotes', 'fill'],
  ordered: ['landing', 'orders'],
  landed: ['landing', 'bags', 'splits', 'invoices', 'claims'],
  'shared-out': ['closing', 'charges', 'claims', 'invoices', 'pickUps'],
  closed: ['charges', 'pickUps'],
  'called-off': ['buy'],
};

/** Where something that is missing is seen, and mended or at least understood. */
const PAGES_OF: Readonly<Record<MissingCode, readonly PageName[]>> = {
  'no-food-line': ['buy'],
  'no-quote': ['quotes'],
  'no-closing-day': ['buy'],
  'quote-lapses-before-close': ['quotes'],
  'quote-lapsed': ['quotes'],
  'fill-not-run': ['fill'],
  'fill-out-of-date': ['fill'],
  'nothing-allotted': ['fill'],
  'allotment-above-most': ['fixing', 'fill'],
  'price-above-ceiling': ['fixing', 'fill'],
  'supplier-minimum-not-met': ['fill'],
  'deposit-holder-not-told': ['deposits', 'ownDeposit'],
  'no-reason': ['buy'],
  'second-login-missing': ['consents'],
  'deposit-unpaid': ['deposits', 'ownDeposit'],
  'price-risen': ['quotes'],
  'line-not-counted': ['landing'],
  'bag-not-weighed': ['bags'],
  'line-not-split': ['splits'],
  'mass-not-shared': ['splits'],
  'invoice-missing': ['invoices'],
  'claim-open': ['claims'],
  'clearing-not-zero': ['charges'],
  'deposit-held': ['deposits', 'ownDeposit'],
  'mass-unassigned': ['bags'],
  'cancellation-not-recorded': ['buy'],
  'bag-not-numbered': ['landing'],
  'charges-behind': ['charges'],
};

const isOpenTo = (page: Page, actor: Actor): boolean => page.isFor?.(actor) ?? true;

/** The pages and papers that help at a stage, as far as the actor may read them. */
export function pagesAt(stage: string, actor: Actor, buyPath: string) {
  const pages: readonly Page[] = (PAGES_AT[stage] ?? []).map((name) => PAGES[name]);
  return pages
    .filter((page) => isOpenTo(page, actor))
    .map(({ title, path }) => ({ title, path: `${buyPath}${path}` }));
}

/** The first page about something missing that the actor may read. */
export function pageOf(code: MissingCode, actor: Actor, buyPath: string): string | null {
  const pages: readonly Page[] = PAGES_OF[code].map((name) => PAGES[name]);
  const page = pages.find((candidate) => isOpenTo(candidate, actor));
  return page ? `${buyPath}${page.path}` : null;
}
