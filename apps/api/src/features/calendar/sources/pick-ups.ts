import type { Source } from '../appointment.ts';
import { listPickUpsSince } from '../queries.ts';

/** When one's own household fetches its food. Neighbours' hours are theirs. */
export const PICK_UPS: Source = {
  words: {
    'pick-up': {
      en: { title: (buy) => `${buy}: fetch your food`, about: 'Your food waits for you at this time.' },
      es: { title: (buy) => `${buy}: recoger su comida`, about: 'Su comida le espera a esta hora.' },
    },
  },
  list: async (tx, { actor }, sinceOn) => {
    const { storehouseId, householdId } = actor;
    if (householdId === null) return [];
    const rows = await listPickUpsSince(tx, storehouseId, { householdId, sinceOn });
    return rows.flatMap(({ pickUp: { pickUpId, startsAt, endsAt }, buy }) =>
      startsAt === null || endsAt === null
        ? []
        : [
            {
              kind: 'pick-up',
              id: pickUpId,
              status: buy.stage === 'called-off' ? 'cancelled' : 'confirmed',
              subject: buy.name,
              place: '',
              when: { startsAt: startsAt.toISOString(), endsAt: endsAt.toISOString() },
              isBusy: true,
              item: { kind: 'buy', id: buy.buyId },
              householdId,
              path: `/buys/${buy.buyId}`,
            },
          ],
    );
  },
};
