import type { Missing } from '@sheafbook/ledger';
import type { Actor } from '../../platform/actor.ts';
import { isAboutDeposits, isAboutPledges, presentMissing } from '../buy/use-cases.ts';
import { maySeePledges } from '../pledge/use-cases.ts';
import { pageOf } from './pages.ts';
import { seesWhoPaid } from './policy.ts';

/**
 * What the next move lacks, as far as the actor may know of it (job map 14). Everybody may read this, so of deposits a
 * member hears of the own one only: that somebody has not paid would name them in a small group. Which pledges are
 * meant is told where looking at them is written down.
 */
export function showMissing(missing: readonly Missing[], actor: Actor, buyPath: string) {
  const own = new Set(missing.filter((one) => isOwn(one, actor)).map(({ code }) => code));
  const told = missing.filter(({ code }) => seesWhoPaid(actor) || !isAboutDeposits(code) || own.has(code));
  return presentMissing(
    told.map((one) => strip(one, actor)),
    actor,
  ).map((one) => ({ ...one, isOwn: own.has(one.code), page: pageOf(one.code, actor, buyPath) }));
}

/** Whether the actor's own household is one that the buy waits for. */
const isOwn = ({ code, ids = [] }: Missing, { householdId }: Actor): boolean =>
  isAboutDeposits(code) && householdId !== null && ids.includes(householdId);

function strip(one: Missing, actor: Actor): Missing {
  const { code } = one;
  if (isAboutDeposits(code)) return seesWhoPaid(actor) ? one : { code };
  if (!isAboutPledges(code)) return one;
  return maySeePledges(actor) && one.count !== undefined ? { code, count: one.count } : { code };
}
