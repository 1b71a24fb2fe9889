import type { ContainerKindRow, FoodRow } from '@sheafbook/db/tables';
import { bulkOf, judgeFill, levelGrams, shakenGrams } from '@sheafbook/foods';
import { fraction } from '@sheafbook/units';
import { Problem } from '../../platform/problem.ts';

/**
 * Refuses a fill past what shaking down allows, and says a word about one that needs shaking. `facts` are what else the
 * refusal tells.
 */
export function judgeContainerFill(
  grams: number,
  kind: ContainerKindRow,
  food: FoodRow,
  field: string,
  facts: () => Record<string, unknown> = () => ({}),
): string[] {
  const dense = bulkOf(food);
  const judged = judgeFill(grams, kind, dense);
  const millilitres = fraction(kind.capacityMicrolitres, 1000);
  if (judged === 'too-full') {
    const most = shakenGrams(dense, millilitres);
    const message = `${kind.nameEn} holds ${most} g of ${food.nameEn} at the most.`;
    throw new Problem('over-capacity', { detail: message, fields: [{ field, message }], ...facts() });
  }
  if (judged === 'shaken')
    return [`Level is ${levelGrams(dense, millilitres)} g; ${grams} g need shaking down.`];
  return judged === 'unknown'
    ? [`How heavy ${food.nameEn} lies is not known, so the fill was not checked.`]
    : [];
}
