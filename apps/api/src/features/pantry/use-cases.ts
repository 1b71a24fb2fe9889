import type { Tx } from '@sheafbook/db';
import { acceptsAnything, type LabelFact } from '@sheafbook/giving';
import type { Context } from '../../platform/context.ts';
import { newId } from '../../platform/new-id.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import { refuseFutureDay, todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { presentPantry } from './present.ts';
import {
  findPantryNamed,
  insertCard,
  insertPantry,
  listCards,
  listPantries,
  loadPantry,
  lockPantry,
  updatePantry,
} from './queries.ts';
import type { CardFacts, NewCard, NewPantry, PantryEdit } from './schema.ts';

export { isUnconfirmed, ruleCardOf, weekdaysOf } from './card.ts';
export { factsOf, type GiftFacts, isWithoutOxygen } from './gift-facts.ts';
export { mayKeepPantries } from './policy.ts';

/** Every pantry with what it takes now, those that are no longer gone to as well. */
export function readPantries(context: Context) {
  return withTx(
    context,
    async (tx) => ({
      rows: await listPantries(tx, context.actor.storehouseId, { withRetired: true }),
      todayOn: todayOf(context),
    }),
    { isReadOnly: true },
  );
}

/** A pantry with every card that it ever had. */
export function readPantry(context: Context, pantryId: string) {
  return withTx(context, (tx) => pantryOf(tx, context, pantryId), { isReadOnly: true });
}

async function pantryOf(tx: Tx, context: Context, pantryId: string) {
  const found = await loadPantry(tx, context.actor.storehouseId, pantryId);
  return { ...found, cards: await listCards(tx, found.pantry), todayOn: todayOf(context) };
}

/** Writes down a pantry with its first card. */
export function addPantry(context: Context, { card, ...facts }: NewPantry) {
  const { storehouseId } = context.actor;
  refuseEmptyCard(context, card);
  return withTx(context, async (tx) => {
    await refuseSameName(tx, { storehouseId, name: facts.name });
    const pantryId = newId(context);
    await insertPantry(tx, { storehouseId, pantryId, ...facts });
    await writeCard(tx, context, { pantryId, cardVersion: 1, card });
    return pantryOf(tx, context, pantryId);
  });
}

export function editPantry(context: Context, pantryId: string, { version, ...change }: PantryEdit) {
  const { storehouseId } = context.actor;
  return withTx(context, async (tx) => {
    const pantry = await lockPantry(tx, storehouseId, pantryId);
    if (pantry.version !== version) throw await staleProblem(tx, context, pantryId);
    await refuseSameName(tx, { storehouseId, name: change.name }, pantryId);
    await updatePantry(tx, pantry, change);
    return pantryOf(tx, context, pantryId);
  });
}

/** Writes a newer card beside the old ones. Asking again and hearing the same is a newer card too, of a later day. */
export function renewCard(context: Context, pantryId: string, { version, card }: NewCard) {
  refuseEmptyCard(context, card);
  return withTx(context, async (tx) => {
    const pantry = await lockPantry(tx, context.actor.storehouseId, pantryId);
    if (pantry.cardVersion !== version) throw await staleProblem(tx, context, pantryId);
    const cardVersion = version + 1;
    await writeCard(tx, context, { pantryId, cardVersion, card });
    await updatePantry(tx, pantry, { cardVersion });
    return pantryOf(tx, context, pantryId);
  });
}

const staleProblem = async (tx: Tx, context: Context, pantryId: string) =>
  new Problem('stale-version', { newer: presentPantry(await pantryOf(tx, context, pantryId)) });

async function writeCard(
  tx: Tx,
  context: Context,
  { pantryId, cardVersion, card }: { pantryId: string; cardVersion: number; card: CardFacts },
): Promise<void> {
  const { storehouseId, personId } = context.actor;
  const { openings, ...facts } = card;
  const written = { writtenBy: personId, writtenAt: context.now() };
  await insertCard(tx, { storehouseId, pantryId, cardVersion, ...facts, ...written }, openings);
}

/** A card under which nothing could ever be given helps nobody; it names what closes the door. */
function refuseEmptyCard(context: Context, card: CardFacts): void {
  refuseFutureDay(context, { field: 'card.confirmedOn', on: card.confirmedOn });
  const refuse = (field: string, message: string) => {
    throw new Problem('card-accepts-nothing', {
      detail: message,
      fields: [{ field: `card.${field}`, message }],
    });
  };
  if (card.openings.length === 0) refuse('openings', 'Say on which days its door is open.');
  if (!card.acceptsMakerSealed && !card.acceptsHomePacked && !card.acceptsLicensedKitchen)
    refuse(
      'acceptsMakerSealed',
      'It takes nothing as this stands: not what a maker sealed, nor what was packed at home or in a licensed kitchen.',
    );
  if (card.containerKindCodes?.length === 0)
    refuse('containerKindCodes', 'Name a kind of container that it takes, or say that any will do.');
  if (!acceptsAnything({ ...card, labelFacts: card.labelFacts as LabelFact[] }))
    refuse('foodCodesWanted', 'Every food that it wants is one that it does not want.');
}

async function refuseSameName(
  tx: Tx,
  { storehouseId, name }: { storehouseId: string; name: string },
  pantryId?: string,
): Promise<void> {
  const other = await findPantryNamed(tx, storehouseId, name);
  if (other !== undefined && other !== pantryId)
    throw fieldProblem('already-there', 'name', 'There is a pantry of this name already.');
}
