import {
  assert,
  assertWhole,
  ceilFraction,
  compareFractions,
  type Fraction,
  fraction,
} from '@sheafbook/units';
import { compareDays, type Days, wholeDaysOf } from './days.ts';
import type { FoodGroupCode } from './food-group.ts';
import { type GapPiece, gapAt } from './gap-pieces.ts';
import { assertGaps, daysWith, type GroupGap, piecesOf } from './group-gap.ts';
import { type PackChoice, worthwhileChoices } from './pack-choices.ts';

/**
 * A pack of the open buy that every eater of the household may eat and that keeps to the target; `mostPacks` is null
 * when only the gap bounds it. Units: whole grams and minor units, landed, for one pack. Errors: none by itself.
 */
export type Pack = {
  readonly packId: string;
  readonly group: FoodGroupCode;
  readonly grams: number;
  readonly minorUnits: number;
  readonly mostPacks: number | null;
};

/** What closeGapWhole finds; see there. Units: days, minor units. Errors: none by itself. */
export type WholeClosing = {
  readonly packs: readonly { readonly packId: string; readonly count: number }[];
  readonly minorUnits: number;
  readonly days: Fraction;
  readonly wholeDays: number | null;
  readonly limitingGroup: FoodGroupCode | null;
  readonly reachesTarget: boolean;
};

type GroupChoices = {
  readonly group: FoodGroupCode;
  readonly pieces: readonly GapPiece[];
  readonly packIds: readonly string[];
  readonly choices: readonly PackChoice[];
};

/**
 * The whole packs that cover a household longest within its budget: the most days of the group that ends first,
 * days past the target counting for nothing; then the least cost, then the fewest packs, then the more of those that
 * stand earlier, group by group and pack by pack.
 * Units: exact days, at most the target; whole minor units and counts. Shape: packs in the order given, those of
 * count 0 left out; `limitingGroup` is the group that ends first after buying, the earlier of equals, null when none
 * ends. Exact: for each group all choices worth making are kept, and the days are tried from the best down.
 * Errors: AssertionError when a group or a pack stands twice, a pack's group is missing, a pack holds no grams, or a
 * mass, price, count, budget or target is not whole.
 */
export function closeGapWhole(input: {
  readonly groups: readonly GroupGap[];
  readonly packs: readonly Pack[];
  readonly budgetMinorUnits: number;
  readonly targetDays: number;
}): WholeClosing {
  assertPacks(input);
  const target = fraction(input.targetDays);
  const groups = input.groups.map((gap) => choicesFor(gap, input));
  const days = longestAffordable(groups, input.budgetMinorUnits, target);
  const chosen = groups.map((group) => leastFor(group, days));
  return {
    packs: input.packs.flatMap(({ packId }) => {
      const count = countOf(groups, chosen, packId);
      return count > 0 ? { packId, count } : [];
    }),
    minorUnits: chosen.reduce((sum, choice) => sum + (choice?.minorUnits ?? 0), 0),
    days,
    wholeDays: wholeDaysOf(days),
    limitingGroup: limitingGroup(groups, chosen),
    reachesTarget: compareFractions(days, target) === 0,
  };
}

function choicesFor(gap: GroupGap, input: Parameters<typeof closeGapWhole>[0]): GroupChoices {
  const pieces = piecesOf(gap);
  const enoughGrams = Number(ceilFraction(gapAt(pieces, fraction(input.targetDays))));
  const packs = input.packs.filter((pack) => pack.group === gap.group);
  const counted = packs.map((pack) => ({ ...pack, mostPacks: pack.mostPacks ?? Number.POSITIVE_INFINITY }));
  const choices = worthwhileChoices(counted, enoughGrams, input.budgetMinorUnits);
  return { group: gap.group, pieces, packIds: packs.map(({ packId }) => packId), choices };
}

/** The best days are where some choice of some group ends, or the target; what can be afforded falls as days rise. */
function longestAffordable(groups: readonly GroupChoices[], budget: number, target: Fraction): Fraction {
  const ends = groups.flatMap(({ pieces, choices }) =>
    choices.flatMap(({ grams }) => {
      const days = daysWith(pieces, fraction(grams));
      return days !== 'no-end' && compareFractions(days, target) < 0 ? days : [];
    }),
  );
  const days = [...ends, target].toSorted(compareFractions);
  let [least, most] = [0, days.length - 1];
  while (least < most) {
    const middle = Math.ceil((least + most) / 2);
    if (isAffordable(groups, days[middle] ?? target, budget)) least = middle;
    else most = middle - 1;
  }
  return days[least] ?? target;
}

function isAffordable(groups: readonly GroupChoices[], days: Fraction, budget: number): boolean {
  let minorUnits = 0;
  for (const group of groups) {
    const choice = leastFor(group, days);
    if (!choice) return false;
    minorUnits += choice.minorUnits;
  }
  return minorUnits <= budget;
}

/** Choices rise in grams and in cost together, so the first that is heavy enough is the best. */
function leastFor({ pieces, choices }: GroupChoices, days: Fraction): PackChoice | undefined {
  const grams = gapAt(pieces, days);
  return choices.find((choice) => compareFractions(fraction(choice.grams), grams) >= 0);
}

function countOf(
  groups: readonly GroupChoices[],
  chosen: readonly (PackChoice | undefined)[],
  packId: string,
): number {
  const position = groups.findIndex(({ packIds }) => packIds.includes(packId));
  const pack = groups[position]?.packIds.indexOf(packId) ?? -1;
  return chosen[position]?.counts[pack] ?? 0;
}

function limitingGroup(
  groups: readonly GroupChoices[],
  chosen: readonly (PackChoice | undefined)[],
): FoodGroupCode | null {
  const ends = groups.map(({ group, pieces }, position): { group: FoodGroupCode; days: Days } => ({
    group,
    days: daysWith(pieces, fraction(chosen[position]?.grams ?? 0)),
  }));
  const [first] = ends
    .filter(({ days }) => days !== 'no-end')
    .toSorted((a, b) => compareDays(a.days, b.days));
  return first?.group ?? null;
}

function assertPacks({
  groups,
  packs,
  budgetMinorUnits,
  targetDays,
}: Parameters<typeof closeGapWhole>[0]): void {
  assertGaps(groups);
  assertWhole(budgetMinorUnits, 'budgetMinorUnits');
  assertWhole(targetDays, 'targetDays');
  assert(new Set(packs.map(({ packId }) => packId)).size === packs.length, 'a pack stands once');
  for (const pack of packs) {
    assertWhole(pack.grams, `grams of pack ${pack.packId}`);
    assertWhole(pack.minorUnits, `minorUnits of pack ${pack.packId}`);
    if (pack.mostPacks !== null) assertWhole(pack.mostPacks, `mostPacks of pack ${pack.packId}`);
    assert(pack.grams > 0, `pack ${pack.packId} holds nothing`);
    assert(
      groups.some(({ group }) => group === pack.group),
      `pack ${pack.packId} is of a group that is not asked about`,
    );
  }
}
