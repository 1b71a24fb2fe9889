import { mayStillVeto, relayRefusals } from '@sheafbook/booking';
import type { Tx } from '@sheafbook/db';
import type { BookingRow, EquipmentItemRow } from '@sheafbook/db/tables';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { writeNotice } from '../notice/use-cases.ts';
import { type EquipmentWish, lookAt, notFree, refuseLoanWish, rowOf } from './book.ts';
import { changesAllergen } from './left-behind.ts';
import { insertBooking, updateBooking } from './queries.ts';
import { type FoodThrough, listFoodsOfBooking } from './queries-foods.ts';
import { buffersOf, chooseUnit } from './taken.ts';
import { minutes } from './when.ts';

/**
 * Asks to take a thing straight from whoever has it before. No time is kept between the two, so that the time may begin
 * where the other ends; it is held only once they have agreed.
 */
export async function askToTakeOver(
  tx: Tx,
  context: Context,
  { item, wish, foods }: { item: EquipmentItemRow; wish: EquipmentWish; foods: readonly FoodThrough[] },
): Promise<BookingRow> {
  await refuseLoanWish(tx, context, item, wish);
  const { states, rows, taken } = await lookAt(tx, context, item);
  const earlier = rows
    .filter(({ purpose, state }) => purpose === 'loan' && (state === 'booked' || state === 'out'))
    .filter(({ endsAt, blockedTo }) => {
      const keptUntil = blockedTo.getTime() + buffersOf(item).preMs;
      return endsAt.getTime() <= wish.startMs && wish.startMs < keptUntil;
    });
  for (const from of earlier) {
    const other = taken.filter((_, at) => rows[at]?.bookingId !== from.bookingId);
    const own = states.filter(({ unit }) => unit.equipmentUnitId === from.equipmentUnitId);
    const unit = chooseUnit({ ...wish, preMs: 0, postMs: buffersOf(item).postMs }, own, other);
    if (!unit) continue;
    const row = rowOf(context, item, wish);
    const asked = { ...row, blockedFrom: row.startsAt, state: 'asked', relayFromId: from.bookingId };
    const before = await listFoodsOfBooking(tx, from.storehouseId, from.bookingId);
    refuseRelay(context, item, { from, to: asked, changesAllergen: changesAllergen(item, before, foods) });
    return insertBooking(tx, { ...asked, equipmentUnitId: from.equipmentUnitId });
  }
  throw notFree(context, item, wish, { states, taken });
}

/** The two have agreed: no time is kept between them any more, and the later one holds its own. */
export async function agreeToRelay(
  tx: Tx,
  context: Context,
  { item, from, to }: { item: EquipmentItemRow; from: BookingRow; to: BookingRow },
): Promise<BookingRow> {
  const { storehouseId } = item;
  const before = await listFoodsOfBooking(tx, storehouseId, from.bookingId);
  const next = await listFoodsOfBooking(tx, storehouseId, to.bookingId);
  refuseRelay(context, item, { from, to, changesAllergen: changesAllergen(item, before, next) });
  const endsMs = Math.min(from.blockedTo.getTime(), to.startsAt.getTime());
  await updateBooking(tx, from, { blockedTo: new Date(endsMs) });
  return updateBooking(tx, to, {
    ...{ state: 'booked', relayAgreedAt: context.now(), blockedFrom: to.startsAt },
  });
}

/** What two have agreed the keeper leaves alone from a day before: whoever takes it could find nothing else by then. */
export function refuseLateVeto(context: Context, { relayAgreedAt, startsAt }: BookingRow): void {
  if (relayAgreedAt === null || mayStillVeto({ startMs: startsAt.getTime() }, context.now().getTime()))
    return;
  throw new Problem('relay-refused', {
    detail:
      'The two count on it: the keeper says no a day before at the latest. If it is broken, write that down at the piece.',
    because: ['too-late-to-veto'],
  });
}

/**
 * The keeper's no, or one of the two's: what had been agreed is as it was, and the later booking is over. Whoever had asked is
 * told.
 */
export async function refuseToRelay(
  tx: Tx,
  context: Context,
  { item, from, to }: { item: EquipmentItemRow; from: BookingRow; to: BookingRow },
): Promise<BookingRow> {
  const isKeptAgain = to.relayAgreedAt !== null && from.state !== 'returned';
  const ended = await updateBooking(tx, to, { state: 'cancelled' });
  if (isKeptAgain)
    await updateBooking(tx, from, {
      blockedTo: new Date(from.endsAt.getTime() + minutes(item.postMinutes)),
    });
  const { householdId } = to;
  if (householdId !== null && householdId !== context.actor.householdId)
    await writeNotice(tx, context, {
      ...{ kind: 'equipment', audience: { to: 'household', householdId }, about: item.name },
      says: `It will not be handed straight on to you, so your time is free again: ${item.name}. Book a time at which it comes from the store.`,
      path: `/equipment/${item.equipmentItemId}`,
    });
  return ended;
}

type To = Pick<BookingRow, 'startsAt' | 'endsAt' | 'householdId'>;

function refuseRelay(
  context: Context,
  item: EquipmentItemRow,
  { from, to, changesAllergen: changes }: { from: To; to: To; changesAllergen: boolean },
): void {
  const [first, second] = [from, to].map(({ startsAt, endsAt, householdId }) => ({
    ...{ startMs: startsAt.getTime(), endMs: endsAt.getTime(), borrowerId: householdId ?? '' },
  }));
  if (!first || !second) return;
  const facts = { mayRelay: item.mayRelay, changesAllergen: changes, nowMs: context.now().getTime() };
  const refusals = relayRefusals(first, second, facts);
  const [refusal] = refusals;
  if (refusal) throw new Problem('relay-refused', { detail: SAYS[refusal], because: refusals });
}

const SAYS = {
  'not-relayed': 'This is never handed straight on: it comes back to be cleaned and looked at first.',
  'same-borrower': 'Nobody hands on to themselves. Book the longer time.',
  overlap: 'One has it still when the other wants it already.',
  'too-late-to-veto': 'The keeper needs a day to say no. Ask earlier, or fetch it from the store.',
  'allergen-change': 'It is cleaned of one grain before another goes in, so it comes back first.',
} as const;
