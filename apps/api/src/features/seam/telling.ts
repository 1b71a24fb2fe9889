import type { Tx } from '@sheafbook/db';
import { spellCode } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { endSentence } from '../../platform/end-sentence.ts';
import { listCodes } from '../../platform/list-codes.ts';
import { writeNotice } from '../notice/use-cases.ts';
import type { SealHeld } from './queries.ts';
import type { Settling } from './schema.ts';

const codesOf = (holds: readonly SealHeld[]): string => listCodes(holds.map(({ code }) => spellCode(code)));

/** A seal failed: each owner hears which of its containers are in doubt, and of nobody else's. */
export async function tellFailed(tx: Tx, context: Context, holds: readonly SealHeld[]): Promise<void> {
  for (const own of byOwner(holds))
    await tellOwner(tx, context, {
      ...{ own, kind: 'held' },
      says: `A seal failed its check, and what was closed before it is in doubt. Yours: ${codesOf(own)}. Do not open them, eat from them or give them away until you hear more.`,
    });
}

/** What a phone told late of what was closed before a machine stopped is in doubt with the rest, and its owner hears so. */
export async function tellLate(tx: Tx, context: Context, holds: readonly SealHeld[]): Promise<void> {
  for (const own of byOwner(holds))
    await tellOwner(tx, context, {
      ...{ own, kind: 'held' },
      says: `What was closed before a seal failed its check, and was written down only now, is in doubt too. Yours: ${codesOf(own)}. Do not open them, eat from them or give them away until you hear more.`,
    });
}

/** What was decided, to each owner. What is still to be done with care is about safety, a release is not. */
export async function tellAnswer(
  tx: Tx,
  context: Context,
  answer: { open: readonly SealHeld[]; disposition: Settling['disposition']; note: string },
): Promise<void> {
  const { open, disposition, note } = answer;
  for (const own of byOwner(open))
    await tellOwner(tx, context, {
      ...{ own, kind: disposition === 'release' ? 'released' : 'held' },
      says: WORDS[disposition](codesOf(own), endSentence(note)),
    });
}

const WORDS: Readonly<Record<Settling['disposition'], (codes: string, note: string) => string>> = {
  release: (codes, note) => `The seals of ${codes} passed: ${note} You may use them again.`,
  're-can': (codes, note) =>
    `What is in ${codes} goes into new containers with fresh absorbers: ${note} Bring them back if you have them at home, and do not open them before.`,
  'eat-now': (codes, note) =>
    `Eat what is in ${codes} soon, and keep it no longer: ${note} If one is swollen, wet, mouldy or smells wrong, do not eat it or give it away; ask your county extension office.`,
  discard: (codes, note) => `${codes} are thrown away: ${note} Do not eat what is in them or give it away.`,
};

const byOwner = (holds: readonly SealHeld[]): SealHeld[][] =>
  [...new Set(holds.map(({ household }) => household.householdId))].map((householdId) =>
    holds.filter(({ household }) => household.householdId === householdId),
  );

async function tellOwner(
  tx: Tx,
  context: Context,
  { own, kind, says }: { own: readonly SealHeld[]; kind: 'held' | 'released'; says: string },
): Promise<void> {
  const [first] = own;
  if (!first) return;
  await writeNotice(tx, context, {
    ...{ kind, says, about: first.sessionName, isSafety: kind === 'held' },
    audience: { to: 'household', householdId: first.household.householdId },
    path: `/packing-sessions/${first.check.packingSessionId}`,
  });
}
