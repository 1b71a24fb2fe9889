import type { Tx } from '@sheafbook/db';
import type { ContainerRow } from '@sheafbook/db/tables';
import { INTAKE_WORDS, judgeIntake } from '@sheafbook/keeping';
import { massAccount, moveGrams } from '@sheafbook/ledger';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { noteHelpersRead } from '../../platform/private-read.ts';
import { fieldProblem } from '../../platform/problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { whoseStock } from '../../platform/whose-stock.ts';
import { withTx } from '../../platform/with-tx.ts';
import { insertLot } from '../bag/queries.ts';
import { judgeContainerFill, listTreatmentWarnings, makeContainers } from '../container/use-cases.ts';
import { loadContainerKind } from '../container-kind/queries.ts';
import { loadFood } from '../food/queries.ts';
import { insertMoves } from '../keeping/queries.ts';
import { loadHouseOwners, loadOutsideVessels } from '../storehouse/queries.ts';
import { mayTakeInCommon } from './policy.ts';
import { insertDonor, insertDonorReading, insertIntake, listIntakes, loadDonor } from './queries.ts';
import type { IntakeQuery, IntakeWish } from './schema.ts';

/**
 * Takes in stock that somebody gives: asked about, weighed, a lot of its own in coded containers. What stood near chemicals
 * is refused; what nobody can vouch for is taken as old and warm. Who gave it is kept apart.
 */
export function takeIn(context: Context, wish: IntakeWish) {
  const { storehouseId, personId } = context.actor;
  const householdId = whoseStock(context, wish.of, mayTakeInCommon);
  const judgement = judgeIntake(wish.answers);
  return withTx(context, async (tx) => {
    if (judgement.verdict === 'refused')
      throw fieldProblem('intake-refused', 'answers.harm', INTAKE_WORDS['near-chemicals'].en);
    const food = await loadFood(tx, storehouseId, wish.foodId);
    const kind = await loadContainerKind(tx, storehouseId, wish.containerKindId);
    const filling = judgeContainerFill(wish.gramsEach, kind, food, 'gramsEach');
    refuseFutureDay(context, { field: 'packedOn', on: wish.packedOn });
    const lotId = newId(context);
    const { foodId, harvestYear = null, packedOn } = wish;
    await insertLot(tx, {
      ...{ storehouseId, lotId, foodId, harvestYear, madeOn: packedOn, supplierMark: wish.mark },
      originNote: GIVEN,
    });
    const intake = await insertIntake(tx, {
      ...{ storehouseId, lotId, householdId, ...wish.answers, note: wish.note },
      ...{ isUnknownHistory: judgement.verdict === 'unknown-history', allergensMet: wish.allergensMet },
      ...{ takenBy: personId, takenAt: context.now() },
    });
    await insertDonor(tx, { storehouseId, lotId, householdId, donor: wish.donor });
    const { treatment, moistureTenths, count } = wish;
    const filled = await makeContainers(tx, context, {
      ...{ kind, householdId, lotId, packedOn, count, note: '', treatment, moistureTenths },
    });
    await noteWarmth(tx, context, { filled, packedOn, toldTenths: judgement.toldTenths });
    const entry = await bookIn(tx, context, { filled, lotId, householdId, gramsEach: wish.gramsEach });
    const warnings = [...filling, ...listTreatmentWarnings(wish, kind, food)];
    return { intake, judgement, food, entry, containers: filled, gramsEach: wish.gramsEach, warnings };
  });
}
export type TookIn = Awaited<ReturnType<typeof takeIn>>;

/** What stands on labels and lists; who gave it does not. */
const GIVEN = 'Given to the store';

type Filled = { readonly filled: readonly ContainerRow[] };

/** How warm somebody says it stood; what nobody knows is left unknown, which the book reckons as warm. */
async function noteWarmth(
  tx: Tx,
  context: Context,
  { filled, packedOn, toldTenths }: Filled & { packedOn: string; toldTenths: number | null },
): Promise<void> {
  if (toldTenths === null) return;
  const { storehouseId, personId } = context.actor;
  await insertMoves(
    tx,
    filled.map(({ containerId }) => ({
      ...{ storehouseId, containerMoveId: newId(context), containerId, movedOn: packedOn, placeId: null },
      ...{ toldTenths, movedBy: personId, movedAt: context.now() },
    })),
  );
}

async function bookIn(
  tx: Tx,
  context: Context,
  wish: Filled & { lotId: string; householdId: string | null; gramsEach: number },
) {
  const { storehouseId } = context.actor;
  const { filled, lotId, householdId, gramsEach: amountGrams } = wish;
  const vesselIdOf = await loadOutsideVessels(tx, storehouseId);
  const { unassignedId, commonId } = await loadHouseOwners(tx, storehouseId);
  const from = massAccount(vesselIdOf('supplier'), unassignedId);
  return postEntry(tx, context, {
    what: 'stock-taken-in',
    onDay: todayOf(context),
    subjectId: lotId,
    drafts: filled.map(({ containerId }) =>
      moveGrams({ lotId, from, to: massAccount(containerId, householdId ?? commonId), amountGrams }),
    ),
  });
}

/** What was taken in, the newest first, without a word of who gave it. */
export function readIntakes(context: Context, query: IntakeQuery) {
  const householdId = whoseStock(context, query.of, mayTakeInCommon);
  return withTx(context, async (tx) => {
    if (householdId !== null) await noteHelpersRead(tx, context, 'shares and stock');
    return listIntakes(tx, context.actor.storehouseId, householdId);
  });
}

/** Who gave a lot of common stock, for a purpose that is written down with who asked. */
export function readDonor(context: Context, lotId: string, purpose: string) {
  const { storehouseId, personId } = context.actor;
  return withTx(
    context,
    async (tx) => {
      const donor = await loadDonor(tx, storehouseId, lotId);
      await insertDonorReading(tx, {
        ...{ storehouseId, donorReadingId: newId(context), lotId, purpose },
        ...{ readBy: personId, readAt: context.now() },
      });
      return { lotId, donor };
    },
    { task: 'donor' },
  );
}
