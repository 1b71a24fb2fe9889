import type { ScaleUnit } from './scale.ts';

const PLACE = 'sheafbook.scale-unit';

/** What the scale beside this phone reads in, as it was last chosen; null as long as nobody has. */
export function scaleUnit(): ScaleUnit | null {
  const kept = localStorage.getItem(PLACE);
  return kept === 'kg' || kept === 'lb' ? kept : null;
}

export const keepScaleUnit = (unit: ScaleUnit) => localStorage.setItem(PLACE, unit);
