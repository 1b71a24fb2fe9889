import type { PackingSessionRow } from '@sheafbook/db/tables';
import { listOwnSessions } from '../../packing-session/queries.ts';
import type { Appointment, Source } from '../appointment.ts';

/** Packing days are everybody's; a time on a line is the household's own. */
export const PACKING: Source = {
  words: {
    'packing-day': {
      en: { title: (day) => `${day}: packing day`, about: 'Food is packed at the line. Hands are wanted.' },
      es: {
        title: (day) => `${day}: jornada de envasado`,
        about: 'Se envasa en la línea. Hacen falta manos.',
      },
    },
    'packing-slot': {
      en: { title: (day) => `${day}: your time on a line`, about: 'Bring your bags, clean and dry.' },
      es: {
        title: (day) => `${day}: su tiempo en la línea`,
        about: 'Traiga sus sacos, limpios y secos.',
      },
    },
  },
  list: async (tx, { actor }, sinceOn) => {
    const { storehouseId, householdId, personId } = actor;
    const since = new Date(`${sinceOn}T00:00:00Z`);
    const own = await listOwnSessions(tx, storehouseId, { since, householdId, personId });
    return own.flatMap(({ session, slot }): Appointment[] => {
      const about = aboutOf(session);
      const day = { ...about, kind: 'packing-day', id: session.packingSessionId, when: whenOf(session) };
      if (slot === null) return [day];
      const status = about.status === 'confirmed' && slot.state !== 'booked' ? 'tentative' : about.status;
      return [
        day,
        { ...about, kind: 'packing-slot', id: slot.packingSlotId, when: whenOf(slot), householdId, status },
      ];
    });
  },
};

const whenOf = ({ startsAt, endsAt }: { startsAt: Date; endsAt: Date }) => ({
  startsAt: startsAt.toISOString(),
  endsAt: endsAt.toISOString(),
});

const aboutOf = ({ name, place, stage, packingSessionId }: PackingSessionRow) => ({
  status: stage === 'called-off' ? ('cancelled' as const) : ('confirmed' as const),
  ...{ subject: name, place, isBusy: true, item: null, householdId: null },
  path: `/packing-sessions/${packingSessionId}`,
});
