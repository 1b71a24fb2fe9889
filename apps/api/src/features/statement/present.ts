import { paymentReference, signInWords } from '@sheafbook/ledger';
import type { ChargePart } from './queries.ts';
import type { readBalance, readBalances, StatementReading } from './use-cases.ts';

export function presentStatement(reading: StatementReading) {
  const { statement, household, period } = reading;
  return {
    storehouse: reading.storehouseName,
    currency: reading.currency,
    household: { id: household.householdId, name: household.name, seat: household.seat },
    from: period.fromOn,
    to: period.throughOn,
    knownAt: period.knownAt,
    openingMinorUnits: statement.openingMinorUnits,
    lines: statement.lines.map(presentLine),
    chargesMinorUnits: statement.chargesMinorUnits,
    paymentsMinorUnits: statement.paymentsMinorUnits,
    closingMinorUnits: statement.closingMinorUnits,
    closing: statement.sign,
    deposits: statement.depositsHeld.map(({ buyId, amountMinorUnits }) => ({
      buyId,
      buy: reading.buyNames.get(buyId) ?? '',
      heldMinorUnits: amountMinorUnits,
    })),
    depositsHeldMinorUnits: statement.depositsHeldMinorUnits,
    buys: presentBuys(reading),
    // Leftover cents of a cost line go to the largest fractions, then to the lower seat (job map 4.1).
    tieBreak: 'lower-seat' as const,
    ask: reading.treasurers,
  };
}

type Line = StatementReading['statement']['lines'][number];

function presentLine(line: Line) {
  return {
    entryId: line.entryId,
    entryNo: line.entryNo,
    onDay: line.onDay,
    recordedAt: new Date(line.recordedAt).toISOString(),
    what: line.what,
    note: line.note,
    buyId: line.causeId,
    buy: line.buyName,
    subjectId: line.subjectId,
    reversesEntryNo: line.reversesEntryNo,
    reversedByEntryNo: line.reversedByEntryNo,
    enteredBy: line.enteredBy,
    isEnteredFor: line.isEnteredFor,
    chargeMinorUnits: line.chargeMinorUnits,
    paymentMinorUnits: line.paymentMinorUnits,
    balanceMinorUnits: line.balanceMinorUnits,
  };
}

/** What each buy of the period charged: food by food with its grams, then freight, then whatever else. */
function presentBuys({ charges, awardGrams }: StatementReading) {
  const buyIds = [...new Set(charges.map((part) => part.buyId))];
  return buyIds.map((buyId) => {
    const parts = charges.filter((part) => part.buyId === buyId);
    const goods = parts.filter((part) => part.buyLineId !== null);
    const lineIds = [...new Set(goods.map((part) => part.buyLineId ?? ''))];
    const freight = parts.filter((part) => part.buyLineId === null && isFreight(part));
    return {
      buyId,
      buy: parts[0]?.buyName ?? '',
      foods: lineIds.map((buyLineId) => ({
        buyLineId,
        food: goods.find((part) => part.buyLineId === buyLineId)?.food ?? null,
        awardGrams: awardGrams.get(buyLineId) ?? 0,
        goodsMinorUnits: sumOf(goods.filter((part) => part.buyLineId === buyLineId)),
      })),
      goodsMinorUnits: sumOf(goods),
      freightMinorUnits: sumOf(freight),
      otherMinorUnits: sumOf(parts) - sumOf(goods) - sumOf(freight),
      totalMinorUnits: sumOf(parts),
      costLines: parts.map(({ costLine, lineMinorUnits, minorUnits, gotSpareUnit }) => ({
        costLine,
        lineMinorUnits,
        minorUnits,
        gotSpareUnit,
      })),
    };
  });
}

const isFreight = ({ costLine }: ChargePart): boolean => costLine.split(':')[0] === 'freight';
const sumOf = (parts: readonly ChargePart[]): number => parts.reduce((sum, part) => sum + part.minorUnits, 0);

/** The statement as rows that a spreadsheet can add up again: opening, lines, closing. */
export function statementRows({ statement, period }: StatementReading) {
  const row = (onDay: string, what: string, balanceMinorUnits: number) => ({
    onDay,
    entryNo: null as number | null,
    what,
    note: '',
    buy: null as string | null,
    chargeMinorUnits: 0,
    paymentMinorUnits: 0,
    balanceMinorUnits,
  });
  return [
    row(period.fromOn, 'opening', statement.openingMinorUnits),
    ...statement.lines.map((line) => ({
      ...row(line.onDay, line.what, line.balanceMinorUnits),
      entryNo: line.entryNo,
      note: line.note,
      buy: line.buyName,
      chargeMinorUnits: line.chargeMinorUnits,
      paymentMinorUnits: line.paymentMinorUnits,
    })),
    row(period.throughOn, 'closing', statement.closingMinorUnits),
  ];
}

export function presentBalance(reading: Awaited<ReturnType<typeof readBalance>>) {
  const { householdId, currency, balanceMinorUnits, deposits } = reading;
  return {
    householdId,
    currency,
    balanceMinorUnits,
    balance: signInWords(balanceMinorUnits),
    deposits: deposits.map(({ buyId, buyName, heldMinorUnits }) => ({ buyId, buy: buyName, heldMinorUnits })),
  };
}

type BalancesReading = Awaited<ReturnType<typeof readBalances>>;

export const presentBalances = ({ balances, next, currency }: BalancesReading) => ({
  currency,
  balances: balances.map(presentBalanceRow),
  next,
});

export function presentBalanceRow(row: BalancesReading['balances'][number]) {
  const { aged } = row;
  return {
    householdId: row.householdId,
    seat: row.seat,
    household: row.name,
    leftOn: row.leftOn,
    balanceMinorUnits: row.balanceMinorUnits,
    balance: signInWords(row.balanceMinorUnits),
    days0To30MinorUnits: aged.days0To30MinorUnits,
    days31To60MinorUnits: aged.days31To60MinorUnits,
    days61To90MinorUnits: aged.days61To90MinorUnits,
    over90DaysMinorUnits: aged.over90DaysMinorUnits,
    creditMinorUnits: aged.creditMinorUnits,
    owesSinceOn: aged.owesSinceOn,
    reference: paymentReference(row.seat),
  };
}
