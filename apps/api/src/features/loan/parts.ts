import type { EquipmentPartRow, LoanPartRow } from '@sheafbook/db/tables';
import { fieldProblem } from '../../platform/problem.ts';

export type Tick = { readonly partId: string; readonly pieces: number };

type Known = { readonly partId: string; readonly most: number; readonly name: string };

/** Every part of a list ticked once, none twice, none that is not on it, and none more often than it is there. */
function checkTicks(known: readonly Known[], ticks: readonly Tick[], says: (most: number) => string) {
  for (const [at, { partId, pieces }] of ticks.entries()) {
    const part = known.find((candidate) => candidate.partId === partId);
    if (!part)
      throw fieldProblem('thing-not-found', `parts.${at}.partId`, 'This part belongs to something else.');
    if (pieces > part.most) throw fieldProblem('invalid-input', `parts.${at}.pieces`, says(part.most));
  }
  const unticked = known.find(({ partId }) => !ticks.some((tick) => tick.partId === partId));
  if (unticked)
    throw fieldProblem('invalid-input', 'parts', `Say how many of this are there: ${unticked.name}.`);
}

export function checkTicksOut(parts: readonly EquipmentPartRow[], ticks: readonly Tick[]): void {
  const known = parts.map(({ equipmentPartId, pieces, name }) => ({
    ...{ partId: equipmentPartId, most: pieces, name },
  }));
  checkTicks(known, ticks, (most) => `It has ${most} of these.`);
}

export function checkTicksIn(parts: readonly LoanPartRow[], ticks: readonly Tick[]): void {
  const known = parts.map(({ equipmentPartId, outPieces, name }) => ({
    ...{ partId: equipmentPartId, most: outPieces, name },
  }));
  checkTicks(known, ticks, (most) => `${most} of these went out.`);
}

export const piecesOf = (ticks: readonly Tick[], partId: string): number =>
  ticks.find((tick) => tick.partId === partId)?.pieces ?? 0;

/** What a piece lacks after a count, of the parts that belong to it. */
export const lackingOf = (parts: readonly EquipmentPartRow[], ticks: readonly Tick[]): Tick[] =>
  parts
    .map(({ equipmentPartId, pieces }) => ({
      ...{ partId: equipmentPartId, pieces: pieces - piecesOf(ticks, equipmentPartId) },
    }))
    .filter(({ pieces }) => pieces > 0);
