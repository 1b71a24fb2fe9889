import { readKeepingClass } from '@sheafbook/foods';
import {
  eatFirstAsKnown,
  type KeepingLife,
  keepingLifeOf,
  PUBLISHED_AGEING,
  readBarrier,
  readTreatment,
} from '@sheafbook/keeping';
import { daysBetween } from '@sheafbook/units';
import { householdOf } from '../../platform/actor.ts';
import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { todayOf } from '../../platform/today.ts';
import { withTx } from '../../platform/with-tx.ts';
import { listToLabel, type ToLabel } from './queries.ts';
import { type LabelQuery, MOST_LABELS } from './schema.ts';

/** What nobody read of a place is taken as this warm. Units: tenths of a degree Celsius. Source: job map 10.2. */
const UNKNOWN_PLACE = 250;

/** What the labels of one's own containers say, in the order of the codes' making. */
export function readLabels(context: Context, { codes }: LabelQuery) {
  const { storehouseId } = context.actor;
  const householdId = householdOf(context);
  return withTx(context, async (tx) => {
    const rows = await listToLabel(tx, storehouseId, { householdId, codes });
    const found = new Set(rows.map(({ container }) => container.containerCode));
    if (codes.some((code) => !found.has(code))) throw new Problem('thing-not-found', { thing: 'container' });
    const today = todayOf(context);
    return rows.slice(0, MOST_LABELS).map((row) => ({ ...row, eatFirst: eatFirstOf(row, today) }));
  });
}

export type LabelFacts = Awaited<ReturnType<typeof readLabels>>[number];

/** Where a container has stood nobody says yet, so that its past is taken as warm and its date is no finer than a year. */
function eatFirstOf({ container, kind, food }: ToLabel, today: string) {
  const keepingClass = readKeepingClass(food.keepingClass);
  if (keepingClass === null) return null;
  const opened = container.openedOn;
  const life: KeepingLife = keepingLifeOf({
    keepingClass,
    barrier: readBarrier(kind.barrier),
    isDark: kind.isDark,
    treatment: readTreatment(container.treatment),
    moisturePercent: container.moistureTenths === null ? null : container.moistureTenths / 10,
    standsInLight: null,
    openedDaysAgo: opened === null ? null : daysBetween(opened, today),
    history: [
      { days: daysBetween(container.packedOn, today), tenthsCelsius: UNKNOWN_PLACE, known: 'unknown' },
    ],
    nowTenthsCelsius: PUBLISHED_AGEING.referenceTenths,
  });
  return eatFirstAsKnown(today, life);
}
