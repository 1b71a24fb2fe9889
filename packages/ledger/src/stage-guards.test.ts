import { expect, test } from 'vitest';
import type { ClosingFacts, FixingFacts, OrderingFacts, SharingFacts } from './stage-facts.ts';
import { stageGuards } from './stage-guards.ts';

const quotes = [
  { quoteId: 'quote-1', foodId: 'wheat', validUntilOn: '2026-09-30' },
  { quoteId: 'quote-2', foodId: 'beans', validUntilOn: '2026-09-20' },
];

test.for([
  { closesOn: '2026-09-19', missing: [] },
  {
    closesOn: '2026-09-20',
    missing: [{ code: 'quote-lapses-before-close', count: 1, ids: ['quote-2'] }],
  },
  { closesOn: null, missing: [{ code: 'no-closing-day' }] },
])('a buy that gathers until $closesOn wants $missing', ({ closesOn, missing }) => {
  const facts = { foodIds: ['wheat', 'beans'], quotes, gatheringClosesOn: closesOn };
  expect(stageGuards({ from: 'planning', to: 'gathering', facts })).toEqual(missing);
});

test('a buy opens with one food that has one quote, not without', () => {
  const open = (foodIds: string[]) =>
    stageGuards({
      from: 'planning',
      to: 'gathering',
      facts: { foodIds, quotes: quotes.slice(0, 1), gatheringClosesOn: '2026-09-10' },
    }).map(({ code }) => code);
  expect(open([])).toEqual(['no-food-line']);
  expect(open(['beans'])).toEqual(['no-quote']);
  expect(open(['beans', 'wheat'])).toEqual([]);
});

const fixing: FixingFacts = {
  isFillCurrent: true,
  allotments: [
    { pledgeId: 'pledge-1', allotted: 40, most: 40, isWithinCeiling: true },
    { pledgeId: 'pledge-2', allotted: 0, most: 10, isWithinCeiling: false },
  ],
  supplierIdsBelowMinimum: [],
};
const fix = (facts: Partial<FixingFacts>) =>
  stageGuards({ from: 'gathering', to: 'fixed', facts: { ...fixing, ...facts } });

test('a buy is fixed when the fill is current; a dropped pledge’s ceiling does not stop it', () => {
  expect(fix({})).toEqual([]);
});

test('a buy is not fixed on an old fill, above a pledge, above its ceiling, or below a supplier’s minimum', () => {
  expect(fix({ isFillCurrent: null, allotments: [] })).toEqual([{ code: 'fill-not-run' }]);
  expect(fix({ isFillCurrent: false })).toEqual([{ code: 'fill-out-of-date' }]);
  expect(fix({ allotments: [] })).toEqual([{ code: 'nothing-allotted' }]);
  const allotments = [{ pledgeId: 'pledge-1', allotted: 45, most: 40, isWithinCeiling: false }];
  expect(fix({ allotments, supplierIdsBelowMinimum: ['mill'] })).toEqual([
    { code: 'allotment-above-most', count: 1, ids: ['pledge-1'] },
    { code: 'price-above-ceiling', count: 1, ids: ['pledge-1'] },
    { code: 'supplier-minimum-not-met', count: 1, ids: ['mill'] },
  ]);
});

test('a fixed buy opens again with a reason, quotes that stand and every deposit holder told', () => {
  const facts = {
    depositHolders: [{ householdId: 'ashdown', isTold: true }],
    quotes,
    todayOn: '2026-09-20',
    reason: 'a supplier changed its bags',
  };
  const reopen = (more: object) =>
    stageGuards({ from: 'fixed', to: 'gathering', facts: { ...facts, ...more } });
  expect(reopen({})).toEqual([]);
  expect(
    reopen({
      depositHolders: [...facts.depositHolders, { householdId: 'dell', isTold: false }],
      todayOn: '2026-09-21',
      reason: ' ',
    }),
  ).toEqual([
    { code: 'deposit-holder-not-told', count: 1, ids: ['dell'] },
    { code: 'quote-lapsed', count: 1, ids: ['quote-2'] },
    { code: 'no-reason' },
  ]);
});

const ordering: OrderingFacts = {
  approvals: [
    { loginId: 'rosa', duty: 'coordinator' },
    { loginId: 'tom', duty: 'treasurer' },
  ],
  deposits: [
    { householdId: 'ashdown', dueMinorUnits: 7200, receivedMinorUnits: 7200, isWaived: false },
    { householdId: 'dell', dueMinorUnits: 2300, receivedMinorUnits: 0, isWaived: true },
  ],
  quotes,
  todayOn: '2026-09-20',
  estimatedMinorUnits: 52350,
  repricedMinorUnits: 53397, // 2 % of 523.50 is 10.47 exactly
  priceRisePercent: 2,
};
const order = (facts: Partial<OrderingFacts>) =>
  stageGuards({ from: 'fixed', to: 'ordered', facts: { ...ordering, ...facts } });

test('two logins order a buy whose deposits are in or waived and whose price rose by no more than 2 %', () => {
  expect(order({})).toEqual([]);
});

test('one login with both duties is not two', () => {
  const approvals = [
    { loginId: 'rosa', duty: 'coordinator' },
    { loginId: 'rosa', duty: 'treasurer' },
  ] as const;
  expect(order({ approvals })).toEqual([{ code: 'second-login-missing' }]);
  expect(order({ approvals: ordering.approvals.slice(0, 1) })).toEqual([{ code: 'second-login-missing' }]);
});

test('ordering lists each deposit that is short, the lapsed quote and a price that rose by a cent too much', () => {
  const deposits = [
    { householdId: 'ashdown', dueMinorUnits: 7200, receivedMinorUnits: 7199, isWaived: false },
    { householdId: 'dell', dueMinorUnits: 2300, receivedMinorUnits: 0, isWaived: false },
  ];
  expect(order({ deposits, todayOn: '2026-09-25', repricedMinorUnits: 53398 })).toEqual([
    { code: 'deposit-unpaid', count: 2, ids: ['ashdown', 'dell'], minorUnits: 2301 },
    { code: 'quote-lapsed', count: 1, ids: ['quote-2'] },
    { code: 'price-risen', minorUnits: 1048 },
  ]);
});

test('how far the price may rise is for the group to say', () => {
  // 3 % of 523.50 is 15.705.
  const codesAt = (repricedMinorUnits: number) =>
    order({ repricedMinorUnits, priceRisePercent: 3 }).map(({ code }) => code);
  expect(codesAt(53_920)).toEqual([]);
  expect(codesAt(53_921)).toEqual(['price-risen']);
  expect(order({ repricedMinorUnits: 52_351, priceRisePercent: 0 })).toEqual([
    { code: 'price-risen', minorUnits: 1 },
  ]);
});

test('landing names every food without a count and every size with bags that have no number, at once', () => {
  const lines = [
    { lineId: 'wheat', countedBags: 6 },
    { lineId: 'beans', countedBags: null },
  ];
  const sizes = [
    { bagOfferId: 'wheat-50', countedBags: 4, numberedBags: 1 },
    { bagOfferId: 'wheat-25', countedBags: 2, numberedBags: 2 },
    { bagOfferId: 'wheat-5', countedBags: 1, numberedBags: 0 },
  ];
  expect(stageGuards({ from: 'ordered', to: 'landed', facts: { lines, sizes } })).toEqual([
    { code: 'line-not-counted', count: 1, ids: ['beans'] },
    { code: 'bag-not-numbered', count: 4, ids: ['wheat-50', 'wheat-5'] },
  ]);
});

test('a line counted with no bags is counted; a line without a count is not', () => {
  const lines = [
    { lineId: 'wheat', countedBags: 0 },
    { lineId: 'beans', countedBags: null },
  ];
  expect(stageGuards({ from: 'ordered', to: 'landed', facts: { lines, sizes: [] } })).toEqual([
    { code: 'line-not-counted', count: 1, ids: ['beans'] },
  ]);
});

const lot = {
  lotId: 'wheat-lot',
  landedGrams: 136_080,
  onHoldGrams: 22_680,
  sharedGrams: 111_132,
  commonGrams: 0,
  lostGrams: 2_268,
};
const sharing: SharingFacts = {
  bags: [{ bagId: 'bag-1', isWeighedOrExempted: true }],
  lines: [{ lineId: 'wheat', ruleName: 'equal-awards' }],
  lots: [lot],
};
const share = (facts: Partial<SharingFacts>) =>
  stageGuards({ from: 'landed', to: 'shared-out', facts: { ...sharing, ...facts } });

test('a buy is shared out when every gram that is not on hold has an owner or is lost', () => {
  expect(share({})).toEqual([]);
});

test('sharing out names the bag, the line and the lot, each lot for itself', () => {
  const lots = [
    { ...lot, lotId: 'short', sharedGrams: 111_131 },
    { ...lot, lotId: 'over', sharedGrams: 111_133 },
  ];
  expect(
    share({
      bags: [{ bagId: 'bag-2', isWeighedOrExempted: false }],
      lines: [{ lineId: 'beans', ruleName: null }],
      lots,
    }),
  ).toEqual([
    { code: 'bag-not-weighed', count: 1, ids: ['bag-2'] },
    { code: 'line-not-split', count: 1, ids: ['beans'] },
    { code: 'mass-not-shared', ids: ['short'], grams: 1 },
    { code: 'mass-not-shared', ids: ['over'], grams: -1 },
  ]);
});

const closing: ClosingFacts = {
  supplierIdsWithoutInvoice: [],
  openClaimIds: [],
  clearingMinorUnits: 0,
  deposits: [{ householdId: 'dell', heldMinorUnits: 0 }],
  unassignedGrams: 0,
};

test('a buy closes when nothing at all is left open', () => {
  expect(stageGuards({ from: 'shared-out', to: 'closed', facts: closing })).toEqual([]);
});

test('closing lists exactly what is missing, a clearing account below zero too', () => {
  const facts = {
    supplierIdsWithoutInvoice: ['carrier'],
    openClaimIds: ['short', 'torn'],
    clearingMinorUnits: -1,
    deposits: [{ householdId: 'dell', heldMinorUnits: 1200 }],
    unassignedGrams: 5,
  };
  expect(stageGuards({ from: 'shared-out', to: 'closed', facts })).toEqual([
    { code: 'invoice-missing', count: 1, ids: ['carrier'] },
    { code: 'claim-open', count: 2, ids: ['short', 'torn'] },
    { code: 'clearing-not-zero', minorUnits: -1 },
    { code: 'deposit-held', count: 1, ids: ['dell'], minorUnits: 1200 },
    { code: 'mass-unassigned', grams: 5 },
  ]);
});

test.for(['planning', 'gathering', 'fixed', 'ordered'] as const)(
  'a buy is called off while %s once all are whole',
  (from) => {
    const facts = { deposits: [], clearingMinorUnits: 0, isCancellationRecorded: false };
    const missing = stageGuards({ from, to: 'called-off', facts });
    expect(missing).toEqual(from === 'ordered' ? [{ code: 'cancellation-not-recorded' }] : []);
    const held = { ...facts, isCancellationRecorded: true, clearingMinorUnits: 500 };
    const deposits = [{ householdId: 'dell', heldMinorUnits: 2300 }];
    expect(stageGuards({ from, to: 'called-off', facts: { ...held, deposits } })).toEqual([
      { code: 'deposit-held', count: 1, ids: ['dell'], minorUnits: 2300 },
      { code: 'clearing-not-zero', minorUnits: 500 },
    ]);
  },
);
