import type { Tx } from '@sheafbook/db';
import { giftValue, mealsOf } from '@sheafbook/giving';
import { commonStockCounted, composted, discarded, fedToAnimals } from '@sheafbook/ledger';
import { addDays, sumOf, weekdayOf } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { postEntry } from '../../platform/post-entry.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { lockContainers, refuseInDoubt } from '../container/queries.ts';
import { loadFillSolver } from '../fill/use-cases.ts';
import { listCoordinators } from '../order/queries.ts';
import { loadPantry } from '../pantry/queries.ts';
import { ruleCardOf, weekdaysOf } from '../pantry/use-cases.ts';
import { loadWorth } from '../stock-count/use-cases.ts';
import { loadOutsideVessels } from '../storehouse/queries.ts';
import { listMetOnLine } from '../trace/use-cases.ts';
import { loadCandidate, loadCandidates } from './candidates.ts';
import { answerOf, lotsOf, type MatchingAnswer, type MatchingInputs, type Trip } from './match.ts';
import {
  insertMatching,
  listGiftsBetween,
  listLines,
  loadManifest,
  loadMatching,
  sumGramsBetween,
  upsertFacts,
} from './queries.ts';
import type { GiftFactsWish, LadderStepWish, MatchingWish, YearQuery } from './schema.ts';

export { mayGive } from './policy.ts';

/** What may be given, what closes first in front, each with the steps of the ladder that are open to it. */
export function readQueue(context: Context) {
  return withTx(context, (tx) => loadCandidates(tx, context), { isReadOnly: true });
}

/** Says who sealed a container, what its label says and what was seen of it. What is out is said of when it is back. */
export function sayFacts(context: Context, containerId: string, said: GiftFactsWish) {
  const { storehouseId, personId } = context.actor;
  return withTx(context, async (tx) => {
    await lockContainers(tx, storehouseId, [containerId]);
    await loadCandidate(tx, context, containerId);
    await upsertFacts(tx, { storehouseId, containerId, ...said, saidBy: personId, saidAt: context.now() });
    return loadCandidate(tx, context, containerId);
  });
}

const DOWN = { animals: fedToAnimals, composted, discarded } as const;
const STEP_OF = { animals: 'animals', composted: 'compost', discarded: 'discard' } as const;

/**
 * Sends a whole container down the ladder: to animals, the compost or the bin. Its grams leave the book, and what it cost is
 * a loss. What is on hold goes nowhere; treated or mouldy food is thrown away and nothing else, and
 * what was found unfit goes no better way than its last look allows.
 */
export function takeStep(context: Context, containerId: string, { to, reason }: LadderStepWish) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    await lockContainers(tx, storehouseId, [containerId]);
    const { kept, ownerId, outOn, steps } = await loadCandidate(tx, context, containerId);
    const { containerCode, lotId } = kept.container;
    if (outOn !== null)
      throw new Problem('gift-refused', { detail: `${containerCode} is on manifest ${outOn}.` });
    await refuseInDoubt(tx, storehouseId, containerId);
    if (!steps.includes(STEP_OF[to]))
      throw fieldProblem(
        'gift-refused',
        'to',
        `${containerCode} may not go there: treated or mouldy food is thrown away, and what was found unfit goes where its last look lets it.`,
      );
    const vesselIdOf = await loadOutsideVessels(tx, storehouseId);
    const leaving = {
      ...{ lotId, ownerId, amountGrams: kept.grams },
      ...{ fromVesselId: containerId, outsideVesselId: vesselIdOf(to) },
    };
    const isCommon = kept.container.householdId === null;
    const worth = isCommon ? await loadWorth(tx, storehouseId, { lotId, grams: kept.grams }) : 0;
    const entry = await postEntry(tx, context, {
      ...{ what: `container-${to}`, onDay: todayOf(context), subjectId: containerId, note: reason },
      drafts: [...DOWN[to](leaving), ...commonStockCounted({ causeId: lotId, differenceMinorUnits: -worth })],
    });
    return { entry, containerCode, grams: kept.grams, to };
  });
}

/** Works out which containers go on which trip, proved best, and keeps what it was worked out from. */
export async function matchTrips(context: Context, wish: MatchingWish) {
  const { storehouseId, personId } = context.actor;
  const solver = await loadFillSolver();
  return withTx(context, async (tx) => {
    const trips: Trip[] = [];
    for (const [at, trip] of wish.trips.entries()) trips.push(await tripOf(tx, context, trip, at));
    refuseSharedWeek(trips, wish);
    const candidates = (await loadCandidates(tx, context)).filter(
      ({ isDue, outOn }) => isDue && outOn === null,
    );
    const inputs: MatchingInputs = { todayOn: todayOf(context), trips, lots: lotsOf(candidates, trips) };
    const answer: MatchingAnswer = answerOf(solver, inputs);
    const giftMatchingId = newId(context);
    await insertMatching(tx, {
      ...{ storehouseId, giftMatchingId, inputs, answer, madeBy: personId, madeAt: context.now() },
    });
    return { id: giftMatchingId, inputs, answer };
  });
}

export function readMatching(context: Context, matchingId: string) {
  return withTx(context, (tx) => loadMatchingOf(tx, context, matchingId), { isReadOnly: true });
}

export async function loadMatchingOf(tx: Tx, { actor }: Context, matchingId: string) {
  const row = await loadMatching(tx, actor.storehouseId, matchingId);
  return {
    id: row.giftMatchingId,
    inputs: row.inputs as MatchingInputs,
    answer: row.answer as MatchingAnswer,
  };
}

const LONGEST_AHEAD_DAYS = 90;

async function tripOf(
  tx: Tx,
  context: Context,
  trip: MatchingWish['trips'][number],
  at: number,
): Promise<Trip> {
  const { storehouseId } = context.actor;
  const todayOn = todayOf(context);
  const { pantry, current } = await loadPantry(tx, storehouseId, trip.pantryId);
  const refuse = (field: string, message: string) =>
    fieldProblem('invalid-input', `trips.${at}.${field}`, message);
  if (pantry.isRetired) throw refuse('pantryId', `Nobody goes to ${pantry.name} any more.`);
  if (trip.onDay < todayOn) throw refuse('onDay', 'A trip is still to come.');
  if (trip.onDay > addDays(todayOn, LONGEST_AHEAD_DAYS)) throw refuse('onDay', 'Plan at most 90 days ahead.');
  const openWeekdays = weekdaysOf(current.openings);
  if (!openWeekdays.includes(weekdayOf(trip.onDay)))
    throw refuse('onDay', `${pantry.name} is not open on that day of the week.`);
  const { card } = current;
  const week = weekOf(trip.onDay);
  const { pantryId } = pantry;
  const taken = await sumGramsBetween(tx, storehouseId, { pantryId, ...week });
  const visit = { fromOn: trip.onDay, toOn: trip.onDay };
  const takenThen = await sumGramsBetween(tx, storehouseId, { pantryId, ...visit });
  return {
    ...{ pantryId: pantry.pantryId, pantry: pantry.name },
    ...{ cardVersion: card.cardVersion, card: ruleCardOf(card) },
    ...{ openWeekdays, onDay: trip.onDay, distanceMetres: trip.distanceMetres ?? 2 * pantry.distanceMetres },
    roomGrams: Math.max(
      0,
      Math.min(
        trip.capacityGrams,
        (card.mostGramsPerVisit ?? Number.POSITIVE_INFINITY) - takenThen, // a day at one door is one visit
        (card.mostGramsPerWeek ?? Number.POSITIVE_INFINITY) - taken,
      ),
    ),
  };
}

/** From Monday to Sunday (ISO 8601). */
export function weekOf(day: string) {
  const fromOn = addDays(day, -((weekdayOf(day) + 6) % 7));
  return { fromOn, toOn: addDays(fromOn, 6) };
}

/** What a pantry takes in a week is shared by the trips of that week, so there is one a week and pantry in a matching. */
function refuseSharedWeek(trips: readonly Trip[], { trips: wished }: MatchingWish): void {
  const weeks = trips.map(({ pantryId, onDay }) => `${pantryId} ${weekOf(onDay).fromOn}`);
  const twice = weeks.findIndex((week, at) => weeks.indexOf(week) < at);
  if (twice !== -1 && wished[twice])
    throw fieldProblem(
      'invalid-input',
      `trips.${twice}.onDay`,
      'Go to a pantry once a week in one matching.',
    );
}

/** The gifts of a calendar year, and those of the reader's own household. Meals and value are estimates. */
export function readYear(context: Context, { year }: YearQuery) {
  const { storehouseId, householdId, currency } = context.actor;
  const wanted = year ?? Number(todayOf(context).slice(0, 4));
  return withTx(
    context,
    async (tx) => {
      const days = { fromOn: `${wanted}-01-01`, toOn: `${wanted}-12-31` };
      const rows = await listGiftsBetween(tx, storehouseId, days);
      const own =
        householdId === null
          ? []
          : await listGiftsBetween(tx, storehouseId, { ...days, ownerId: householdId });
      return {
        ...{ year: wanted, rows, ownRows: own },
        ...{ all: summaryOf(rows, currency), own: summaryOf(own, currency) },
      };
    },
    { isReadOnly: true },
  );
}

/** The published value of a pound is one in US dollars, so no other currency has one. */
export function summaryOf(rows: readonly { readonly grams: number }[], currency: string) {
  const grams = sumOf(rows.map((row) => row.grams));
  return { grams, meals: mealsOf(grams), valueMinorUnits: currency === 'USD' ? giftValue(grams) : null };
}

/** A manifest and whom the pantry may call: the coordinators, and their telephones where they show them. */
export function readManifestWithContacts(context: Context, manifestId: string) {
  return withTx(
    context,
    async (tx) => ({
      manifest: await manifestOf(tx, context, manifestId),
      coordinators: await listCoordinators(tx, context.actor.storehouseId),
    }),
    { isReadOnly: true },
  );
}

/** A manifest with its lines, for the papers too. */
export async function manifestOf(tx: Tx, { actor }: Context, manifestId: string) {
  const { storehouseId } = actor;
  const row = await loadManifest(tx, storehouseId, manifestId);
  return { ...row, lines: await listLinesWithMet(tx, storehouseId, [manifestId]) };
}

/** Lines with what ran before each container on its line: whoever gets it must know what may have got into it. */
export async function listLinesWithMet(tx: Tx, storehouseId: string, manifestIds: readonly string[]) {
  const lines = await listLines(tx, storehouseId, manifestIds);
  const ids = [...new Set(lines.map(({ line }) => line.containerId))];
  const met = await listMetOnLine(tx, storehouseId, ids);
  return lines.map((row) => ({ ...row, metOnLine: met.get(row.line.containerId) ?? [] }));
}

export type ManifestView = Awaited<ReturnType<typeof manifestOf>>;
