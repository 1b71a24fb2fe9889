import type { Context } from '../../platform/context.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadOwnHousehold } from '../household/use-cases.ts';
import { loadStorehouse } from '../storehouse/queries.ts';
import type { Taken } from './present.ts';
import {
  listContact,
  listDuties,
  listEaters,
  listGuidelines,
  listHelpers,
  listHousehold,
  listNotices,
  listPersons,
  listPlan,
  listPrivateReads,
} from './queries.ts';
import {
  listContainerMoves,
  listContainers,
  listContainerWishes,
  listHoldings,
  listMassMovements,
  listOwnPlaces,
  listPlaceWarmth,
  listStatement,
} from './queries-book.ts';
import {
  listAllotments,
  listCharges,
  listDeposits,
  listPickUps,
  listPledges,
  listShares,
  listWithdrawals,
} from './queries-buy.ts';

/** All that the book knows of one household, as of one moment. */
export function takeAlong(context: Context, householdId: string): Promise<Taken> {
  const { storehouseId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      await loadOwnHousehold(tx, context, householdId);
      const subject = { storehouseId, householdId };
      await notePrivateRead(tx, context, {
        householdIds: [householdId],
        what: 'everything',
        purpose: 'taking along',
      });
      const tables = {
        household: await listHousehold(tx, subject),
        contact: await listContact(tx, subject),
        persons: await listPersons(tx, subject),
        duties: await listDuties(tx, subject),
        eaters: await listEaters(tx, subject),
        plan: await listPlan(tx, subject),
        guidelines: await listGuidelines(tx, subject),
        pledges: await listPledges(tx, subject),
        allotments: await listAllotments(tx, subject),
        shares: await listShares(tx, subject),
        charges: await listCharges(tx, subject),
        deposits: await listDeposits(tx, subject),
        withdrawals: await listWithdrawals(tx, subject),
        pickUps: await listPickUps(tx, subject),
        containerWishes: await listContainerWishes(tx, subject),
        containers: await listContainers(tx, subject),
        places: await listOwnPlaces(tx, subject),
        placeWarmth: await listPlaceWarmth(tx, subject),
        containerMoves: await listContainerMoves(tx, subject),
        holdings: await listHoldings(tx, subject),
        statement: await listStatement(tx, subject),
        massMovements: await listMassMovements(tx, subject),
        helpers: await listHelpers(tx, subject),
        privateReads: await listPrivateReads(tx, subject),
        notices: await listNotices(tx, subject),
      };
      return { storehouse: await loadStorehouse(tx, storehouseId), madeAt: context.now(), tables };
    },
    { task: 'take-along', isReadOnly: true },
  );
}
