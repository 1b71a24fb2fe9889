// Debit and credit of every event: job map, section 4.4, "Every other event", row by row, and its chart of accounts.
import * as ledger from '@sheafbook/ledger';
import { expect, test } from 'vitest';

const householdId = 'ashdown';
const [buyId, supplierId, claimId, sessionId, itemId, loanId] = [
  'buy',
  'mill',
  'claim',
  'session',
  'sealer',
  'loan',
];
const deposit = { householdId, buyId, amountMinorUnits: 100 };
const claim = { supplierId, claimId, amountMinorUnits: 100 };
const share = { householdId, amountMinorUnits: 100 };

const rows: [event: string, drafts: ledger.MovementDraft[], pairs: string][] = [
  ['deposit moved from balance', ledger.depositFromBalance(deposit), '1100/2100'],
  ['refund of deposit', ledger.depositRefunded({ ...deposit, to: 'bank' }), '2100/1000'],
  ['refund of deposit in cash', ledger.depositRefunded({ ...deposit, to: 'cash_tin' }), '2100/1010'],
  ['refund of deposit kept on account', ledger.depositRefunded({ ...deposit, to: 'household' }), '2100/1100'],
  ['forfeited deposit', ledger.depositForfeited(deposit), '2100/2200'],
  [
    'unfilled mass taken into common stock',
    ledger.commonStockTaken({ buyId, causeId: 'lot', amountMinorUnits: 100 }),
    '1400/2200',
  ],
  [
    'common stock sold to household at cost with a margin',
    ledger.commonStockSold({ householdId, causeId: 'lot', costMinorUnits: 100, marginMinorUnits: 7 }),
    '1100/1400 1100/3000',
  ],
  ['claim refused, buy still open', ledger.claimRefusedWhileOpen({ ...claim, buyId }), '2200/1200'],
  ['claim refused, buy closed', ledger.claimRefusedAfterClose(claim), '5000/1200'],
  [
    'late credit after close, on the supplier',
    ledger.lateCredit({ from: { supplierId }, amountMinorUnits: 100, shares: [share] }),
    '2000/1100',
  ],
  [
    'late credit after close, into the bank',
    ledger.lateCredit({ from: 'bank', amountMinorUnits: 100, shares: [share] }),
    '1000/1100',
  ],
  ['bank charge', ledger.bankCharge({ amountMinorUnits: 100 }), '5010/1000'],
  ['cash taken', ledger.paymentReceived({ ...share, till: 'cash_tin' }), '1010/1100'],
  ['cash banked', ledger.cashBanked({ amountMinorUnits: 100 }), '1000/1010'],
  [
    'supplies bought',
    ledger.suppliesBought({ supplyId: 'lids', supplierId, amountMinorUnits: 100 }),
    '1300/2000',
  ],
  [
    'supplies used in a session',
    ledger.suppliesUsed({ sessionId, supplyId: 'lids', amountMinorUnits: 100 }),
    '2300/1300',
  ],
  [
    'line time charged into a session',
    ledger.lineTimeCharged({ sessionId, amountMinorUnits: 100 }),
    '2300/4000',
  ],
  ['session shared out', ledger.sessionSharedOut({ sessionId, charges: [share] }), '1100/2300'],
  ['equipment fee or late fee', ledger.equipmentFeeCharged({ ...share, itemId }), '1100/4010'],
  ['equipment deposit in', ledger.loanDepositReceived({ ...share, loanId, till: 'bank' }), '1000/2150'],
  ['equipment deposit back', ledger.loanDepositReturned({ ...share, loanId, till: 'bank' }), '2150/1000'],
  ['equipment deposit from the balance', ledger.loanDepositFromBalance({ ...share, loanId }), '1100/2150'],
  ['equipment deposit to the balance', ledger.loanDepositApplied({ ...share, loanId }), '2150/1100'],
  ['missing part charged', ledger.partCharged({ ...share, itemId }), '1100/5020'],
  [
    'missing part replaced',
    ledger.partReplaced({ itemId, amountMinorUnits: 100, till: 'bank' }),
    '5020/1000',
  ],
  ['store fund levy on buy', ledger.sharedOut({ buyId, charges: [], levyMinorUnits: 100 }), '2200/3000'],
  [
    'member transfer of food at price (the second pair is the grams)',
    ledger.memberTransfer({
      giverId: 'birchall',
      takerId: 'ashdown',
      priceMinorUnits: 100,
      mass: [{ lotId: 'lot', fromVesselId: 'can-1', toVesselId: 'can-1', amountGrams: 2600 }],
    }),
    '1100/1100 mass/mass',
  ],
  ['gift of common stock', ledger.commonStockGiven({ causeId: 'lot', amountMinorUnits: 100 }), '3010/1400'],
  ['write-off of a debt', ledger.debtWrittenOff(share), '5030/1100'],
  ['hardship cover from fund', ledger.hardshipCovered(share), '3000/1100'],
  [
    'year end of a fee and of a loss',
    ledger.yearEnd({
      accounts: [
        { key: ledger.moneyAccount('losses'), balanceMinorUnits: 40 },
        { key: ledger.moneyAccount('equipment_fees', { causeId: itemId }), balanceMinorUnits: -100 },
      ],
    }),
    '4010/3000 3000/5000',
  ],
];

test.for(rows)('%s', ([, drafts, pairs]) => {
  const number = ({ kind }: ledger.AccountKey) => (kind === 'mass' ? 'mass' : ledger.chartLine(kind).number);
  expect(drafts.map(({ destination, source }) => `${number(destination)}/${number(source)}`).join(' ')).toBe(
    pairs,
  );
});

test('a gift of own food to a pantry moves grams and no money', () => {
  const drafts = ledger.given({
    lotId: 'lot',
    fromVesselId: 'can-1',
    outsideVesselId: 'given',
    ownerId: householdId,
    amountGrams: 2600,
  });
  expect(drafts.map(({ unit }) => unit.kind)).toEqual(['lot']);
});

test('the taker of a member transfer owes and the giver is owed', () => {
  const [money, mass] = ledger.memberTransfer({
    giverId: 'birchall',
    takerId: 'ashdown',
    priceMinorUnits: 500,
    mass: [{ lotId: 'lot', fromVesselId: 'bag-1', toVesselId: 'can-1', amountGrams: 2600 }],
  });
  expect(money?.destination.ownerId).toBe('ashdown');
  expect(mass?.destination).toEqual(ledger.massAccount('can-1', 'ashdown'));
  expect(mass?.source).toEqual(ledger.massAccount('bag-1', 'birchall'));
});

test('the chart has the accountant’s numbers, names and normal sides', () => {
  const printed = ledger.CHART.map(({ number, name, normal }) => `${number} ${name} ${normal}`);
  expect(printed).toEqual([
    '1000 Bank debit',
    '1010 Cash tin debit',
    '1100 Household balances debit',
    '1200 Supplier claims debit',
    '1300 Supplies stock debit',
    '1400 Common food stock debit',
    '1500 Equipment at cost debit',
    '2000 Suppliers payable credit',
    '2100 Buy deposits held credit',
    '2150 Equipment deposits held credit',
    '2200 Buy clearing zero',
    '2300 Session clearing zero',
    '3000 Store fund credit',
    '3010 Given value debit',
    '4000 Line fees credit',
    '4010 Equipment fees credit',
    '4020 Cash gifts received credit',
    '5000 Losses debit',
    '5010 Bank charges debit',
    '5020 Repairs and parts debit',
    '5030 Debt written off debit',
  ]);
  expect(ledger.CHART.map(({ kind }) => kind)).toEqual(ledger.MONEY_KINDS);
});
