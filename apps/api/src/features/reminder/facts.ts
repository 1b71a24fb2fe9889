import type { Tx } from '@sheafbook/db';
import { dayInZone } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { pathIn } from '../../platform/path-in.ts';
import { todayOf } from '../../platform/today.ts';
import { mayEndLanding } from '../landing/use-cases.ts';
import { listOpenBuys, listPledgedBuyIds } from '../next-step/queries.ts';
import { type ItemPart, listOpenItems } from '../next-step/use-cases.ts';
import { listNotices } from '../notice/queries.ts';
import { YOUR_TURN } from '../offer/use-cases.ts';
import { KINDS } from './kinds.ts';
import { isFresh, type ReminderFact } from './letter.ts';

const MOST_NOTICES = 50;

/** Everything that the actor should know of now: its own things and those of its duties, and what it was told. */
export async function listFacts(tx: Tx, context: Context, language: string): Promise<ReminderFact[]> {
  return [
    ...(await listOpenFacts(tx, context, language)),
    ...(await listLandingDays(tx, context)),
    ...(await listUnreadNotices(tx, context, language)),
  ];
}

const packingDay = (_: string, path: string) => path.replace('/packing-sessions/', '/packing/');

/** Pages of the storehouse by kind, from the page of the buy that the item is about and its address in the API. */
const PAGES: Readonly<Partial<Record<ReminderFact['kind'], (buy: string, path: string) => string>>> = {
  'balance-due': () => '/statement',
  'packing-time': () => '/packing',
  'packing-help': () => '/packing',
  'loan-due': () => '/equipment',
  'equipment-late': () => '/equipment',
  'equipment-offered': () => '/equipment',
  'equipment-asked': () => '/equipment',
  'late-return': () => '/equipment/desk',
  'relay-asked': () => '/equipment/desk',
  'service-due': () => '/equipment/desk',
  'unfit-equipment': () => '/equipment/desk',
  'offer-open': () => '/offers',
  'move-buy': (buy) => `${buy}/run`,
  'quote-lapses': (buy) => `${buy}/quotes`,
  'bill-due': () => '/books/suppliers',
  'claim-window': (buy) => `${buy}/landing`,
  'hand-over': (buy) => `${buy}/handing-over`,
  // Of bags in its buy; a hold of anything else is told in the notices.
  'hold-open': (buy) => (buy === '' ? '/notices' : `${buy}/landing`),
  'seam-check': packingDay,
  'suspects-open': packingDay,
  'lid-check': (_, path) => (path.endsWith('of=common') ? '/shelf/lids?of=common' : '/shelf/lids'),
  unreached: () => '/notices/written',
  'duty-ends': () => '/people/duties',
};

/** What waits for the actor anyway; a kind that has no rule of telling is not told. */
async function listOpenFacts(tx: Tx, context: Context, language: string): Promise<ReminderFact[]> {
  const { storehouseId } = context.actor;
  return (await listOpenItems(tx, context)).flatMap((item) => {
    const { kind, buy, dueOn, dueAt, endsAt = null, sinceOn = null, part, detail: says = '' } = item;
    const named = language === 'es' ? (item.aboutEs ?? item.about) : item.about;
    const about = named ?? buy?.name ?? '';
    const path = item.path.replace(pathIn(storehouseId, ''), '');
    if (item.parts) return item.parts.map((one) => factOfPart(one, language));
    if (!isTold(kind)) return [];
    const buyPage = buy ? `/buys/${buy.buyId}` : '';
    const thing = part === undefined ? path : `${path} ${part}`;
    const page = PAGES[kind]?.(buyPage, path) ?? buyPage;
    return [{ kind, thing, dueOn, dueAt, endsAt, sinceOn, about, says, page }];
  });
}

const isTold = (kind: string): kind is ReminderFact['kind'] => kind in KINDS;

/** Days that are reckoned anew each day drift, so what is told of them has no day and is told once. */
const factOfPart = ({ kind, thing, about, says }: ItemPart, language: string): ReminderFact => ({
  ...{ kind, thing, dueOn: null, dueAt: null, says },
  about: language === 'es' ? about.es : about.en,
  page: says === 'own' ? '/rotation' : '/giving',
});

/** The days on which a buy lands that the household pledged in, and every one for whoever helps to take it in. */
export async function listLandingDays(tx: Tx, { actor }: Context): Promise<ReminderFact[]> {
  const { storehouseId, householdId } = actor;
  const pledged =
    householdId === null ? new Set<string>() : await listPledgedBuyIds(tx, storehouseId, householdId);
  const isConcerned = (buyId: string) => pledged.has(buyId) || mayEndLanding(actor);
  const buys = await listOpenBuys(tx, storehouseId);
  return buys
    .filter(({ stage, landingOn, buyId }) => stage === 'ordered' && landingOn !== null && isConcerned(buyId))
    .map(({ buyId, name, landingOn, landingPlace }) => ({
      ...{ kind: 'landing-day', thing: buyId, dueOn: landingOn, dueAt: null },
      // `says` is where it lands.
      ...{ about: name, says: landingPlace, page: `/buys/${buyId}` },
    }));
}

async function listUnreadNotices(tx: Tx, context: Context, language: string): Promise<ReminderFact[]> {
  const { actor } = context;
  const todayOn = todayOf(context);
  const unread = await listNotices(tx, actor, {
    state: 'unread',
    q: '',
    after: undefined,
    limit: MOST_NOTICES,
  });
  return unread
    .filter(({ notice }) => isFresh(dayInZone(notice.writtenAt.getTime(), actor.timeZone), todayOn))
    .filter(({ notice }) => notice.says !== YOUR_TURN) // told as an open offer, with the time until when
    .map(({ notice }) => ({
      kind: notice.isSafety ? 'safety' : 'notice',
      // Its day is told with it; it is a reminder of the notice, not of the day.
      ...{ thing: notice.noticeId, dueOn: null, dueAt: null },
      ...(language === 'es'
        ? { about: notice.aboutEs || notice.about, says: notice.saysEs }
        : { about: notice.about, says: notice.says }),
      page: '/notices',
    }));
}
