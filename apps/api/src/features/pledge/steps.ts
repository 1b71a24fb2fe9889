import type { BuyLineRow } from '@sheafbook/db/tables';
import {
  countFromGrams,
  divideFractions,
  floorFraction,
  fraction,
  GRAMS_PER_UNIT,
  gramsOfPhysicalUnit,
} from '@sheafbook/units';
import { type FieldProblem, Problem } from '../../platform/problem.ts';
import { bagSizeOfPledge } from './whole-bags.ts';

const MASSES = ['leastGrams', 'wantedGrams', 'mostGrams'] as const;
type Mass = (typeof MASSES)[number];
type Masses = Readonly<Record<Mass, number>>;
type Nearest = { readonly units: number; readonly grams: number };

/** Refuses unless least ≤ wanted ≤ most, naming the two that are the wrong way round. */
export function refuseDisorder({ leastGrams, wantedGrams, mostGrams }: Masses): void {
  const fields: FieldProblem[] = [];
  if (leastGrams > wantedGrams)
    fields.push({ field: 'leastGrams', message: 'The least may not be above the wanted.' });
  if (wantedGrams > mostGrams)
    fields.push({ field: 'mostGrams', message: 'The most may not be below the wanted.' });
  if (fields.length > 0)
    throw new Problem('pledge-not-in-order', {
      detail: fields.map(({ message }) => message).join(' '),
      fields,
    });
}

/**
 * Refuses masses that are no whole number of steps: the line's steps for a share of a bag, a bag's size for whole
 * bags. Grams must be what that count of units weighs, converted once (ledger-notes 6.14), and the refusal names the
 * nearest masses below and above.
 */
export function refuseOffStep(masses: Masses, line: BuyLineRow, bagSizes: readonly number[] | null): void {
  const unit = line.massUnit === 'kg' ? 'kg' : 'lb';
  const steps = bagSizes ?? [line.stepUnits];
  const off = MASSES.filter((field) => {
    const units = countFromGrams(masses[field], unit);
    return units === null || steps.every((step) => units % step !== 0);
  });
  if (off.length > 0) refuseMasses(off, masses, { unit, steps });
  if (bagSizes) refuseMixedBags(masses, { unit, bagSizes });
}

function refuseMasses(
  off: readonly Mass[],
  masses: Masses,
  { unit, steps }: { unit: 'lb' | 'kg'; steps: readonly number[] },
): never {
  const nearest = off.map((field) => ({ field, ...nearestMasses(masses[field], unit, steps) }));
  throw new Problem('pledge-off-step', {
    fields: nearest.map(({ field, below, above }) => ({
      field,
      message: `The nearest masses are ${say(below, unit)} and ${say(above, unit)}.`,
    })),
    nearest,
  });
}

const say = ({ units, grams }: Nearest, unit: string) => `${units} ${unit} (${grams} g)`;

function refuseMixedBags(
  masses: Masses,
  { unit, bagSizes }: { unit: 'lb' | 'kg'; bagSizes: readonly number[] },
): void {
  const unitsOf = (field: Mass) => countFromGrams(masses[field], unit) ?? 0;
  const [least, wanted, most] = [unitsOf('leastGrams'), unitsOf('wantedGrams'), unitsOf('mostGrams')];
  if (bagSizeOfPledge(bagSizes, { least, wanted, most }) !== undefined) return;
  throw new Problem('pledge-off-step', {
    detail: `Least, wanted and most must be whole bags of one size, of ${bagSizes.join(' or ')} ${unit}.`,
    fields: MASSES.map((field) => ({ field, message: 'Not all three are whole bags of one size.' })),
  });
}

/** The nearest whole steps on both sides, over all step sizes that are allowed. */
function nearestMasses(grams: number, unit: 'lb' | 'kg', steps: readonly number[]) {
  const sides = steps.map((step) => {
    const exact = divideFractions(fraction(grams), GRAMS_PER_UNIT[unit]);
    const whole = Number(floorFraction(divideFractions(exact, fraction(step))));
    // A count rounded down to its grams may lie just above them, as 100 lb (45,359 g) does for 45,359 g.
    const candidates = [whole - 1, whole, whole + 1, whole + 2].filter((count) => count >= 0);
    return candidates.map((count) => ({
      units: count * step,
      grams: gramsOfPhysicalUnit(count * step, unit),
    }));
  });
  const all = sides.flat().toSorted((a, b) => a.grams - b.grams);
  const below = all.findLast((candidate) => candidate.grams <= grams) ?? { units: 0, grams: 0 };
  const above = all.find((candidate) => candidate.grams > grams) ?? below;
  return { below, above };
}
