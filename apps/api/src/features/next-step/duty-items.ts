import type { Tx } from '@sheafbook/db';
import type { BuyRow } from '@sheafbook/db/tables';
import { dayInZone } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { WHOLE_LIST } from '../../platform/paging.ts';
import { inSpanish } from '../../platform/spoken/spanish.ts';
import { todayOf } from '../../platform/today.ts';
import { listBuyLines } from '../buy/queries.ts';
import { mayRunBuys } from '../buy/use-cases.ts';
import { mayKeepClaims } from '../claim/use-cases.ts';
import { listFixedBags } from '../fill/queries.ts';
import { listDutiesOf, listHolds, type SeenHold } from '../hold/queries.ts';
import { mayHold, mayReleaseTogether, nameOf } from '../hold/use-cases.ts';
import { lookAtLanding } from '../landing/use-cases.ts';
import { listToTelephone, mayWriteNotices } from '../notice/use-cases.ts';
import { listOrderConsents } from '../order/queries.ts';
import { mayHandOver } from '../pick-up/use-cases.ts';
import { type BuyQuote, isStanding, listQuotesOfBuy } from '../quote/queries.ts';
import { listEndingItems } from './ending-duties.ts';
import type { OpenItem } from './open-item.ts';
import type { Open } from './own-items.ts';
import { listBuysById } from './queries.ts';
import { dueAtInstant, dueOf, stepFrom } from './steps.ts';

/** What waits for the actor's duties. */
export async function listDutyItems(tx: Tx, context: Context, open: Open, root: string): Promise<OpenItem[]> {
  return [
    ...(await listOwnMoves(tx, context, open, root)),
    ...(await listLapsingQuotes(tx, context, open, root)),
    ...(await listClaimWindows(tx, context, open, root)),
    ...listHandOvers(context, open, root),
    ...(await listOpenHolds(tx, context, root)),
    ...(await listUnreached(tx, context, root)),
    ...(await listEndingItems(tx, context, root)),
  ];
}

async function listOwnMoves(tx: Tx, context: Context, open: Open, root: string): Promise<OpenItem[]> {
  const { actor } = context;
  const items: OpenItem[] = [];
  for (const buy of open.buys) {
    const step = stepFrom(buy.stage);
    const consents = buy.stage === 'fixed' ? await listOrderConsents(tx, actor.storehouseId, buy.buyId) : [];
    if (!step?.may(actor, consents)) continue;
    items.push({
      ...dueOf(buy, actor),
      kind: 'move-buy',
      words: `${buy.name}: ${step.words}`,
      buy,
      part: buy.stage, // two steps of one buy may be planned for one day, and they are two things
      minorUnits: null,
      path: `${root}/buys/${buy.buyId}/next`,
    });
  }
  return items;
}

/** Quotes that a buy counts on and that lapse before its order is placed (job map 3.1, question 5). */
async function listLapsingQuotes(tx: Tx, context: Context, open: Open, root: string): Promise<OpenItem[]> {
  if (!mayRunBuys(context.actor)) return [];
  const items: OpenItem[] = [];
  for (const buy of open.buys.filter(({ stage }) => stage === 'gathering' || stage === 'fixed')) {
    const orderOn = [buy.orderOn, todayOf(context)].toSorted().at(-1) ?? buy.orderOn;
    for (const { quote, supplierName } of await listQuotesInUse(tx, context, buy)) {
      if (quote.validUntil >= orderOn) continue;
      items.push({
        kind: 'quote-lapses',
        words: `The quote of ${supplierName} for ${buy.name} stands until ${quote.validUntil}, before the order.`,
        buy,
        dueOn: quote.validUntil,
        dueAt: null,
        minorUnits: null,
        path: `${root}/buys/${buy.buyId}/quotes`,
      });
    }
  }
  return items;
}

/** Once fixed, the quotes of its bags; before, those chosen for a food, and any that stand where none is chosen. */
async function listQuotesInUse(tx: Tx, context: Context, buy: BuyRow): Promise<BuyQuote[]> {
  const { storehouseId, buyId } = buy;
  const todayOn = todayOf(context);
  const quotes = await listQuotesOfBuy(tx, storehouseId, buyId);
  if (buy.stage === 'fixed') {
    const fixed = new Set((await listFixedBags(tx, storehouseId, buyId)).map((row) => row.bagOfferId));
    return quotes.filter(({ offers }) => offers.some((offer) => fixed.has(offer.bagOfferId)));
  }
  const chosen = new Map(
    (await listBuyLines(tx, storehouseId, buyId)).map((line) => [line.buyLineId, line.quoteId]),
  );
  return quotes.filter(({ quote, offers }) =>
    offers.some(({ buyLineId }) => {
      const quoteId = chosen.get(buyLineId) ?? null;
      return quoteId === null ? isStanding(quote, todayOn) : quoteId === quote.quoteId;
    }),
  );
}

/** Buys of which something came short or damaged and is not claimed yet, while it surely can be. */
async function listClaimWindows(tx: Tx, context: Context, open: Open, root: string): Promise<OpenItem[]> {
  if (!mayKeepClaims(context.actor)) return [];
  const items: OpenItem[] = [];
  for (const buy of open.buys.filter(({ stage }) => ['ordered', 'landed', 'shared-out'].includes(stage))) {
    const { deliveries, proposedClaims } = await lookAtLanding(tx, context, buy.buyId);
    const [claimByOn] = deliveries
      .filter(({ isClaimDayPast }) => !isClaimDayPast)
      .map((delivery) => delivery.claimByOn)
      .toSorted();
    if (claimByOn === undefined || proposedClaims.length === 0) continue;
    items.push({
      kind: 'claim-window',
      words: `Claim by ${claimByOn} what came short or damaged of ${buy.name}.`,
      buy,
      dueOn: claimByOn,
      dueAt: null,
      minorUnits: proposedClaims.reduce((sum, claim) => sum + claim.minorUnits, 0),
      path: `${root}/buys/${buy.buyId}/landing`,
    });
  }
  return items;
}

/** Somebody must be there when a household comes: the first hour of each buy, with how many come in all. */
function listHandOvers({ actor }: Context, { appointments }: Open, root: string): OpenItem[] {
  if (!mayHandOver(actor)) return [];
  return [...new Set(appointments.map(({ buy }) => buy.buyId))].flatMap((buyId) => {
    const ofBuy = appointments.filter((appointment) => appointment.buy.buyId === buyId);
    const [first] = ofBuy; // they come in the order of their hours
    if (!first || first.pickUp.startsAt === null) return [];
    const households = ofBuy.length === 1 ? '1 household comes' : `${ofBuy.length} households come`;
    return [
      {
        ...dueAtInstant(first.pickUp.startsAt, actor.timeZone),
        endsAt: first.pickUp.endsAt,
        kind: 'hand-over' as const,
        words: `Hand over food of ${first.buy.name}: ${households}.`,
        buy: first.buy,
        minorUnits: null,
        path: `${root}/buys/${buyId}/pick-ups`,
      },
    ];
  });
}

/** Holds that wait for the actor: to be looked at, or for the agreement of a second person. */
async function listOpenHolds(tx: Tx, context: Context, root: string): Promise<OpenItem[]> {
  const { storehouseId } = context.actor;
  if (!mayHold(context.actor)) return [];
  const held = await listHolds(tx, storehouseId, { isOpen: true, limit: WHOLE_LIST });
  const buys = await listBuysById(
    tx,
    storehouseId,
    held.flatMap(({ bag }) => bag?.buyId ?? []),
  );
  const items: OpenItem[] = [];
  for (const seen of held) {
    const { hold, bag } = seen;
    const wordsOf = await findWordsOfHold(tx, context, seen);
    if (wordsOf === null) continue;
    const [about, aboutEs] = [nameOf(seen), nameOf(seen, 'es')];
    const [words, wordsEs] = [wordsOf(hold.scope, about), inSpanish(wordsOf(hold.scope, aboutEs))];
    const buy = buys.find((candidate) => candidate.buyId === bag?.buyId) ?? null;
    const path = `${root}/holds/${hold.holdId}`;
    const sinceOn = dayInZone(hold.heldAt.getTime(), context.actor.timeZone);
    const part = hold.releaseAskedBy === null ? 'look' : 'agree';
    items.push({
      ...{ kind: 'hold-open', words, wordsEs, buy, dueOn: null, dueAt: null, minorUnits: null, path },
      ...{ part, sinceOn },
      ...(bag ? {} : { about, aboutEs }),
    });
  }
  return items;
}

/** What a hold asks of the actor, by its scope and its name; null where it asks nothing. */
async function findWordsOfHold(
  tx: Tx,
  { actor }: Context,
  { hold }: SeenHold,
): Promise<typeof wordsOfLook | null> {
  if (hold.releaseAskedBy === null) return wordsOfLook;
  if (hold.releaseAskedBy === actor.personId) return null;
  const asker = await listDutiesOf(tx, actor.storehouseId, hold.releaseAskedBy);
  return mayReleaseTogether(asker, actor.duties) ? wordsOfAgreeing : null;
}

function wordsOfLook(scope: string, name: string): string {
  if (name === '') return 'Some containers are on hold: find out what is the matter.';
  return scope === 'bag'
    ? `Bag ${name} is on hold: find out what is the matter.`
    : `${name} is on hold: find out what is the matter.`;
}

function wordsOfAgreeing(scope: string, name: string): string {
  if (name === '') return 'Some containers are on hold: agree to their release, or let it be.';
  return scope === 'bag'
    ? `Bag ${name} is on hold: agree to its release, or let it be.`
    : `${name} is on hold: agree to its release, or let it be.`;
}

/** Past this many names the page that the item leads to is the better list. */
const MOST_NAMES = 12;

/** Households that were told of something about safety a day ago and have not acknowledged it: they are telephoned. */
async function listUnreached(tx: Tx, context: Context, root: string): Promise<OpenItem[]> {
  const { actor } = context;
  if (!mayWriteNotices(actor)) return [];
  return (await listToTelephone(tx, context)).map(({ notice, telephoneAt, households }) => {
    const names = households.map(({ name }) => name);
    const { about } = notice;
    const aboutEs = notice.aboutEs || about;
    return {
      ...dueAtInstant(telephoneAt, actor.timeZone),
      kind: 'unreached',
      words: wordsOfUnreached(about, names),
      wordsEs: inSpanish(wordsOfUnreached(aboutEs, names)),
      ...{ buy: null, about, aboutEs, minorUnits: null },
      householdIds: households.map(({ householdId }) => householdId),
      path: `${root}/notices/${notice.noticeId}/reach`,
    };
  });
}

function wordsOfUnreached(about: string, names: readonly string[]): string {
  const named = names.slice(0, MOST_NAMES).join(', ');
  const more = names.length - MOST_NAMES;
  return more > 0
    ? `${about} is about safety. Telephone ${named} and ${more} more: nobody there has acknowledged it.`
    : `${about} is about safety. Telephone ${named}: nobody there has acknowledged it.`;
}
