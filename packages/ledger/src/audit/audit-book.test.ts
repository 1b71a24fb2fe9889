import { expect, test } from 'vitest';
import { aBook, unitIdOf } from '../../test/a-book.ts';
import { lotUnit } from '../account-key.ts';
import { bagLanded } from '../events/bag-events.ts';
import { sharedOut } from '../events/charge-events.ts';
import { depositReceived } from '../events/deposit-events.ts';
import { cashBanked } from '../events/payment-events.ts';
import { supplierInvoiced } from '../events/supplier-events.ts';
import { discarded, poured, takenToEat } from '../events/vessel-events.ts';
import { type MovementDraft, reverse } from '../movement-draft.ts';
import type { VesselKind } from '../outside.ts';
import { auditBook } from './audit-book.ts';
import type { AuditInput, AuditMovement } from './audit-rows.ts';
import { accountsDrifted, unitsOutOfBalance } from './book-checks.ts';

const vesselKinds: Record<string, VesselKind> = {
  mill: 'supplier',
  bag: 'bag',
  can: 'container',
  table: 'eaten',
  bin: 'discarded',
};
const landing = bagLanded({
  lotId: 'wheat',
  supplierVesselId: 'mill',
  bagVesselId: 'bag',
  unassignedOwnerId: 'nobody',
  amountGrams: 1000,
});
const billing = supplierInvoiced({ buyId: 'autumn', supplierId: 'mill', amountMinorUnits: 500 });
const charging = sharedOut({
  buyId: 'autumn',
  charges: [{ householdId: 'ashdown', amountMinorUnits: 500 }],
});
const wheat = { lotId: 'wheat', ownerId: 'nobody', amountGrams: 400 };
const pouring = poured({ ...wheat, bagVesselId: 'bag', containerVesselId: 'can' });
const eating = takenToEat({ ...wheat, fromVesselId: 'bag', outsideVesselId: 'table' });
const throwing = discarded({ ...wheat, fromVesselId: 'bag', outsideVesselId: 'bin' });

const told = (...entries: MovementDraft[][]) => entries.map((drafts) => ({ drafts }));
const sound = (rows: Partial<AuditInput> = {}) => aBook(told(landing, billing, charging), vesselKinds, rows);
const broken = (book: AuditInput) => auditBook(book).flatMap(({ number, holds }) => (holds ? [] : [number]));

test('a sound book passes, and each finding says how much it looked at', () => {
  const findings = auditBook(sound());
  expect(findings.filter((finding) => !finding.holds)).toEqual([]);
  expect(findings[0]).toEqual({
    key: 'entry-sides',
    invariant:
      'Every entry has movements, and each movement has one positive amount and two sides in one unit',
    number: 1,
    holds: true,
    figure: 'entries: 3, movements: 3, empty entries: 0, movements wrong: 0',
  });
});

test('an empty book passes with nothing looked at, number by number', () => {
  const findings = auditBook(aBook([]));
  expect(new Set(findings.map(({ key }) => key)).size).toBe(findings.length);
  expect(findings.map(({ number }) => number)).toEqual([
    1, 2, 2, 2, 2, 2, 2, 3, 4, 5, 6, 7, 8, 8, 9, 10, 11, 12, 12, 13, 14, 15, 16,
  ]);
  expect(findings.every(({ holds, figure }) => holds && !/[1-9]/.test(figure))).toBe(true);
});

const changed = (change: (movement: AuditMovement) => AuditMovement): AuditInput => {
  const book = sound();
  return {
    ...book,
    movements: book.movements.map((movement, at) => (at === 0 ? change(movement) : movement)),
  };
};

test('an entry without a movement, and a movement of nothing, break number 1', () => {
  expect(broken(aBook(told(landing, []), vesselKinds))).toEqual([1]);
  expect(broken(changed((movement) => ({ ...movement, amount: 0 })))).toContain(1);
  expect(broken(changed((movement) => ({ ...movement, entryId: 'entry-9' })))).toContain(1);
});

test('a movement from one unit into another leaves both out of balance at its entry', () => {
  const book = sound();
  const household = book.accounts.find((account) => account.kind === 'household')?.accountId ?? '';
  const crossed = changed((movement) => ({ ...movement, destinationId: household }));
  expect(broken(crossed)).toEqual(expect.arrayContaining([1, 2, 8]));
  const prefix = auditBook(crossed).find(({ invariant }) => invariant.includes('after every entry'));
  expect(prefix?.figure).toBe('entries: 3, entries that leave a unit out of balance: 3'); // money stays 1000 off after it
});

test('a total that was raised without a movement is found twice: it drifts and its unit does not balance', () => {
  const book = sound();
  const accounts = book.accounts.map((account) =>
    account.kind === 'household' ? { ...account, inflow: account.inflow + 1 } : account,
  );
  const drifted = { ...book, accounts };
  expect(accountsDrifted(drifted)).toEqual(
    accounts.filter(({ kind }) => kind === 'household').map((a) => a.accountId),
  );
  expect(unitsOutOfBalance(drifted).length).toBe(1);
  expect(broken(drifted)).toEqual([2, 2]);
});

test('a closed or called-off buy with costs or deposits left breaks number 3, an open one does not', () => {
  const steps = ['gathering', 'fixed', 'ordered', 'landed', 'shared-out', 'closed'] as const;
  const moves = steps.map((to, step) => ({ from: steps[step - 1] ?? ('planning' as const), to }));
  const closed = { buyId: 'autumn', stage: 'closed', moves } as const;
  const open = { ...closed, stage: 'shared-out', moves: moves.slice(0, 5) } as const;
  const bill = aBook(told(billing), vesselKinds);
  expect(broken({ ...bill, buys: [closed] })).toEqual([3]);
  expect(broken({ ...bill, buys: [open] })).toEqual([]);
  const held = depositReceived({ buyId: 'autumn', householdId: 'dell', amountMinorUnits: 5, till: 'bank' });
  const calledOff = {
    buyId: 'autumn',
    stage: 'called-off',
    moves: [{ from: 'planning', to: 'called-off' }],
  } as const;
  expect(broken(aBook(told(held), {}, { buys: [calledOff] }))).toEqual([3]);
});

const costLine = (totalMinorUnits: number, ...shares: [bigint, number][]) => ({
  costLineId: 'line',
  totalMinorUnits,
  shares: shares.map(([weight, amountMinorUnits]) => ({ weight, amountMinorUnits })),
});

test.for([
  { line: costLine(100, [1n, 34], [1n, 33], [1n, 33]), numbers: [], because: 'thirds of 1.00' },
  { line: costLine(-100, [1n, -34], [1n, -33], [1n, -33]), numbers: [], because: 'a credit shared alike' },
  { line: costLine(100, [1n, 34], [1n, 34], [1n, 33]), numbers: [5], because: 'one cent too much' },
  {
    line: costLine(100, [1n, 35], [1n, 33], [1n, 32]),
    numbers: [5],
    because: 'a share more than a cent off',
  },
  {
    line: costLine(100, [1n, 34], [1n, 34], [1n, 32]),
    numbers: [5],
    because: 'a share more than a cent short',
  },
  { line: costLine(0, [0n, 0]), numbers: [], because: 'nothing shared among nobody' },
  { line: costLine(100, [0n, 1], [1n, 99]), numbers: [5], because: 'a cent for whoever has no weight' },
])('cost line: $because', ({ line, numbers }) => {
  expect(broken(sound({ costLines: [line] }))).toEqual(numbers);
});

const split = (availableGrams: number, ...awards: [number, number][]) => ({
  splitId: 'split',
  availableGrams,
  awards: awards.map(([claimGrams, awardGrams]) => ({ claimGrams, awardGrams })),
});

test.for([
  { split: split(400, [200, 160], [300, 240]), numbers: [], because: 'short and all awarded' },
  { split: split(900, [200, 200], [300, 300]), numbers: [], because: 'more than was claimed' },
  { split: split(400, [200, 201], [300, 199]), numbers: [6], because: 'an award above its claim' },
  { split: split(400, [200, 150], [300, 240]), numbers: [6], because: 'grams left over' },
])('split: $because', ({ split, numbers }) => {
  expect(broken(sound({ splits: [split] }))).toEqual(numbers);
});

test('an answer that comes out otherwise the second time breaks number 7, a fill that is not the best number 15', () => {
  expect(broken(sound({ reruns: [{ kind: 'split', id: 'split', isSame: false }] }))).toEqual([7]);
  expect(broken(sound({ fills: [{ fillId: 'fill', isBest: false }] }))).toEqual([15]);
});

test('a bag that was poured before it landed held less than nothing for an entry', () => {
  const late = aBook(told(pouring, landing), vesselKinds);
  expect(broken(late)).toEqual([8]);
  expect(broken(aBook(told(landing, pouring), vesselKinds))).toEqual([]);
  expect(broken(aBook(told([...pouring, ...landing]), vesselKinds))).toEqual([]); // one entry is judged by its end
});

test('cash banked that was never taken is told by the guard of the tin', () => {
  expect(broken(aBook(told(cashBanked({ amountMinorUnits: 5 }))))).toEqual([8]);
});

test('an account with a looser guard than its kind’s is told', () => {
  const book = sound();
  const accounts = book.accounts.map((account) => ({ ...account, guard: 'none' as const }));
  expect(broken({ ...book, accounts })).toEqual([8]);
});

const lot = (lotId: string, more: Partial<AuditInput['lots'][number]> = {}) => ({
  lotId,
  deliveryId: null,
  intakeId: null,
  parentLotIds: [],
  ...more,
});
const can = (lotId: string, netGrams = 2600) => ({
  containerId: 'can',
  lotId,
  netGrams,
  capacityGrams: 2500,
});

test('a container reaches a delivery through its lot’s parents, in whatever order the lots are read', () => {
  const lots = [
    lot('bread-mix', { parentLotIds: ['flour', 'oats'] }),
    lot('flour', { parentLotIds: ['wheat'] }),
  ];
  const origins = [lot('wheat', { deliveryId: 'autumn' }), lot('oats', { intakeId: 'gift' })];
  expect(broken(sound({ lots: [...lots, ...origins], containers: [can('bread-mix')] }))).toEqual([]);
});

test.for([
  { because: 'its lot comes from nowhere', lots: [lot('wheat')] },
  { because: 'its lot is unknown', lots: [] },
  {
    because: 'a lot is its own grandparent',
    lots: [lot('wheat', { parentLotIds: ['a'] }), lot('a', { parentLotIds: ['wheat'] })],
  },
])('a container has no origin: $because', ({ lots }) => {
  expect(broken(sound({ lots, containers: [can('wheat')] }))).toEqual([9]);
});

test('a circle of lots is told, also when no container holds any of them', () => {
  const circle = [lot('a', { parentLotIds: ['b'] }), lot('b', { parentLotIds: ['a'], deliveryId: 'autumn' })];
  expect(broken(sound({ lots: circle }))).toEqual([9]);
});

test('a container may hold 8 % above level and not a gram more, and no code serves twice', () => {
  const lots = [lot('wheat', { deliveryId: 'autumn' })];
  expect(broken(sound({ lots, containers: [can('wheat', 2700)] }))).toEqual([]);
  expect(broken(sound({ lots, containers: [can('wheat', 2701)] }))).toEqual([10]);
  expect(broken(sound({ codes: ['BK7M2Q5', 'BK7M2Q5'] }))).toEqual([10]);
});

test.for([
  { stage: 'gathering', moves: [], because: 'it never moved there' },
  { stage: 'fixed', moves: [{ from: 'planning', to: 'fixed' }], because: 'it skipped gathering' },
  {
    stage: 'gathering',
    moves: [
      { from: 'planning', to: 'gathering' },
      { from: 'planning', to: 'gathering' },
    ],
    because: 'a move starts where it was not',
  },
] as const)('a buy is off its path: $because', ({ stage, moves }) => {
  expect(broken(sound({ buys: [{ buyId: 'spring', stage, moves }] }))).toEqual([13]);
});

const pledge = {
  pledgeId: 'pledge',
  least: 20,
  wanted: 30,
  most: 40,
  step: 5,
  allotted: 35,
  isWithinCeiling: true,
};

test.for([
  { change: {}, numbers: [] },
  { change: { allotted: 0, isWithinCeiling: false }, numbers: [] },
  { change: { allotted: null, isWithinCeiling: null }, numbers: [] },
  { change: { least: 31 }, numbers: [14] },
  { change: { allotted: 15 }, numbers: [14] },
  { change: { allotted: 45 }, numbers: [14] },
  { change: { allotted: 33 }, numbers: [14] },
  { change: { isWithinCeiling: false }, numbers: [14] },
])('a pledge of 20, 30, 40 in fives with $change breaks $numbers', ({ change, numbers }) => {
  expect(broken(sound({ pledges: [{ ...pledge, ...change }] }))).toEqual(numbers);
});

const hold = {
  holdId: 'hold',
  lotUnitId: unitIdOf(lotUnit('wheat')),
  vesselIds: null,
  heldAt: '2026-09-05T09:00:00Z',
  releasedAt: '2026-09-07T09:00:00Z',
  releasedByLoginIds: ['rosa', 'tom'],
};
const afterLanding = (
  drafts: MovementDraft[],
  recordedAt: string,
  more: Partial<typeof hold> | object = {},
) =>
  broken(
    aBook([{ drafts: landing }, { drafts, recordedAt }], vesselKinds, { holds: [{ ...hold, ...more }] }),
  );

test('nothing on hold is eaten or poured, before and after it may be', () => {
  expect(afterLanding(eating, '2026-09-06T08:00:00Z')).toEqual([16]);
  expect(afterLanding(pouring, '2026-09-06T08:00:00Z')).toEqual([16]);
  expect(afterLanding(eating, '2026-09-05T09:00:00Z')).toEqual([]);
  expect(afterLanding(eating, '2026-09-07T09:00:00Z')).toEqual([]);
  expect(afterLanding(eating, '2026-12-01T09:00:00Z', { releasedAt: null, releasedByLoginIds: [] })).toEqual([
    16,
  ]);
});

test('food on hold may be thrown away, and what happened to another bag of its lot is no breach', () => {
  expect(afterLanding(throwing, '2026-09-06T08:00:00Z')).toEqual([]);
  expect(afterLanding(eating, '2026-09-06T08:00:00Z', { vesselIds: ['bag-7'] })).toEqual([]);
  expect(afterLanding(eating, '2026-09-06T08:00:00Z', { vesselIds: ['bag'] })).toEqual([16]);
});

test('undoing an earlier entry moves no food, so it is no breach of a hold', () => {
  const undoing = { drafts: reverse(eating), reverses: 2, recordedAt: '2026-09-06T08:00:00Z' };
  const entries = [{ drafts: landing }, { drafts: eating }, undoing];
  expect(broken(aBook(entries, vesselKinds, { holds: [hold] }))).toEqual([]);
});

test('a cost that was shared anew is judged with what was charged before, and a first line by itself', () => {
  // 100 by 1 and 1 was 50 each; 110 by 1 and 4 is 22 and 88: the second line takes 28 back and charges 38.
  const shares = [
    { weight: 1n, amountMinorUnits: -28, chargedBeforeMinorUnits: 50 },
    { weight: 4n, amountMinorUnits: 38, chargedBeforeMinorUnits: 50 },
  ];
  const anew = { costLineId: 'anew', totalMinorUnits: 10, chargedBeforeMinorUnits: 100, shares };
  expect(broken(sound({ costLines: [anew] }))).toEqual([]);
  expect(broken(sound({ costLines: [{ ...anew, chargedBeforeMinorUnits: 101 }] }))).toEqual([5]);
  const first = {
    ...anew,
    shares: shares.map(({ weight, amountMinorUnits }) => ({ weight, amountMinorUnits })),
  };
  expect(broken(sound({ costLines: [first] }))).toEqual([5]);
});

test('a hold that ended with its bag needs nobody to let it go', () => {
  expect(broken(sound({ holds: [{ ...hold, releasedByLoginIds: null }] }))).toEqual([]);
  expect(broken(sound({ holds: [{ ...hold, releasedByLoginIds: [] }] }))).toEqual([16]);
});

test('a hold is released by two different logins', () => {
  expect(broken(sound({ holds: [{ ...hold, releasedByLoginIds: ['rosa', 'rosa'] }] }))).toEqual([16]);
});
