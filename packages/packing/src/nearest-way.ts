import { judgeFill, levelGrams } from '@sheafbook/foods';
import { judgeTreatment, TREATMENT_CODES, type TreatmentCode } from '@sheafbook/keeping';
import { fraction } from '@sheafbook/units';
import type { FoodToKeep, KindToUse } from './ways-to-keep.ts';

/** A container, what is done to it and how much goes in. Units: whole grams. Errors: none. */
export type WayWished = {
  readonly kindId: string;
  readonly treatment: TreatmentCode;
  readonly gramsEach: number;
};

type Kind = Pick<KindToUse, 'kindId' | 'capacityMicrolitres' | 'barrier'>;

/**
 * The nearest way to one that does not fit, that holds the food and needs no warning: the same container with another treatment,
 * then the same treatment in another container, the smallest that holds it, then the same container without a treatment, then any
 * container without one, and last less in the same container.
 * Units: whole grams, microlitres of capacity. Shape: null where nothing fits, as when the container is not of these kinds.
 * Ties: the order of `TREATMENT_CODES`, then of the kinds. Errors: as `judgeTreatment`.
 */
export function nearestWay(wished: WayWished, food: FoodToKeep, kinds: readonly Kind[]): WayWished | null {
  const own = kinds.find(({ kindId }) => kindId === wished.kindId);
  if (!own) return null;
  const { treatment, gramsEach } = wished;
  const bySize = kinds
    .filter((kind) => kind !== own)
    .toSorted((a, b) => a.capacityMicrolitres - b.capacityMicrolitres);
  const others = TREATMENT_CODES.filter((code) => code !== treatment && code !== 'none');
  const less = levelGrams(food, fraction(own.capacityMicrolitres, 1000)) ?? 0;
  const candidates = [
    ...others.map((code) => ({ kind: own, code, grams: gramsEach })),
    ...bySize.map((kind) => ({ kind, code: treatment, grams: gramsEach })),
    ...[own, ...bySize].map((kind) => ({ kind, code: 'none' as const, grams: gramsEach })),
    { kind: own, code: treatment, grams: less },
    { kind: own, code: 'none' as const, grams: less },
  ];
  const found = candidates.find((candidate) => isSound(candidate, food));
  return found ? { kindId: found.kind.kindId, treatment: found.code, gramsEach: found.grams } : null;
}

type Candidate = { readonly kind: Kind; readonly code: TreatmentCode; readonly grams: number };

function isSound({ kind, code, grams }: Candidate, food: FoodToKeep): boolean {
  if (grams <= 0 || judgeFill(grams, kind, food) === 'too-full') return false;
  return judgeTreatment(code, { ...food, barrier: kind.barrier, grams }).verdict === 'fits';
}
