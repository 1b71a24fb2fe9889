import type { Tx } from '@sheafbook/db';
import { FINDING_WORDS, type Finding, INSPECTION_RULES } from '@sheafbook/keeping';
import { spellCode } from '@sheafbook/units';
import type { Context } from '../../platform/context.ts';
import { listCodes } from '../../platform/list-codes.ts';
import { writeNotice } from '../notice/use-cases.ts';
import type { Beside } from './queries.ts';

/** Whoever has something of the same lot is told to look at it, the store by its packing lead; the finder knows. */
export async function tellBeside(
  tx: Tx,
  context: Context,
  { finderId, finding, beside }: { finderId: string | null; finding: Finding; beside: readonly Beside[] },
): Promise<void> {
  const others = new Set(beside.map(({ householdId }) => householdId).filter((id) => id !== finderId));
  for (const householdId of others) {
    const own = beside.filter((row) => row.householdId === householdId);
    const codes = listCodes(own.map(({ code }) => spellCode(code)));
    await writeNotice(tx, context, {
      ...{ kind: 'held', about: codes, isSafety: INSPECTION_RULES[finding].holds },
      says: wordsOf(finding, codes),
      audience:
        householdId === null ? { to: 'duty', duty: 'packing_lead' } : { to: 'household', householdId },
      path: '/inspections/due',
    });
  }
}

function wordsOf(finding: Finding, codes: string): string {
  const { name } = FINDING_WORDS[finding];
  return INSPECTION_RULES[finding].holds
    ? `A container of the same lot as yours was looked at: ${name.en}. Yours: ${codes}. Look at them from outside, and do not open them, eat from them or give them away before.`
    : `A container of the same lot as yours was looked at: ${name.en}. Yours: ${codes}. Look at them, too, before anybody eats from them.`;
}
