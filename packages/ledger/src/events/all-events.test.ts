import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { aBook, type ToldEntry, takenByGuards } from '../../test/a-book.ts';
import { auditBook } from '../audit/audit-book.ts';
import { accountsDrifted, unitsOutOfBalance } from '../audit/book-checks.ts';
import * as ledger from '../index.ts';
import type { OutsideKind, VesselKind } from '../outside.ts';
import { OUTSIDE_KINDS } from '../outside.ts';
import { trialBalance } from '../trial-balance.ts';

const vesselKinds: Record<string, VesselKind> = {
  'bag-1': 'bag',
  'bag-2': 'bag',
  'can-1': 'container',
  ashdown: 'kitchen',
  birchall: 'kitchen',
  corran: 'kitchen',
  ...(Object.fromEntries(OUTSIDE_KINDS.map((kind) => [kind, kind])) as Record<OutsideKind, OutsideKind>),
};

const amount = fc.integer({ min: 1, max: 100_000 });
const householdId = fc.constantFrom('ashdown', 'birchall', 'corran');
const till = fc.constantFrom('bank' as const, 'cash_tin' as const);
const buyId = fc.constantFrom('spring', 'autumn');
const share = fc.record({ householdId, amountMinorUnits: amount });
const deposit = fc.record({ householdId, buyId, amountMinorUnits: amount });
const loan = fc.record({
  householdId,
  loanId: fc.constantFrom('saturday', 'sunday'),
  amountMinorUnits: amount,
});
const claim = fc.record({
  supplierId: fc.constant('mill'),
  claimId: fc.constantFrom('short', 'torn'),
  buyId,
  amountMinorUnits: amount,
});
const lotId = fc.constantFrom('wheat', 'oats');
const bag = fc.constantFrom('bag-1', 'bag-2');
const grams = { lotId, amountGrams: amount };
const inBag = { ...grams, bagVesselId: bag, unassignedOwnerId: fc.constant('unassigned') };
const shareInBag = fc.record({ ...inBag, ownerId: householdId });
const leaving = fc.record({
  ...grams,
  fromVesselId: fc.constantFrom('bag-1', 'can-1'),
  outsideVesselId: fc.constantFrom(
    'eaten',
    'given',
    'animals',
    'composted',
    'spilled',
    'sampled',
    'discarded',
  ),
  ownerId: householdId,
});

const moneyEvent = fc.oneof(
  fc.tuple(deposit, till).map(([event, into]) => ledger.depositReceived({ ...event, till: into })),
  deposit.map(ledger.depositFromBalance),
  loan.map(ledger.loanDepositFromBalance),
  loan.map(ledger.loanDepositApplied),
  fc
    .tuple(deposit, fc.constantFrom('bank' as const, 'household' as const))
    .map(([event, to]) => ledger.depositRefunded({ ...event, to })),
  deposit.map(ledger.depositApplied),
  deposit.map(ledger.depositForfeited),
  claim.map(ledger.supplierInvoiced),
  claim.map(ledger.claimRaised),
  claim.map(({ supplierId, claimId, amountMinorUnits }) =>
    ledger.claimCredited({ supplierId, claimId, amountMinorUnits }),
  ),
  claim.map(ledger.claimRefusedWhileOpen),
  claim.map(ledger.claimRefusedAfterClose),
  fc.tuple(claim, till).map(([event, from]) => ledger.supplierPaid({ ...event, till: from })),
  claim.map(ledger.cancellationCovered),
  fc
    .tuple(buyId, fc.array(share, { maxLength: 4 }), amount, fc.nat(500))
    .map(([buy, charges, commonMinorUnits, levyMinorUnits]) =>
      ledger.sharedOut({
        buyId: buy,
        charges,
        commonStock: [{ causeId: 'wheat', amountMinorUnits: commonMinorUnits }],
        levyMinorUnits,
      }),
    ),
  fc
    .tuple(fc.array(share, { minLength: 1, maxLength: 4 }), fc.constantFrom(1, -1), till)
    .map(([shares, sign, from]) =>
      ledger.lateCredit({
        from,
        shares,
        amountMinorUnits: sign * shares.reduce((sum, part) => sum + part.amountMinorUnits, 0),
      }),
    ),
  fc.tuple(share, till).map(([event, into]) => ledger.paymentReceived({ ...event, till: into })),
  fc.tuple(share, till).map(([event, from]) => ledger.paymentRefunded({ ...event, till: from })),
  share.map(ledger.bankCharge),
  share.map(ledger.cashBanked),
  share.map(ledger.debtWrittenOff),
  share.map(ledger.hardshipCovered),
  fc.tuple(share, till).map(([event, into]) => ledger.fundReceived({ ...event, till: into })),
  fc.tuple(share, till).map(([event, from]) => ledger.fundSpent({ ...event, till: from })),
  fc
    .tuple(householdId, fc.integer({ min: -5_000, max: 5_000 }))
    .map(([household, balanceMinorUnits]) =>
      ledger.openingBalance({ account: ledger.householdAccount(household), balanceMinorUnits }),
    ),
);
const massEvent = fc.oneof(
  fc.record({ ...inBag, supplierVesselId: fc.constant('supplier') }).map(ledger.bagLanded),
  fc
    .record({
      ...inBag,
      supplierVesselId: fc.constant('supplier'),
      bookedGrams: fc.nat(30_000),
      weighedGrams: fc.nat(30_000),
    })
    .map(ledger.bagReceiptCorrected),
  fc.record({ ...inBag, outsideVesselId: fc.constant('spilled') }).map(ledger.bagLost),
  shareInBag.map(ledger.shareAwarded),
  shareInBag.map(ledger.shareReturned),
  shareInBag.map((event) => ledger.poured({ ...event, containerVesselId: 'can-1' })),
  shareInBag.map(({ lotId, ownerId, amountGrams }) =>
    ledger.takenToKitchen({ lotId, containerVesselId: 'can-1', householdId: ownerId, amountGrams }),
  ),
  shareInBag.map((event) =>
    ledger.uncollectedTaken({ ...event, householdId: event.ownerId, commonOwnerId: 'common' }),
  ),
  fc
    .tuple(
      leaving,
      fc.constantFrom(
        ledger.takenToEat,
        ledger.discarded,
        ledger.composted,
        ledger.fedToAnimals,
        ledger.spilled,
        ledger.sampled,
        ledger.given,
      ),
    )
    .map(([event, leave]) => leave(event)),
  fc
    .tuple(lotId, fc.array(fc.nat(30_000), { minLength: 3, maxLength: 3 }), fc.nat(90_000))
    .filter(([, booked]) => booked.some(Boolean))
    .map(([lot, booked, weighedGrams]) =>
      ledger.reweighed({
        lotId: lot,
        vesselId: 'bag-1',
        unexplainedVesselId: 'unexplained',
        owners: ['ashdown', 'birchall', 'corran'].map((ownerId, seat) => ({
          ownerId,
          bookedGrams: booked[seat] ?? 0,
        })),
        weighedGrams,
      }),
    ),
  fc.tuple(amount, fc.nat(2_000), lotId).map(([amountGrams, priceMinorUnits, lot]) =>
    ledger.memberTransfer({
      giverId: 'ashdown',
      takerId: 'birchall',
      priceMinorUnits,
      mass: [{ lotId: lot, fromVesselId: 'bag-1', toVesselId: 'can-1', amountGrams }],
    }),
  ),
);
const story = fc.array(
  fc.oneof(moneyEvent, massEvent).map((drafts): ToldEntry => ({ drafts })),
  { maxLength: 40 },
);

test('whatever happens, every unit adds up to zero after every entry', () => {
  fc.assert(
    fc.property(story, (told) => {
      const book = aBook(
        told.filter(({ drafts }) => drafts.length > 0),
        vesselKinds,
      );
      expect(unitsOutOfBalance(book)).toEqual([]);
      expect(accountsDrifted(book)).toEqual([]);
      const broken = auditBook(book).filter((finding) => !finding.holds && finding.number <= 3);
      expect(broken).toEqual([]);
    }),
  );
});

test('whatever happens, the trial balance agrees', () => {
  fc.assert(
    fc.property(story, (told) => {
      const accounts = aBook(told, vesselKinds).accounts.flatMap(({ kind, inflow, outflow }) =>
        kind === 'mass' || kind === 'pieces' ? [] : [{ kind, inflow, outflow }],
      );
      expect(trialBalance(accounts).agrees).toBe(true);
    }),
  );
});

test('a book that takes only what its guards allow passes its whole audit', () => {
  fc.assert(
    fc.property(story, (told) => {
      const taken = takenByGuards(
        told.filter(({ drafts }) => drafts.length > 0),
        vesselKinds,
      );
      expect(auditBook(aBook(taken, vesselKinds)).filter((finding) => !finding.holds)).toEqual([]);
    }),
    { numRuns: 60 },
  );
});

test('undoing an undoing is the thing itself, and an entry with its undoing changes no balance', () => {
  fc.assert(
    fc.property(fc.oneof(moneyEvent, massEvent), (drafts) => {
      expect(ledger.reverse(ledger.reverse(drafts))).toEqual(drafts);
      for (const { ins, outs } of ledger.netDrafts([...drafts, ...ledger.reverse(drafts)]).values()) {
        expect(ins).toBe(outs);
      }
    }),
  );
});
