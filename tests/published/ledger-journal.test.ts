// The "Autumn grain" buy and the table of events beside it: job map, sections 4.3, 4.4, 4.6 and 4.7.
import {
  type AccountKey,
  accountKeyText,
  auditBook,
  CURRENCY,
  chartLine,
  claimAccount,
  claimCredited,
  claimRaised,
  clearingAccount,
  clearingChange,
  commonStockAccount,
  depositAccount,
  depositApplied,
  depositForfeited,
  depositReceived,
  depositRefunded,
  householdAccount,
  lateCredit,
  lineTimeCharged,
  type MovementDraft,
  moneyAccount,
  netDrafts,
  paymentReceived,
  sessionAccount,
  sessionSharedOut,
  sharedOut,
  supplierAccount,
  supplierInvoiced,
  supplierPaid,
  suppliesUsed,
  tillAccount,
} from '@sheafbook/ledger';
import { splitByWeight } from '@sheafbook/sharing';
import { expect, test } from 'vitest';
import { aBook } from '../../packages/ledger/test/a-book.ts';

const buyId = 'autumn-grain';
const supplierId = 'mill';
const claimId = 'short-and-torn';
const households = ['ashdown', 'birchall', 'corran', 'dell'];
const forEach = (amounts: readonly number[]) =>
  amounts.map((amountMinorUnits, seat) => ({ householdId: households[seat] ?? '', amountMinorUnits }));

const deposits = forEach([7200, 6300, 5300, 2300]);
const charges = forEach([16548, 15053, 12792, 5457]);
const J1 = deposits.flatMap((deposit) => depositReceived({ ...deposit, buyId, till: 'bank' }));
const J2 = supplierInvoiced({ buyId, supplierId, amountMinorUnits: 43550 + 8800 });
const J3 = claimRaised({ buyId, supplierId, claimId, amountMinorUnits: 2140 + 360 });
const J4 = claimCredited({ supplierId, claimId, amountMinorUnits: 2500 });
const J5 = supplierPaid({ supplierId, amountMinorUnits: 49850, till: 'bank' });
const J6 = sharedOut({ buyId, charges });
const J7 = deposits.flatMap((deposit) => depositApplied({ ...deposit, buyId }));
const J8 = forEach([9348, 8753, 7492, 3157]).flatMap((payment) =>
  paymentReceived({ ...payment, till: 'bank' }),
);
const journal = [J1, J2, J3, J4, J5, J6, J7, J8];

const balance = (drafts: readonly MovementDraft[], key: AccountKey) => {
  const totals = netDrafts(drafts).get(accountKeyText(CURRENCY, key));
  return totals ? totals.ins - totals.outs : 0;
};
const byNumber = (drafts: readonly MovementDraft[]) =>
  drafts.map(({ destination, source, amount }) => [
    `Dr ${chartLine(destination.kind).number}`,
    `Cr ${chartLine(source.kind).number}`,
    amount,
  ]);

test('the journal debits and credits the accounts of its printed form', () => {
  expect(byNumber(journal.flat())).toEqual([
    ...[7200, 6300, 5300, 2300].map((amount) => ['Dr 1000', 'Cr 2100', amount]),
    ['Dr 2200', 'Cr 2000', 52350],
    ['Dr 1200', 'Cr 2200', 2500],
    ['Dr 2000', 'Cr 1200', 2500],
    ['Dr 2000', 'Cr 1000', 49850],
    ...[16548, 15053, 12792, 5457].map((amount) => ['Dr 1100', 'Cr 2200', amount]),
    ...[7200, 6300, 5300, 2300].map((amount) => ['Dr 2100', 'Cr 1100', amount]),
    ...[9348, 8753, 7492, 3157].map((amount) => ['Dr 1000', 'Cr 1100', amount]),
  ]);
});

test('the clearing account falls from 523.50 through 498.50 to 0.00', () => {
  const clearing = journal.map((_, entry) =>
    balance(journal.slice(0, entry + 1).flat(), clearingAccount(buyId)),
  );
  expect(clearing).toEqual([0, 52350, 49850, 49850, 49850, 0, 0, 0]);
});

test('every account of the buy ends at 0.00, and so does the bank', () => {
  const accounts = [
    tillAccount('bank'),
    clearingAccount(buyId),
    supplierAccount(supplierId),
    claimAccount({ supplierId, claimId }),
    ...households.map((householdId) => householdAccount(householdId)),
    ...households.map((householdId) => depositAccount({ householdId, buyId })),
  ];
  expect(accounts.map((account) => balance(journal.flat(), account))).toEqual(accounts.map(() => 0));
});

test('before the balances come in, each household owes its charge less its deposit', () => {
  const owed = households.map((householdId) =>
    balance(journal.slice(0, 7).flat(), householdAccount(householdId)),
  );
  expect(owed).toEqual([9348, 8753, 7492, 3157]);
  expect(owed.reduce((sum, amount) => sum + amount, 0)).toBe(28750);
});

test('the audit finds nothing wrong with the book of the closed buy', () => {
  const moves = ['gathering', 'fixed', 'ordered', 'landed', 'shared-out', 'closed'] as const;
  const book = aBook(
    journal.map((drafts) => ({ drafts })),
    {},
    {
      buys: [
        {
          buyId,
          stage: 'closed',
          moves: moves.map((to, step) => ({ from: moves[step - 1] ?? 'planning', to })),
        },
      ],
      costLines: [
        // Wheat net and beans net of section 4.3, by awarded pounds.
        {
          costLineId: 'wheat',
          totalMinorUnits: 21240,
          shares: costShares([115, 100, 50, 30], [8280, 7200, 3600, 2160]),
        },
        {
          costLineId: 'beans',
          totalMinorUnits: 8560,
          shares: costShares([40, 28, 20, 12], [3424, 2397, 1712, 1027]),
        },
      ],
    },
  );
  const findings = auditBook(book);
  expect(findings.filter((finding) => !finding.holds)).toEqual([]);
  expect(findings.find((finding) => finding.number === 3)?.figure).toBe(
    'buys ended: 1, accounts not at zero: 0',
  );
});

function costShares(weights: readonly number[], amounts: readonly number[]) {
  return weights.map((weight, seat) => ({ weight: BigInt(weight), amountMinorUnits: amounts[seat] ?? 0 }));
}

test('Dell withdraws after ordering: it pays 11.00 out of its deposit, gets 12.00 back, and the buy clears', () => {
  const dell = { householdId: 'dell', buyId };
  const entries = [
    ...[J1, J2, J3].flat(),
    ...sharedOut({
      buyId,
      charges: forEach([16548, 15884, 15194]),
      commonStock: [{ causeId: 'beans-lot', amountMinorUnits: 1124 }],
    }),
    ...depositForfeited({ ...dell, amountMinorUnits: 1100 }),
    ...depositRefunded({ ...dell, amountMinorUnits: 1200, to: 'bank' }),
  ];
  expect(balance(entries, clearingAccount(buyId))).toBe(0);
  expect(balance(entries, depositAccount(dell))).toBe(0);
  expect(balance(entries, householdAccount('dell'))).toBe(0);
  expect(balance(entries, commonStockAccount('beans-lot'))).toBe(1124);
});

test('Dell may as well be charged its 11.00 and have the deposit applied: the buy clears all the same', () => {
  const dell = { householdId: 'dell', buyId };
  const entries = [
    ...[J1, J2, J3].flat(),
    ...sharedOut({
      buyId,
      charges: forEach([16548, 15884, 15194, 1100]),
      commonStock: [{ causeId: 'beans-lot', amountMinorUnits: 1124 }],
    }),
    ...depositApplied({ ...dell, amountMinorUnits: 1100 }),
    ...depositRefunded({ ...dell, amountMinorUnits: 1200, to: 'household' }),
  ];
  expect(balance(entries, clearingAccount(buyId))).toBe(0);
  expect(balance(entries, depositAccount(dell))).toBe(0);
  expect(balance(entries, householdAccount('dell'))).toBe(-1200); // kept on account: it is owed 12.00
});

test.for([
  { from: { supplierId } as const, payer: supplierAccount(supplierId) },
  { from: 'bank' as const, payer: tillAccount('bank') },
])(
  'a late credit of 4.00 on wheat gives 1.56, 1.35, 0.68 and 0.41 and leaves the clearing account alone',
  ({ from, payer }) => {
    const shares = forEach(splitByWeight(400, [115, 100, 50, 30]));
    const entry = lateCredit({ from, amountMinorUnits: 400, shares });
    const balances = households.map((householdId) => balance(entry, householdAccount(householdId)));
    expect(balances).toEqual([-156, -135, -68, -41]);
    expect(balance(entry, payer)).toBe(400);
    expect(clearingChange(entry, buyId)).toBe(0);
  },
);

test('a late charge of 4.00 is the late credit the other way', () => {
  const shares = forEach(splitByWeight(400, [115, 100, 50, 30]));
  const entry = lateCredit({ from: { supplierId }, amountMinorUnits: -400, shares });
  expect(byNumber(entry)).toEqual([156, 135, 68, 41].map((amount) => ['Dr 1100', 'Cr 2000', amount]));
});

test('a session of 228 cans settles to 0.00: line fee, supplies, scrap and sundries by cans filled', () => {
  const cans = [96, 60, 48, 24];
  const sessionId = 'can-day';
  const costs = [3000, 30324, 665, 517]; // 30.00; 228 cans at 1.33; 5 scrapped cans at 1.33; 5.17
  const parts = costs.map((cost) => splitByWeight(cost, cans));
  expect(parts).toEqual([
    [1263, 789, 632, 316],
    [12768, 7980, 6384, 3192],
    [280, 175, 140, 70],
    [218, 136, 109, 54],
  ]);
  const entries = [
    ...lineTimeCharged({ sessionId, amountMinorUnits: 3000 }),
    ...suppliesUsed({ sessionId, supplyId: 'cans', amountMinorUnits: 30324 }),
    ...suppliesUsed({ sessionId, supplyId: 'cans', amountMinorUnits: 665 }),
    ...suppliesUsed({ sessionId, supplyId: 'sundries', amountMinorUnits: 517 }),
    ...parts.flatMap((part) => sessionSharedOut({ sessionId, charges: forEach(part) })),
  ];
  expect(balance(entries, sessionAccount(sessionId))).toBe(0);
  expect(balance(entries, moneyAccount('line_fees', { causeId: sessionId }))).toBe(-3000);
});
