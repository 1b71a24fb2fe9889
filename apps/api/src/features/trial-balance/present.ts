import type { MoneyKind } from '@sheafbook/ledger';
import { daysBetween, sumOf } from '@sheafbook/units';
import type { ClearingPart } from './queries.ts';
import type {
  readClearing,
  readHeldDeposits,
  readOpenClaims,
  readSupplierStandings,
  readTrialBalance,
} from './use-cases.ts';

type Reading<UseCase extends (...input: never[]) => unknown> = Awaited<ReturnType<UseCase>>;

export function presentTrialBalance({ balance, currency, throughOn }: Reading<typeof readTrialBalance>) {
  return {
    currency,
    throughOn,
    rows: trialBalanceRows({ balance }),
    debitMinorUnits: balance.debitMinorUnits,
    creditMinorUnits: balance.creditMinorUnits,
    agrees: balance.agrees,
  };
}

export const trialBalanceRows = ({ balance }: Pick<Reading<typeof readTrialBalance>, 'balance'>) =>
  balance.rows.map(({ number, name, debitMinorUnits, creditMinorUnits }) => ({
    number,
    name,
    debitMinorUnits,
    creditMinorUnits,
  }));

/** Which part of a buy's bill an account on the other side of its clearing stands for. */
const PART_OF: Partial<Record<MoneyKind, 'invoiced' | 'credited' | 'charged' | 'forfeited' | 'fund'>> = {
  supplier: 'invoiced',
  supplier_claim: 'credited',
  household: 'charged',
  common_stock: 'charged',
  buy_deposit: 'forfeited',
  store_fund: 'fund',
};

export function presentClearing({ buy, parts, showsNotes, currency }: Reading<typeof readClearing>) {
  const sumOf = (part: string) =>
    parts
      .filter(({ otherKind }) => (PART_OF[otherKind] ?? 'other') === part)
      .reduce((sum, { minorUnits }) => sum + minorUnits, 0);
  const steps = stepsOf(parts);
  return {
    currency,
    buy: { id: buy.buyId, name: buy.name, stage: buy.stage },
    invoicedMinorUnits: sumOf('invoiced'),
    creditedMinorUnits: negated(sumOf('credited')),
    chargedMinorUnits: negated(sumOf('charged')),
    forfeitedMinorUnits: negated(sumOf('forfeited')),
    fundMinorUnits: sumOf('fund'),
    otherMinorUnits: sumOf('other'),
    balanceMinorUnits: steps.at(-1)?.balanceMinorUnits ?? 0,
    stairs: stairsOf(parts, showsNotes),
    steps: steps.map((step) => ({ ...step, note: showsNotes ? step.note : '' })),
  };
}

type Stair = {
  part: string;
  name: string | null;
  amountMinorUnits: number;
  balanceMinorUnits: number;
  entryIds: readonly string[];
};

/**
 * The account as stairs: first what came in, supplier by supplier, then what went out, household by household, down to
 * what is left. Whose step it is is told to those who may know what a household was charged.
 */
function stairsOf(parts: readonly ClearingPart[], showsNames: boolean): Stair[] {
  const stairs = new Map<string, Omit<Stair, 'balanceMinorUnits'>>();
  for (const part of parts) {
    const kind = PART_OF[part.otherKind] ?? 'other';
    const isHousehold = part.otherKind === 'household' || part.otherKind === 'buy_deposit';
    const name = isHousehold && !showsNames ? null : part.otherName;
    const key = `${ORDER.indexOf(kind)} ${part.otherKind === 'common_stock' ? 1 : 0} ${kind} ${name}`;
    const known = stairs.get(key);
    stairs.set(key, {
      part: kind,
      name,
      amountMinorUnits: (known?.amountMinorUnits ?? 0) + part.minorUnits,
      entryIds: [...new Set([...(known?.entryIds ?? []), part.entryId])],
    });
  }
  let balanceMinorUnits = 0;
  return [...stairs]
    .filter(([, { amountMinorUnits }]) => amountMinorUnits !== 0)
    .toSorted(([a], [b]) => Number(a[0]) - Number(b[0]) || Number(a[2]) - Number(b[2])) // stable within a part
    .map(([, stair]) => {
      balanceMinorUnits += stair.amountMinorUnits;
      return { ...stair, balanceMinorUnits };
    });
}

/** From what a buy cost to whom it was charged. */
const ORDER = ['invoiced', 'credited', 'forfeited', 'fund', 'other', 'charged'];

const negated = (minorUnits: number): number => (minorUnits === 0 ? 0 : -minorUnits);

/** One step an entry, with what is left on the clearing account after it. */
function stepsOf(parts: readonly ClearingPart[]) {
  let balanceMinorUnits = 0;
  return [...new Set(parts.map((part) => part.entryNo))].map((entryNo) => {
    const own = parts.filter((part) => part.entryNo === entryNo);
    const amountMinorUnits = own.reduce((sum, part) => sum + part.minorUnits, 0);
    balanceMinorUnits += amountMinorUnits;
    const [first] = own;
    return {
      entryId: first?.entryId ?? '',
      entryNo,
      onDay: first?.onDay ?? '',
      what: first?.what ?? '',
      note: first?.note ?? '',
      amountMinorUnits,
      balanceMinorUnits,
    };
  });
}

const ENDED: ReadonlySet<string> = new Set(['closed', 'called-off']);

/** A deposit still held for a buy that has ended is a mistake to mend. */
const heldDepositRows = ({ deposits }: Reading<typeof readHeldDeposits>) =>
  deposits.map(({ buyId, buy, stage, householdId, household, accountId, heldMinorUnits }) => ({
    buyId,
    buy,
    stage,
    householdId,
    household,
    accountId,
    heldMinorUnits,
    isOverdue: ENDED.has(stage),
  }));

/** One still held for a thing that is back is a mistake as well. */
const heldLoanDepositRows = ({ loanDeposits }: Reading<typeof readHeldDeposits>) =>
  loanDeposits.map(({ inAt, dueAt, ...deposit }) => ({
    ...deposit,
    dueAt: dueAt.toISOString(),
    isOverdue: inAt !== null,
  }));

/** One sheet for both: what a row is not about stays empty. */
export const heldDepositSheet = (reading: Reading<typeof readHeldDeposits>) => [
  ...heldDepositRows(reading).map((row) => ({ ...row, loanId: '', item: '', unitNo: '', dueAt: '' })),
  ...heldLoanDepositRows(reading).map((row) => ({ buyId: '', buy: '', stage: '', ...row })),
];

const sumHeld = (rows: readonly { readonly heldMinorUnits: number }[]) =>
  rows.reduce((sum, { heldMinorUnits }) => sum + heldMinorUnits, 0);

export const presentHeldDeposits = (reading: Reading<typeof readHeldDeposits>) => ({
  currency: reading.currency,
  deposits: heldDepositRows(reading),
  heldMinorUnits: sumHeld(reading.deposits),
  loanDeposits: heldLoanDepositRows(reading),
  loanHeldMinorUnits: sumHeld(reading.loanDeposits),
});

export const openClaimRows = ({ claims, todayOn }: Reading<typeof readOpenClaims>) =>
  claims.map((claim) => ({
    claimId: claim.claimId,
    buyId: claim.buyId,
    buy: claim.buy,
    supplierId: claim.supplierId,
    supplier: claim.supplier,
    food: claim.foodEn,
    foodEs: claim.foodEs,
    kind: claim.kind,
    because: claim.because,
    state: claim.state,
    raisedOn: claim.raisedOn,
    ageDays: daysBetween(claim.raisedOn, todayOn),
    minorUnits: claim.minorUnits,
    creditedMinorUnits: claim.creditedMinorUnits,
    outstandingMinorUnits: claim.outstandingMinorUnits,
  }));

export const presentOpenClaims = (reading: Reading<typeof readOpenClaims>) => ({
  currency: reading.currency,
  claims: openClaimRows(reading),
  outstandingMinorUnits: reading.claims.reduce((sum, claim) => sum + claim.outstandingMinorUnits, 0),
});

/** What we owe is what was brought over and billed less what was credited and paid. */
export const supplierRows = ({ suppliers }: Reading<typeof readSupplierStandings>) =>
  suppliers.map((row) => ({
    supplierId: row.supplierId,
    supplier: row.supplier,
    contact: row.contact,
    accountId: row.accountId,
    broughtOverMinorUnits: row.broughtOverMinorUnits,
    billedMinorUnits: row.billedMinorUnits,
    creditedMinorUnits: row.creditedMinorUnits,
    paidMinorUnits: row.paidMinorUnits,
    lastPaidOn: row.lastPaidOn,
    owedMinorUnits:
      row.broughtOverMinorUnits + row.billedMinorUnits - row.creditedMinorUnits - row.paidMinorUnits,
    claimedMinorUnits: row.claimedMinorUnits,
  }));

/** The sum of what we owe leaves out what was paid before its bill: that is no money to pay others with. */
export function presentSupplierStandings(reading: Reading<typeof readSupplierStandings>) {
  const suppliers = supplierRows(reading);
  return {
    currency: reading.currency,
    suppliers,
    owedMinorUnits: sumOf(suppliers.map(({ owedMinorUnits }) => Math.max(0, owedMinorUnits))),
    prepaidMinorUnits: sumOf(suppliers.map(({ owedMinorUnits }) => Math.max(0, -owedMinorUnits))),
    claimedMinorUnits: sumOf(suppliers.map(({ claimedMinorUnits }) => claimedMinorUnits)),
  };
}
