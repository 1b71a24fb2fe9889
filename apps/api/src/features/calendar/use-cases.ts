import type { Tx } from '@sheafbook/db';
import type { CalendarFeedRow } from '@sheafbook/db/tables';
import { addDays } from '@sheafbook/units';
import type { Context, Outside } from '../../platform/context.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { hashToken } from '../../platform/session.ts';
import { todayOf } from '../../platform/today.ts';
import { withLoginTx, withTx } from '../../platform/with-tx.ts';
import { refuseTooManyAttempts } from '../session/use-cases.ts';
import { loadStorehouse } from '../storehouse/queries.ts';
import type { Language } from './appointment.ts';
import { listChanges, listShown, type Since, type ToldEvent } from './events.ts';
import {
  findOpenFeed,
  insertFeed,
  listFeeds,
  listTold,
  type OpenFeed,
  tellEvents,
  updateFeed,
} from './queries.ts';
import { type CalendarFile, renderCalendar } from './render.ts';
import type { FeedWish } from './schema.ts';
import { SOURCES } from './sources.ts';

const DAYS_BACK = 365;
/** A program that looks every quarter of an hour from each of a household's screens stays far below. */
const MOST_LOOKS = 60;
const MOST_FEEDS = 20;

/** Makes a feed. Its address leaves once, in this answer; the book keeps the hash of its secret. */
export function makeFeed(context: Context, wish: FeedWish) {
  const { storehouseId, personId } = context.actor;
  const secret = newSecret(context);
  return withTx(context, async (tx) => {
    const events = wish.item === undefined ? [] : await bringUpToDate(tx, context);
    if (wish.item !== undefined) requireItem(events, wish.item);
    if ((await listFeeds(tx, storehouseId, personId)).length >= MOST_FEEDS)
      throw fieldProblem('invalid-input', 'scope', 'You have 20 calendars; end one first.');
    const feed = await insertFeed(tx, {
      storehouseId,
      personId,
      scope: wish.scope,
      itemKind: wish.item?.kind ?? null,
      itemId: wish.item?.id ?? null,
      language: wish.language,
      secretSha256: hashToken(secret),
      madeAt: context.now(),
    });
    return { feed, secret, subject: subjectAmong(events, feed) };
  });
}

/** One's own feeds. Nobody else's are ever listed, whatever one's duties. */
export function readFeeds(context: Context) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    const events = await bringUpToDate(tx, context);
    const feeds = await listFeeds(tx, storehouseId, personId);
    return feeds.map((feed) => ({ feed, subject: subjectAmong(events, feed) }));
  });
}

/** Gives a feed a new address. The old one leads nowhere from this moment. */
export function renewFeed(context: Context, feedId: string) {
  const secret = newSecret(context);
  return withTx(context, async (tx) => {
    const set = { secretSha256: hashToken(secret), renewedAt: context.now() };
    const feed = await updateFeed(tx, await requireOwnFeed(tx, context, feedId), set);
    const events = feed.itemId === null ? [] : await bringUpToDate(tx, context);
    return { feed, secret, subject: subjectAmong(events, feed) };
  });
}

export function endFeed(context: Context, feedId: string): Promise<void> {
  return withTx(context, async (tx) => {
    await updateFeed(tx, await requireOwnFeed(tx, context, feedId), { endedAt: context.now() });
  });
}

/** What one's own calendar shows: everybody's appointments and those of the household acted for. */
export function readAppointments(context: Context): Promise<ToldEvent[]> {
  return withTx(context, (tx) => bringUpToDate(tx, context));
}

/** One appointment, as a file for any calendar program. */
export function readAppointmentFile(
  context: Context,
  key: string,
  wish: { language: Language; publicUrl: string },
): Promise<string> {
  return withTx(context, async (tx) => {
    const events = (await bringUpToDate(tx, context)).filter((event) => event.key === key);
    if (events.length === 0) throw new Problem('thing-not-found', { thing: 'appointment' });
    const { storehouseId } = context.actor;
    const { name } = await loadStorehouse(tx, storehouseId);
    return renderCalendar({ ...fileOf(storehouseId, wish), name, events });
  });
}

/** Somebody who brings a feed's secret. Where it comes from is for counting wrong ones alone. */
export type FeedBearer = { readonly secret: string; readonly from: string; readonly publicUrl: string };

/**
 * A feed as a calendar program reads it, without a session. Its person is looked up anew each time, so that it ends with
 * the membership, and acts with no duty. Only wrong secrets are counted by where they come from, since a calendar
 * service asks for many feeds from one place.
 */
export async function readFeed(outside: Outside, bearer: FeedBearer): Promise<string> {
  const secretSha256 = hashToken(bearer.secret);
  const feed = await withLoginTx(outside, null, (tx) => findOpenFeed(tx, secretSha256));
  if (!feed) {
    await refuseTooManyAttempts(outside, [`calendar-from:${bearer.from}`]);
    throw new Problem('not-found');
  }
  await refuseTooManyAttempts(outside, [`calendar:${secretSha256}`], MOST_LOOKS);
  const language = feed.language as Language;
  const file = fileOf(feed.storehouse_id, { language, publicUrl: bearer.publicUrl });
  const context = contextOfFeed(outside, feed);
  return withTx(context, async (tx) => {
    const events = (await bringUpToDate(tx, context)).filter((event) => isIn(feed, event));
    return renderCalendar({ ...file, name: feed.storehouse_name, events });
  });
}

function contextOfFeed(outside: Outside, feed: OpenFeed): Context {
  return {
    ...outside,
    actor: {
      loginId: feed.login_id,
      personId: feed.person_id,
      storehouseId: feed.storehouse_id,
      currency: feed.currency,
      timeZone: feed.time_zone,
      householdId: feed.household_id,
      isHelping: false,
      duties: new Set(),
    },
  };
}

/** Only the feed that is called one's own has what is nobody else's; the others may hang on a wall. */
function isIn(feed: OpenFeed, { appointment: { householdId, item } }: ToldEvent): boolean {
  if (feed.scope === 'mine') return true;
  if (householdId !== null) return false;
  return feed.scope === 'storehouse' || (item?.kind === feed.item_kind && item?.id === feed.item_id);
}

/** Draws the appointments from the facts, writes down what has changed since they were told last, and lists them. */
async function bringUpToDate(tx: Tx, context: Context): Promise<ToldEvent[]> {
  const { storehouseId } = context.actor;
  const since = sinceOf(context);
  const appointments = [];
  for (const source of SOURCES) appointments.push(...(await source.list(tx, context, since.on)));
  const told = await listTold(tx, storehouseId);
  const changes = listChanges(appointments, told, since);
  if (changes.length === 0) return listShown(told, since);
  await tellEvents(tx, storehouseId, { appointments: changes, at: context.now() });
  return listShown(await listTold(tx, storehouseId), since);
}

function sinceOf(context: Context): Since {
  const { timeZone } = context.actor;
  const at = new Date(context.now().getTime() - DAYS_BACK * 86_400_000);
  return { on: addDays(todayOf(context), -DAYS_BACK), at, timeZone };
}

async function requireOwnFeed(tx: Tx, { actor }: Context, feedId: string): Promise<CalendarFeedRow> {
  const feeds = await listFeeds(tx, actor.storehouseId, actor.personId);
  const feed = feeds.find(({ calendarFeedId }) => calendarFeedId === feedId);
  if (!feed) throw new Problem('thing-not-found', { thing: 'calendar' });
  return feed;
}

function requireItem(events: readonly ToldEvent[], item: { kind: string; id: string }): void {
  const isThere = events.some(
    ({ appointment }) => appointment.item?.kind === item.kind && appointment.item.id === item.id,
  );
  if (!isThere) throw fieldProblem('thing-not-found', 'item', 'Nothing with a day is there under this id.');
}

type About = Pick<CalendarFeedRow, 'itemKind' | 'itemId'>;

/** What the thing is called that a feed is about. */
function subjectAmong(events: readonly ToldEvent[], { itemKind, itemId }: About): string | null {
  const event = events.find(
    ({ appointment: { item } }) => itemId !== null && item?.kind === itemKind && item.id === itemId,
  );
  return event?.appointment.subject ?? null;
}

const newSecret = ({ randomBytes }: Outside): string => Buffer.from(randomBytes(32)).toString('base64url');

function fileOf(
  storehouseId: string,
  { language, publicUrl }: { language: Language; publicUrl: string },
): Pick<CalendarFile, 'storehouseId' | 'language' | 'root'> {
  return { storehouseId, language, root: new URL(`/s/${storehouseId}`, publicUrl).href };
}
