import type { BuyRow } from '@sheafbook/db/tables';
import type { Appointment, Source } from '../appointment.ts';
import { listBuysSince } from '../queries.ts';

/** When a buy's gathering closes, when it is ordered and when it lands: the same for everybody. */
export const BUYS: Source = {
  words: {
    'gathering-closes': {
      en: {
        title: (buy) => `${buy}: gathering closes`,
        about: 'Pledges can be made and raised until then.',
      },
      es: {
        title: (buy) => `${buy}: cierran las promesas`,
        about: 'Hasta entonces se puede prometer y prometer más.',
      },
    },
    'order-day': {
      en: { title: (buy) => `${buy}: order day`, about: 'The order goes to the suppliers.' },
      es: { title: (buy) => `${buy}: día del pedido`, about: 'El pedido sale a los proveedores.' },
    },
    landing: {
      en: {
        title: (buy) => `${buy}: landing day`,
        about: 'The food arrives. Heavy bags are for two people to lift.',
      },
      es: {
        title: (buy) => `${buy}: día de llegada`,
        about: 'Llega la comida. Los sacos pesados se levantan entre dos.',
      },
    },
  },
  list: async (tx, { actor }, sinceOn) =>
    (await listBuysSince(tx, actor.storehouseId, sinceOn)).flatMap(appointmentsOf),
};

function appointmentsOf(buy: BuyRow): Appointment[] {
  const about = {
    id: buy.buyId,
    status: statusOf(buy.stage),
    subject: buy.name,
    place: '',
    isBusy: false,
    item: { kind: 'buy', id: buy.buyId },
    householdId: null,
    path: `/buys/${buy.buyId}`,
  };
  const closesAt = buy.gatheringClosesAt.toISOString();
  const landing =
    buy.landingOn === null
      ? []
      : [{ ...about, kind: 'landing', when: { on: buy.landingOn }, place: buy.landingPlace }];
  return [
    { ...about, kind: 'gathering-closes', when: { startsAt: closesAt, endsAt: null } },
    { ...about, kind: 'order-day', when: { on: buy.orderOn } },
    ...landing,
  ];
}

/** The days of a buy that is only planned may move still. */
function statusOf(stage: string): Appointment['status'] {
  if (stage === 'called-off') return 'cancelled';
  return stage === 'planning' ? 'tentative' : 'confirmed';
}
