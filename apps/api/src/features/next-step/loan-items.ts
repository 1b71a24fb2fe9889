import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { listBookings } from '../booking/queries.ts';
import { listLoans } from '../loan/queries.ts';
import type { OpenItem } from './open-item.ts';
import { dueAtInstant } from './steps.ts';

/** What a household has to bring back, is offered, or can't fetch because whoever has it is late. */
export async function listLoanItems(
  tx: Tx,
  context: Context,
  of: { readonly householdId: string; readonly root: string },
): Promise<OpenItem[]> {
  const { storehouseId, timeZone } = context.actor;
  const { householdId, root } = of;
  const nothing = { buy: null, minorUnits: null };
  const items: OpenItem[] = (await listLoans(tx, storehouseId, { householdId, isOut: true })).map(
    ({ loan, item }) => ({
      ...{ ...dueAtInstant(loan.dueAt, timeZone), ...nothing, kind: 'loan-due', about: item.name },
      words: `Bring this back: ${item.name}.`,
      path: `${root}/loans/${loan.loanId}`,
    }),
  );
  const booked = await listBookings(tx, storehouseId, { householdId, isOpen: true });
  const own = new Set(booked.map(({ booking }) => booking.bookingId));
  const open = own.size === 0 ? [] : await listBookings(tx, storehouseId, { isOpen: true });
  for (const { booking, item } of open)
    if (booking.state === 'asked' && booking.relayFromId !== null && own.has(booking.relayFromId))
      items.push({
        ...{ ...dueAtInstant(booking.startsAt, timeZone), ...nothing, kind: 'equipment-asked' },
        ...{ about: item.name, path: `${root}/bookings/${booking.bookingId}` },
        words: `A neighbour asks to take this straight from you; say yes or no: ${item.name}.`,
      });
  for (const { booking, item, outUntil } of booked) {
    const path = `${root}/bookings/${booking.bookingId}`;
    if (booking.state === 'offered' && booking.offeredUntil)
      items.push({
        ...{ ...dueAtInstant(booking.offeredUntil, timeZone), ...nothing, kind: 'equipment-offered', path },
        ...{ about: item.name, words: `This came free for you; say whether you take it: ${item.name}.` },
      });
    const isAhead = booking.state === 'booked' || booking.state === 'offered';
    if (isAhead && outUntil && outUntil < context.now())
      items.push({
        ...{ ...dueAtInstant(booking.startsAt, timeZone), ...nothing, kind: 'equipment-late', path },
        ...{
          about: item.name,
          words: `Whoever has it before you is late: ${item.name}. See what else is free.`,
        },
      });
  }
  return items;
}
