import type { ContainerKindRow, FoodRow } from '@sheafbook/db/tables';
import { bulkOf, judgeFill, levelGrams, shakenGrams } from '@sheafbook/foods';
import { fraction } from '@sheafbook/units';
import { namedIn, namingProblem } from '../../platform/problem.ts';

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
    const says = (language: 'en' | 'es') =>
      `${namedIn(language, kind)} holds ${most} g of ${namedIn(language, food)} at the most.`;
    throw namingProblem('over-capacity', { ...facts(), field, says });
  }
  if (judged === 'shaken')
    return [`Level is ${levelGrams(dense, millilitres)} g; ${grams} g need shaking down.`];
  return judged === 'unknown' ? ['How heavy this food lies is not known, so the fill was not checked.'] : [];
}
