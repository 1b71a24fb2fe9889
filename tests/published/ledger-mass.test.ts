// The wheat lot of job map section 6, and the recalled lot K-77 of section 12.
import {
  accountKeyText,
  auditBook,
  bagLanded,
  bagLost,
  given,
  lotUnit,
  type MassMovement,
  type MovementDraft,
  massAccount,
  massBalance,
  netDrafts,
  poured,
  reweighed,
  sampled,
  shareAwarded,
  spilled,
  takenToEat,
  unitKeyText,
  type VesselKind,
} from '@sheafbook/ledger';
import { splitByWeight } from '@sheafbook/sharing';
import { fraction } from '@sheafbook/units';
import { expect, test } from 'vitest';
import { aBook } from '../../packages/ledger/test/a-book.ts';

const households = ['ashdown', 'birchall', 'corran', 'dell'];
const vessels: Record<string, VesselKind> = {
  mill: 'supplier',
  table: 'eaten',
  pantry: 'given',
  floor: 'spilled',
  laboratory: 'sampled',
  unexplained: 'unexplained',
};
const kinds = (more: Record<string, VesselKind>) => new Map(Object.entries({ ...vessels, ...more }));
const rowsOf = (drafts: readonly MovementDraft[]): MassMovement[] =>
  drafts.map(({ source, destination, amount }, position) => ({
    entryId: `entry-${position}`,
    reversesEntryId: null,
    source: { vesselId: source.vesselId ?? '', ownerId: source.ownerId ?? '' },
    destination: { vesselId: destination.vesselId ?? '', ownerId: destination.ownerId ?? '' },
    amountGrams: amount,
  }));

const lotId = 'autumn-wheat';
const landed = [1, 2, 3, 4, 5, 6].flatMap((bag) =>
  bagLanded({
    lotId,
    supplierVesselId: 'mill',
    bagVesselId: `bag-${bag}`,
    unassignedOwnerId: 'unassigned',
    amountGrams: 22_680,
  }),
);
const sweptUp = bagLost({
  lotId,
  bagVesselId: 'bag-6',
  outsideVesselId: 'floor',
  unassignedOwnerId: 'unassigned',
  amountGrams: 22_680 - 20_412,
});

test('a torn bag leaves 133,812 g of six bags to share, and 2,268 g on the floor', () => {
  const balance = massBalance({ movements: rowsOf([...landed, ...sweptUp]), vesselKinds: kinds(bags(6)) });
  expect(balance.inGrams).toBe(136_080);
  expect(balance.onHandGrams).toBe(133_812);
  expect(balance.outGrams.spilled).toBe(2_268);
  expect(balance.residualGrams).toBe(0);
});

test('115, 100, 50 and 30 pounds of it are 52,164, 45,360, 22,680 and 13,608 g inside the bags', () => {
  const awards = splitByWeight(133_812, [115, 100, 50, 30]);
  expect(awards).toEqual([52_164, 45_360, 22_680, 13_608]);
  const drafts = [...landed, ...sweptUp, ...awarded(awards)];
  const balance = massBalance({ movements: rowsOf(drafts), vesselKinds: kinds(bags(6)) });
  expect(households.map((household) => balance.byOwnerGrams.get(household))).toEqual(awards);
  expect(balance.byOwnerGrams.get('unassigned')).toBe(0);
  expect(balance.onHandGrams).toBe(133_812);
});

// After the session: poured 130,090 g into 50 cans, sampled 250 g, spilled 310 g; 3,162 g should be left, 3,150 g are.
test('the session leaves 12 g unexplained, and every gram of the lot is somewhere', () => {
  const whole = { lotId, ownerId: 'ashdown' };
  const opened = bagLanded({
    lotId,
    supplierVesselId: 'mill',
    bagVesselId: 'bag-1',
    unassignedOwnerId: 'ashdown',
    amountGrams: 133_812,
  });
  const pours = splitByWeight(130_090, new Array(50).fill(1)).flatMap((amountGrams, can) =>
    poured({ ...whole, bagVesselId: 'bag-1', containerVesselId: `can-${can}`, amountGrams }),
  );
  const leaving = { ...whole, fromVesselId: 'bag-1' };
  const drafts = [
    ...opened,
    ...pours,
    ...sampled({ ...leaving, outsideVesselId: 'laboratory', amountGrams: 250 }),
    ...spilled({ ...leaving, outsideVesselId: 'floor', amountGrams: 310 }),
    ...reweighed({
      lotId,
      vesselId: 'bag-1',
      unexplainedVesselId: 'unexplained',
      owners: [{ ownerId: 'ashdown', bookedGrams: 3_162 }],
      weighedGrams: 3_150,
    }),
  ];
  const cans = Object.fromEntries(
    new Array(50).fill(0).map((_, can) => [`can-${can}`, 'container' as const]),
  );
  const balance = massBalance({ movements: rowsOf(drafts), vesselKinds: kinds({ ...bags(1), ...cans }) });
  expect(balance).toMatchObject({
    inGrams: 133_812,
    pouredGrams: 130_090,
    inContainersGrams: 130_090,
    inBagsGrams: 3_150,
    residualGrams: 0,
  });
  expect(balance.outGrams).toMatchObject({ sampled: 250, spilled: 310, unexplained: 12 });
});

test('the recalled lot K-77 is reconciled to 100.0 %: cans, rest of a bag, gift, eaten and on hand', () => {
  const drafts = recalledLot();
  const cans = Object.fromEntries(
    new Array(12).fill(0).map((_, can) => [`can-${can + 1}`, 'container' as const]),
  );
  const vesselKinds = kinds({ ...bags(3), ...cans });
  const balance = massBalance({ movements: rowsOf(drafts), vesselKinds });
  expect(balance.inGrams).toBe(45_360);
  expect(balance.inContainersGrams).toBe(20_800);
  expect(balance.inBagsGrams).toBe(1_880 + 6_080);
  expect(balance.outGrams).toMatchObject({ given: 10_400, eaten: 6_200, unexplained: 0 });
  expect(balance.reconciled).toEqual(fraction(1));

  const totals = netDrafts(drafts);
  const held = (vesselId: string, ownerId: string) => {
    const account = totals.get(accountKeyText(lotUnit('k-77'), massAccount(vesselId, ownerId)));
    return account ? account.ins - account.outs : 0;
  };
  expect(held('bag-2', 'ashdown')).toBe(1_880);
  expect(held('bag-3', 'birchall')).toBe(6_080);
});

test('the audit finds every gram of K-77, and tells of a can filled from it while it was on hold', () => {
  const kindsOf = { ...vessels, ...bags(3), 'can-13': 'container' as const };
  const heldFrom = '2026-10-01T12:00:00Z';
  const hold = {
    holdId: 'recall',
    lotUnitId: unitKeyText(lotUnit('k-77')),
    vesselIds: null,
    heldAt: heldFrom,
    releasedAt: null,
    releasedByLoginIds: [],
  };
  const before = { drafts: recalledLot(), recordedAt: '2026-10-01T09:00:00Z' };
  const after = {
    drafts: poured({
      lotId: 'k-77',
      bagVesselId: 'bag-3',
      containerVesselId: 'can-13',
      ownerId: 'birchall',
      amountGrams: 2_600,
    }),
    recordedAt: '2026-10-01T15:00:00Z',
  };
  const quiet = auditBook(aBook([before], kindsOf, { holds: [hold] }));
  expect(quiet.filter((finding) => !finding.holds)).toEqual([]);
  expect(
    quiet.find(({ number, invariant }) => number === 8 && invariant.startsWith('Every gram'))?.figure,
  ).toBe('lots: 1, grams from suppliers: 45360, lots out of balance: 0, holders below zero: 0');
  const loud = auditBook(aBook([before, after], kindsOf, { holds: [hold] }));
  expect(loud.filter((finding) => !finding.holds).map(({ number, figure }) => [number, figure])).toEqual([
    [16, 'holds: 1, movements during a hold: 1, releases without two logins: 0'],
  ]);
});

function bags(count: number): Record<string, VesselKind> {
  return Object.fromEntries(new Array(count).fill(0).map((_, bag) => [`bag-${bag + 1}`, 'bag' as const]));
}

/** Gives each household its grams out of the six bags in turn, the last bag being the torn one. */
function awarded(awards: readonly number[]): MovementDraft[] {
  const left = [22_680, 22_680, 22_680, 22_680, 22_680, 20_412];
  return awards.flatMap((award, seat) => {
    let open = award;
    return left.flatMap((grams, bag) => {
      const amountGrams = Math.min(grams, open);
      left[bag] = grams - amountGrams;
      open -= amountGrams;
      if (amountGrams === 0) return [];
      const ownerId = households[seat] ?? '';
      const inBag = { lotId, bagVesselId: `bag-${bag + 1}`, unassignedOwnerId: 'unassigned' };
      return shareAwarded({ ...inBag, ownerId, amountGrams });
    });
  });
}

function recalledLot(): MovementDraft[] {
  const bag = (no: number, owner: string) => {
    const inBag = { lotId: 'k-77', bagVesselId: `bag-${no}`, unassignedOwnerId: 'unassigned' };
    return [
      ...bagLanded({ ...inBag, supplierVesselId: 'mill', amountGrams: 22_680 }),
      ...shareAwarded({ ...inBag, ownerId: owner, amountGrams: 22_680 }),
    ];
  };
  const pour = (no: number, ownerId: string) => (can: number) =>
    poured({
      lotId: 'k-77',
      bagVesselId: `bag-${no}`,
      containerVesselId: `can-${can}`,
      ownerId,
      amountGrams: 2_600,
    });
  return [
    ...bag(2, 'ashdown'),
    ...bag(3, 'birchall'),
    ...[1, 2, 3, 4, 5, 6, 7, 8].flatMap(pour(2, 'ashdown')),
    ...[9, 10, 11, 12].flatMap(pour(3, 'birchall')),
    ...[9, 10, 11, 12].flatMap((can) =>
      given({
        lotId: 'k-77',
        fromVesselId: `can-${can}`,
        outsideVesselId: 'pantry',
        ownerId: 'birchall',
        amountGrams: 2_600,
      }),
    ),
    ...takenToEat({
      lotId: 'k-77',
      fromVesselId: 'bag-3',
      outsideVesselId: 'table',
      ownerId: 'birchall',
      amountGrams: 6_200,
    }),
  ];
}
