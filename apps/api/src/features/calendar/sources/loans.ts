import { listBookings } from '../../booking/queries.ts';
import type { Source } from '../appointment.ts';

/** When one's own household has booked a thing, from fetching it to bringing it back. */
export const LOANS: Source = {
  words: {
    loan: {
      en: {
        title: (thing) => `${thing}: yours until then`,
        about: 'Bring it back clean, with all its parts.',
      },
      es: {
        title: (thing) => `${thing}: suyo hasta entonces`,
        about: 'Devuélvalo limpio y con todas sus piezas.',
      },
    },
  },
  list: async (tx, { actor }, sinceOn) => {
    const { storehouseId, householdId } = actor;
    if (householdId === null) return [];
    const since = new Date(`${sinceOn}T00:00:00Z`);
    const rows = await listBookings(tx, storehouseId, { householdId, since });
    return rows
      .filter(({ booking }) => booking.state !== 'asked' && booking.state !== 'not-fetched')
      .map(({ booking, item }) => ({
        ...{ kind: 'loan', id: booking.bookingId, subject: item.name, place: item.keptWhere },
        status: STATUS[booking.state] ?? 'confirmed',
        when: { startsAt: booking.startsAt.toISOString(), endsAt: booking.endsAt.toISOString() },
        ...{ isBusy: false, householdId, path: '/equipment' },
        item: { kind: 'equipment', id: item.equipmentItemId },
      }));
  },
};

const STATUS: Readonly<Record<string, 'tentative' | 'cancelled'>> = {
  offered: 'tentative',
  cancelled: 'cancelled',
};
