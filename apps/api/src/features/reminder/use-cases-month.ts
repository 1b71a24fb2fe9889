import type { Tx } from '@sheafbook/db';
import { householdAccount } from '@sheafbook/ledger';
import { dayInZone } from '@sheafbook/units';
import { type Actor, hasDuty } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { noteHelpersRead, notePrivateRead } from '../../platform/private-read.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { loadPresentHousehold } from '../household/queries.ts';
import { loadBalance } from '../money/queries.ts';
import { listOpenItems } from '../next-step/use-cases.ts';
import { listNotices } from '../notice/queries.ts';
import { listLandingDays } from './facts.ts';

/** What of a household's month fits one page. */
const MOST_NOTICES = 8;

/**
 * A household's month: what is due, where it is expected, what it was told, and how it stands. For the household itself and
 * whoever helps it; a coordinator may print it for a household that has no e-mail, and then it holds no amount and does
 * not say whether anything is owed (job map section 14). The household sees that it was read.
 */
export function readMonth(context: Context, householdId: string) {
  const { actor } = context;
  const isOwn = actor.householdId === householdId;
  if (!isOwn && !hasDuty(actor, 'coordinator')) throw new Problem('not-your-household');
  const asThem: Context = { ...context, actor: asMemberOf(actor, householdId) };
  return withTx(asThem, async (tx) => {
    const household = await loadPresentHousehold(tx, actor.storehouseId, householdId);
    await noteHelpersRead(tx, context, 'the month on one page');
    const read = { householdIds: [householdId], what: 'pledges, pick-ups and notices' };
    if (!isOwn) await notePrivateRead(tx, context, { ...read, purpose: 'printing the month on one page' });
    const items = [...(await listOpenItems(tx, asThem)), ...(await listLandings(tx, asThem))];
    const notices = await listNotices(tx, asThem.actor, {
      ...{ state: 'all' as const, q: '', after: undefined, limit: MOST_NOTICES },
    });
    return {
      ...{ household, isOwn, todayOn: dayInZone(context.now().getTime(), actor.timeZone) },
      balanceMinorUnits: isOwn
        ? await loadBalance(tx, actor.storehouseId, householdAccount(householdId))
        : null,
      items: items
        .filter(({ kind }) => isOwn || kind !== 'balance-due')
        .map((item) => (isOwn ? item : { ...item, minorUnits: null })),
      notices: notices.slice(0, MOST_NOTICES).map(({ notice }) => notice),
    };
  });
}
export type Month = Awaited<ReturnType<typeof readMonth>>;

/** No duty of whoever prints it comes onto the page. */
const asMemberOf = (actor: Actor, householdId: string): Actor => ({
  ...actor,
  householdId,
  duties: new Set(),
});

async function listLandings(tx: Tx, context: Context) {
  return (await listLandingDays(tx, context)).map(({ about, dueOn }) => ({
    ...{
      kind: 'landing-day' as const,
      dueOn,
      dueAt: null,
      endsAt: null,
      minorUnits: null,
      buy: { name: about },
    },
  }));
}
