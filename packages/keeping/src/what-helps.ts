import { type KeptContainer, keepingLifeOf } from './keeping-life.ts';
import { judgeTreatment } from './treatment-fit.ts';

/** Somewhere else a container could stand. Units: tenths of a degree Celsius, as food ages there. Errors: none. */
export type OtherPlace = {
  readonly placeId: string;
  readonly tenthsCelsius: number;
  readonly isLit: boolean | null;
};

/**
 * Something that would make a container keep longer. `repack` is with an absorber in a container of the same kind,
 * `repack-in-can` in a sealed can.
 * Units: whole days that it adds to the likely life. Errors: none.
 */
export type Help =
  | { readonly way: 'move'; readonly placeId: string; readonly gainDays: number }
  | { readonly way: 'repack' | 'repack-in-can'; readonly gainDays: number };

/**
 * What would make a container keep longer, the most first. Packing anew brings back nothing that is used up, is named only
 * where an absorber suits the food and the wall, and not for what is opened already or what a look leaves for no shelf.
 * Units: as `Help`; whole grams in it. Errors: as `keepingLifeOf`.
 */
export function whatHelps(
  kept: KeptContainer,
  pack: { readonly grams: number; readonly needsMoistureTest: boolean },
  places: readonly OtherPlace[],
): Help[] {
  const { likelyDays } = keepingLifeOf(kept);
  const gainOf = (change: Partial<KeptContainer>) =>
    keepingLifeOf({ ...kept, ...change }).likelyDays - likelyDays;
  const moves = places.map(({ placeId, tenthsCelsius, isLit }) => ({
    ...{ way: 'move' as const, placeId },
    gainDays: gainOf({ nowTenthsCelsius: tenthsCelsius, standsInLight: isLit }),
  }));
  const isPackable = (change: Partial<KeptContainer>) =>
    kept.openedDaysAgo === null &&
    (kept.lastLook === null || kept.lastLook.outcome === 'table') &&
    judgeTreatment('oxygen-absorber', { ...kept, ...change, ...pack }).verdict === 'fits';
  const absorber = { treatment: 'oxygen-absorber' } as const;
  const can = { ...absorber, barrier: 'metal', isDark: true } as const;
  const repacks = [
    ...(isPackable({}) ? [{ way: 'repack' as const, gainDays: gainOf(absorber) }] : []),
    ...(isPackable(can) ? [{ way: 'repack-in-can' as const, gainDays: gainOf(can) }] : []),
  ];
  return [...moves, ...repacks]
    .filter(({ gainDays }) => gainDays > 0)
    .toSorted((a, b) => b.gainDays - a.gainDays);
}
