import type { Tx } from '@sheafbook/db';
import { FINDING_WORDS, type Finding, INSPECTION_RULES, type Judgement } from '@sheafbook/keeping';
import type { Context } from '../../platform/context.ts';
import { beginScopeHoldInside, listNotHeldFor } from '../hold/use-cases.ts';
import { type Looked, listSiblings } from './queries.ts';

/**
 * Puts on hold what was closed with a container that bulged, leaked or smelt wrong, whoever has it, until two people who
 * looked let it go. What stands on hold for the same finding already stays in that hold. Tells which are held now.
 */
export async function holdSiblings(
  tx: Tx,
  context: Context,
  { looked, findings, judgement }: { looked: Looked; findings: readonly Finding[]; judgement: Judgement },
): Promise<ReadonlySet<string>> {
  const holding = findings.filter((finding) => INSPECTION_RULES[finding].holds);
  const [first] = holding;
  if (!judgement.holds || first === undefined) return new Set();
  const isWholeLot = holding.some((finding) => INSPECTION_RULES[finding].watch === 'lot');
  const siblings = await listSiblings(tx, looked.container, { isWholeLot });
  const containerIds = siblings.map(({ containerId }) => containerId);
  const reason = reasonOf(first);
  const { storehouseId } = context.actor;
  const fresh = new Set(await listNotHeldFor(tx, storehouseId, { containerIds, reason }));
  // Emptied ones are in it too, so that whoever ate from them hears of it; alone they are nothing to hold.
  if (siblings.some(({ containerId, grams }) => grams > 0 && fresh.has(containerId)))
    await beginScopeHoldInside(tx, context, {
      of: { scope: 'containers', containerIds: [...fresh] },
      reason,
    });
  return new Set(containerIds);
}

const reasonOf = (finding: Finding) =>
  `A container that was closed with it was looked at: ${FINDING_WORDS[finding].name.en}.`;
