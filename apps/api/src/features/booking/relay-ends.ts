import type { Tx } from '@sheafbook/db';
import type { BookingRow } from '@sheafbook/db/tables';
import { listRelaysFrom, updateBooking } from './queries.ts';

/**
 * Where the one before gives the time back, whoever had agreed to take it straight on fetches it at the store instead.
 * Gives those who had only asked: what becomes of them the caller says. The thing is locked.
 */
export async function letGoOfRelays(tx: Tx, from: BookingRow): Promise<BookingRow[]> {
  const relays = await listRelaysFrom(tx, from);
  for (const relay of relays.filter(({ state }) => state === 'booked'))
    await updateBooking(tx, relay, { relayFromId: null, relayAgreedAt: null });
  return relays.filter(({ state }) => state === 'asked');
}
