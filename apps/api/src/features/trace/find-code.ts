import type { Tx } from '@sheafbook/db';
import { CODE_ALPHABET, isCode, readCode, spellCode } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { fieldProblem, Problem } from '../../platform/problem.ts';
import type { Depth } from './policy.ts';
import { type Found, findOne, listFoundByCode, listKnownCodes } from './queries-find.ts';
import type { WayQuery } from './schema.ts';

/** What a reader may begin at: a neighbour's container and kitchen are nobody's to ask about without a duty. */
export async function findThings(tx: Tx, context: Context, query: WayQuery, depth: Depth): Promise<Found[]> {
  const { storehouseId, householdId } = context.actor;
  const isOpen = ({ kind, householdId: of }: Found) =>
    of === null || of === householdId || depth === 'recall' || (depth === 'shares' && kind === 'container');
  const { kind, id, code = '' } = query;
  if (kind !== undefined && id !== undefined) {
    const found = await findOne(tx, storehouseId, { kind, id });
    if (!found || !isOpen(found)) throw fieldProblem('thing-not-found', 'id', 'There is no such thing here.');
    return [found];
  }
  const typed = { text: code, code: readCode(code) ?? null, number: numberIn(code) };
  const found = (await listFoundByCode(tx, storehouseId, typed)).filter(isOpen);
  if (found.length === 0) throw await unknownCode(tx, context, code);
  return found;
}

/** The number of an order or a manifest, with or without a word before it. */
function numberIn(text: string): number | null {
  const digits = /^(?:\p{L}+[.\s]*)?#?\s*(\d{1,9})$/u.exec(text)?.[1];
  return digits === undefined ? null : Number(digits);
}

/** Codes of bags have six characters, those of containers seven. */
const LENGTHS = [6, 7];

/** Says whether a character is wrong, which the last one tells, or the code is sound and nothing here has it. */
async function unknownCode(tx: Tx, { actor }: Context, text: string): Promise<Problem> {
  const plain = text.replaceAll(/[\s-]/g, '').toUpperCase();
  const looksLikeOurs = LENGTHS.includes(plain.length) && /^[A-Z0-9]+$/.test(plain);
  if (!looksLikeOurs || isCode(plain))
    return fieldProblem(
      'thing-not-found',
      'code',
      'Nothing here has this code. A code stands on a bag, a container or a paper; a mark stands on the supplier’s sack.',
    );
  const { storehouseId, householdId } = actor;
  const near = await listKnownCodes(tx, storehouseId, { codes: codesNear(plain), householdId });
  const message =
    near.length === 0
      ? 'One character is wrong: the last one does not fit the others. Look at the label again.'
      : `One character is wrong: the last one does not fit the others. It may be ${near.map(spellCode).join(', ')}. Look at the label again.`;
  return new Problem('thing-not-found', { detail: message, fields: [{ field: 'code', message }], near });
}

/** Every code that differs from a text in one character or has two neighbours the other way round. */
function codesNear(text: string): string[] {
  const characters = [...text];
  const wrong = characters.flatMap((_, at) =>
    [...CODE_ALPHABET].map((other) => characters.with(at, other).join('')),
  );
  const turned = characters.slice(1).map((next, at) =>
    characters
      .with(at, next)
      .with(at + 1, characters[at] ?? '')
      .join(''),
  );
  return [...new Set([...wrong, ...turned])].filter(isCode);
}
