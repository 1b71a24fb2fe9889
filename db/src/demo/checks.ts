import { HOUSEHOLDS } from './people.ts';
import type { Evidence, HouseholdFigures, Summary } from './summary.ts';

type Check = { readonly says: string; readonly holds: boolean };

/** Every check of the summary that does not hold, each in a sentence with its figures. */
export function listFailures(summary: Summary, evidence: Evidence): string[] {
  return [
    ...checksOfBuy(summary, evidence),
    ...checksOfHouseholds(summary, evidence),
    ...checksOfLoans(summary),
    ...checksOfGiving(summary, evidence),
    ...checksOfKeeping(evidence),
    ...checksOfPacking(summary, evidence),
    ...checksOfBook(summary, evidence),
  ]
    .filter((check) => !check.holds)
    .map((check) => check.says);
}

const sumOf = (numbers: readonly number[]) => numbers.reduce((sum, number) => sum + number, 0);

/** One figure that must be another. */
const same = (what: string, found: number, wanted: number): Check => ({
  says: `${what}: ${found} is not ${wanted}`,
  holds: found === wanted,
});

function checksOfBuy({ buy }: Summary, evidence: Evidence): Check[] {
  const { charges } = buy;
  return [
    { says: `the buy is ${buy.stage}, not closed`, holds: buy.stage === 'closed' },
    same('what clearing holds after the close', buy.clearingMinorUnits, 0),
    same('deposits still held', evidence.depositsMinorUnits, 0),
    same('what is open with suppliers', evidence.openWithSuppliersMinorUnits, 0),
    same('billed against charged', buy.billedMinorUnits, buy.chargedMinorUnits),
    same(
      'the charges of all against charged',
      sumOf(charges.map((row) => row.minorUnits)),
      buy.chargedMinorUnits,
    ),
    same('paid food by food against charged', evidence.paidByFood.minorUnits, buy.chargedMinorUnits),
    { says: 'nobody knows what was saved against shelf price', holds: evidence.paidByFood.isSavedKnown },
    same('delivered against shared and lost', buy.deliveredGrams, buy.sharedGrams + buy.lostGrams),
    same('the grams of all against shared', sumOf(charges.map((row) => row.grams)), buy.sharedGrams),
    same('grams that are still nobody’s', evidence.unassignedGrams, 0),
    {
      says: `poured ${buy.pouredGrams} g of ${buy.sharedGrams} g shared`,
      holds: buy.pouredGrams > 0 && buy.pouredGrams <= buy.sharedGrams,
    },
    {
      says: `billed ${buy.billedMinorUnits} for ${buy.deliveredGrams} g delivered`,
      holds: buy.billedMinorUnits > 0 && buy.deliveredGrams > 0,
    },
  ];
}

function checksOfHouseholds({ households }: Summary, { statementsMinorUnits }: Evidence): Check[] {
  return [
    same('households summed up', households.length, HOUSEHOLDS.length),
    ...households.map((row) => ({
      says: `${row.household} is told no number: ${JSON.stringify(row)}`,
      holds: hasNumbers(row),
    })),
    ...households.map((row, position) =>
      same(
        `the balance of ${row.household} against its statement`,
        row.balanceMinorUnits,
        statementsMinorUnits[position] ?? Number.NaN,
      ),
    ),
  ];
}

const hasNumbers = ({ balanceMinorUnits, adultEquivalents, daysCovered, runsOutFirst }: HouseholdFigures) =>
  Number.isSafeInteger(balanceMinorUnits) &&
  adultEquivalents > 0 &&
  Number.isSafeInteger(daysCovered) &&
  (daysCovered ?? -1) >= 0 &&
  (runsOutFirst ?? '') !== '';

/** Of eight cans that were offered two found a table; of the rest one came back from the pantry with a dent. */
function checksOfGiving({ rotation, giving }: Summary, { acceptedGrams }: Evidence): Check[] {
  return [
    same('containers offered', giving.offered, 8),
    same('containers on manifests', giving.matched, 6),
    same('grams given against receipts', giving.givenGrams, acceptedGrams),
    // By hand, at the published 544 g (1.2 lb) a meal; the summary's figure comes from the package `giving`.
    same('meals of what was given', giving.meals, Math.floor(giving.givenGrams / 544)),
    { says: 'nothing was given', holds: giving.givenGrams > 0 },
    { says: 'nothing waits to be eaten', holds: rotation.queued > 0 },
    { says: 'nothing is at risk this year', holds: rotation.poundsAtRiskThisYear > 0 },
  ];
}

/** Five cans came from nobody knows where, a pail was full of moths, and one household has not heard of the lentils. */
function checksOfKeeping({ keeping }: Evidence): Check[] {
  return [
    same('cans of unknown history', keeping.givenIn, 5),
    same('grams of them that were lost', keeping.givenInLostGrams, 2 * 2_450),
    same('grams that went to animals', keeping.animalsGrams, 16_000 + 2_450),
    { says: 'nothing beside the moths is to be looked at', holds: keeping.watchedBesideMoths > 0 },
    same('holds that stand', keeping.openHolds, 1),
    { says: 'the hold holds nothing', holds: keeping.heldVessels > 0 },
    same('households that were not reached', keeping.unreachedOfHold, 1),
  ];
}

/** The sealer went round three households, and the last has it still; the scale is true. */
function checksOfLoans({ loans }: Summary): Check[] {
  return [
    same('loans', loans.lent, 3),
    same('loans that came back', loans.returned, 2),
    same('times that hold one piece at once', loans.overlaps, 0),
    same('scales that were found true', loans.trueScales, 1),
  ];
}

/** The canning evening took place, and what it cost is borne to the cent. */
function checksOfPacking({ packing }: Summary, { unsettledSessions, packingCosts }: Evidence): Check[] {
  return [
    same('packing days that took place', packing.sessions, 1),
    { says: 'no container was closed on the packing day', holds: packing.containers > 0 },
    { says: 'no seam was checked on the packing day', holds: packing.seamChecks > 0 },
    same('times on one line that overlap', packing.overlaps, 0),
    same('packing days that nobody settled', unsettledSessions, 0),
    same('what clearing of packing days holds', packing.clearingMinorUnits, 0),
    same('settled against shared out', packingCosts.settledMinorUnits, packingCosts.sharedMinorUnits),
    { says: 'the packing day cost nothing', holds: packingCosts.settledMinorUnits > 0 },
  ];
}

function checksOfBook({ ledger, audit }: Summary, { auditedLedger }: Evidence): Check[] {
  return [
    same('units out of balance', ledger.unitsOutOfBalance, 0),
    same('accounts drifted', ledger.accountsDrifted, 0),
    same('entries counted against audited', ledger.entries, auditedLedger.entries),
    same('movements counted against audited', ledger.movements, auditedLedger.movements),
    { says: 'the audit found nothing to look at', holds: audit.length > 0 && ledger.entries > 0 },
    ...audit.map(({ invariant, holds, figure }) => ({
      says: `${invariant} does not hold (${figure})`,
      holds,
    })),
  ];
}
