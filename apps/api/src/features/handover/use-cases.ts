import type { Tx } from '@sheafbook/db';
import type { BuyRow, OrderConsentRow } from '@sheafbook/db/tables';
import { BUY_STAGES } from '@sheafbook/ledger';
import { sumOf, yearEndBy } from '@sheafbook/units';
import { type Actor, DUTIES } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { WHOLE_LIST } from '../../platform/paging.ts';
import { notePrivateRead } from '../../platform/private-read.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listOpenClaims } from '../claim/use-cases.ts';
import { listSitting } from '../duty/queries.ts';
import { standOfFund } from '../fund-promise/use-cases.ts';
import { listManifests } from '../gift/queries.ts';
import { listGrantsInForce } from '../helper/queries.ts';
import { listHolds } from '../hold/queries.ts';
import { presentHold } from '../hold/use-cases.ts';
import { listOpenBills } from '../invoice/queries.ts';
import { listLoansOut } from '../loan/use-cases.ts';
import { listDepositsOfBuy } from '../money/queries.ts';
import { isDepositSettled } from '../money/use-cases.ts';
import { listOpenBuys } from '../next-step/queries.ts';
import { dueOf, stepFrom, whoMay } from '../next-step/use-cases.ts';
import { listToTelephone } from '../notice/use-cases.ts';
import { listOrderConsents } from '../order/queries.ts';
import { listPantries } from '../pantry/queries.ts';
import { isUnconfirmed } from '../pantry/use-cases.ts';
import { listPeriodCloses, listSignatures } from '../period/queries.ts';
import { SIGNERS } from '../period/schema.ts';
import { lookAtStoreRotation, presentRotation } from '../rotation/use-cases.ts';
import { listBalances } from '../statement/queries.ts';
import { loadStorehouse } from '../storehouse/queries.ts';
import { seesAmounts, seesHelpers, seesLent, seesUnreached } from './policy.ts';
import { listOpenSessions, listOpenStoreOffers, listSuppliersWithTerms } from './queries.ts';

/** Deposits are asked for once a buy is fixed, and stand until it is shared out. */
const WITH_DEPOSITS = ['fixed', 'ordered', 'landed'];

/**
 * All that a new coordinator or treasurer needs to run the group, in one look: what is open and who takes its next step,
 * what is owed, lent, held and at risk, the suppliers with their terms, who has which duty, and what waits for a signature.
 * Amounts are the treasurer's; the coordinator reads of deposits yes or no, and of balances nothing (job map section 14).
 */
export function readHandover(context: Context) {
  return withTx(context, (tx) => lookAtAll(tx, context));
}
export type Handover = Awaited<ReturnType<typeof readHandover>>;

async function lookAtAll(tx: Tx, context: Context) {
  const { actor } = context;
  const { storehouseId } = actor;
  const todayOn = todayOf(context);
  const { name, yearEndMonth } = await loadStorehouse(tx, storehouseId);
  const buys = await listOpenBuys(tx, storehouseId);
  const consents = new Map<string, readonly OrderConsentRow[]>();
  for (const { buyId, stage } of buys)
    if (stage === 'fixed') consents.set(buyId, await listOrderConsents(tx, storehouseId, buyId));
  return {
    ...{ actor, todayOn, nowAt: context.now(), storehouse: name },
    how: BUY_STAGES.flatMap((stage) => stepWho(actor, stage)),
    buys: buys.map((buy) => openBuy(actor, buy, consents.get(buy.buyId) ?? [])),
    sessions: await listOpenSessions(tx, storehouseId),
    claims: await listOpenClaims(tx, storehouseId),
    bills: await listOpenBills(tx, storehouseId),
    deposits: await listDepositsDue(tx, context, buys),
    fund: await standOfFund(tx, storehouseId),
    balances: seesAmounts(actor) ? await sumBalances(tx, context) : null,
    lent: seesLent(actor) ? await listLoansOut(tx, context) : null,
    // Spelled as their own features spell them, so that both look the same wherever they are read.
    holds: (await listHolds(tx, storehouseId, { limit: WHOLE_LIST, isOpen: true })).map((hold) =>
      presentHold(actor, hold),
    ),
    unreached: seesUnreached(actor) ? await listNotReached(tx, context) : null,
    risk: presentRotation(await lookAtStoreRotation(tx, storehouseId, todayOn)).risk,
    offers: await listOpenStoreOffers(tx, storehouseId, context.now()),
    manifests: (await listManifests(tx, storehouseId)).filter(({ manifest }) => manifest.stage === 'out'),
    unaskedPantries: (await listPantries(tx, storehouseId)).filter(({ current }) =>
      isUnconfirmed(current.card, todayOn),
    ),
    suppliers: await listSuppliersWithTerms(tx, storehouseId),
    duties: await listDuties(tx, storehouseId),
    helpers: seesHelpers(actor) ? await listGrantsInForce(tx, storehouseId, context.now()) : null,
    toSign: await listToSign(tx, storehouseId, yearEndBy(todayOn, yearEndMonth)),
  };
}

function openBuy(actor: Actor, buy: BuyRow, consents: readonly OrderConsentRow[]) {
  const step = stepFrom(buy.stage);
  return {
    ...{ buy, due: dueOf(buy, actor) },
    who: step ? whoMay(step, actor, consents) : [],
    consents: consents.map(({ duty }) => duty),
  };
}

/** Each step of a buy with the duties that may take it, so that a stranger can run the next one. */
function stepWho(actor: Actor, stage: string) {
  const step = stepFrom(stage);
  return step ? [{ stage, who: whoMay(step, actor, []) }] : [];
}

/** Whose deposit is still out, buy by buy. Whoever reads amounts is written down for each household. */
async function listDepositsDue(tx: Tx, context: Context, buys: readonly BuyRow[]) {
  const { storehouseId } = context.actor;
  const due: { buy: BuyRow; rows: Awaited<ReturnType<typeof listDepositsOfBuy>> }[] = [];
  for (const buy of buys.filter(({ stage }) => WITH_DEPOSITS.includes(stage)))
    due.push({
      buy,
      rows: (await listDepositsOfBuy(tx, storehouseId, buy.buyId)).filter((row) => !isDepositSettled(row)),
    });
  const householdIds = due.flatMap(({ rows }) => rows.map(({ householdId }) => householdId));
  await notePrivateRead(tx, context, { householdIds, what: 'deposits', purpose: 'handing over a duty' });
  return due;
}

async function listDuties(tx: Tx, storehouseId: string) {
  const sitting = await listSitting(tx, storehouseId);
  return DUTIES.map((duty) => ({ duty, holders: sitting.filter((grant) => grant.duty === duty) }));
}

/** Whom somebody has to telephone about something that was told about safety. */
async function listNotReached(tx: Tx, context: Context) {
  const unreached = await listToTelephone(tx, context);
  const householdIds = unreached.flatMap(({ households }) =>
    households.map(({ householdId }) => householdId),
  );
  await notePrivateRead(tx, context, { householdIds, what: 'notices', purpose: 'handing over a duty' });
  return unreached;
}

/** Closes that lack a signature, and the end of a year that has come and is not closed. */
async function listToSign(tx: Tx, storehouseId: string, yearEndOn: string) {
  const signatures = await listSignatures(tx, storehouseId);
  const closes = await listPeriodCloses(tx, storehouseId);
  const isClosed = closes.some(({ closedThrough }) => closedThrough >= yearEndOn);
  return {
    yearEndOn: isClosed ? null : yearEndOn,
    closes: closes
      .map(({ closedThrough, digestSha256 }) => ({
        closedThrough,
        missing: SIGNERS.filter(
          (duty) =>
            digestSha256 !== null &&
            !signatures.some((signed) => signed.closedThrough === closedThrough && signed.duty === duty),
        ),
      }))
      .filter(({ missing }) => missing.length > 0),
  };
}

/** What households owe and have to their credit, all together; who owes what is the treasurer’s list. */
async function sumBalances(tx: Tx, context: Context) {
  const { storehouseId } = context.actor;
  const rows = await listBalances(tx, storehouseId, { owing: false, limit: WHOLE_LIST });
  const householdIds = rows.map(({ householdId }) => householdId);
  await notePrivateRead(tx, context, { householdIds, what: 'balance', purpose: 'handing over a duty' });
  return {
    owing: rows.filter(({ balanceMinorUnits }) => balanceMinorUnits > 0).length,
    owedMinorUnits: sumOf(rows.map(({ balanceMinorUnits }) => Math.max(0, balanceMinorUnits))),
    creditMinorUnits: sumOf(rows.map(({ balanceMinorUnits }) => Math.max(0, -balanceMinorUnits))),
  };
}
