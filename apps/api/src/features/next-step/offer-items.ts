import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import { listOpenToMe } from '../offer/use-cases.ts';
import type { OpenItem } from './open-item.ts';
import { dueAtInstant } from './steps.ts';

/** What is offered to a household while it is its turn (job map 3.5, question 10). */
export async function listOfferItems(
  tx: Tx,
  context: Context,
  { root }: { readonly root: string },
): Promise<OpenItem[]> {
  const { timeZone } = context.actor;
  return (await listOpenToMe(tx, context)).flatMap(({ offer, food, standing, turn }) =>
    standing !== 'your-turn' || turn === null || turn.passedAt !== null
      ? []
      : [
          {
            ...{ ...dueAtInstant(turn.untilAt, timeZone), kind: 'offer-open' as const },
            ...{ about: food.nameEn, aboutEs: food.nameEs },
            words: 'Something is offered to you first. Say whether you take it.',
            ...{ buy: null, minorUnits: null, path: `${root}/offers/${offer.offerId}` },
          },
        ],
  );
}
