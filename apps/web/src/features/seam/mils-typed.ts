/** How a gauge reads: thousandths of an inch, or millimetres. */
export type GaugeUnit = 'mil' | 'mm';

const MM_OF_A_MIL = 0.0254;

/** Whole thousandths of an inch of what was typed; undefined when it is no measure of a seam. */
export function milsTyped(typed: string, unit: GaugeUnit): number | undefined {
  const text = typed.trim().replace(',', '.');
  if (!/^\d{1,4}(\.\d{1,3})?$/.test(text)) return undefined;
  const mils = Math.round(unit === 'mm' ? Number(text) / MM_OF_A_MIL : Number(text));
  return mils >= 1 && mils <= 1000 ? mils : undefined;
}

/** A measure as the gauge reads it. */
export const milsSaid = (mils: number, unit: GaugeUnit): string =>
  unit === 'mm' ? (mils * MM_OF_A_MIL).toFixed(2) : String(mils);
