import { receivedBag, STARTER_TARE_GRAMS } from '@sheafbook/sharing';
import { parseMass } from '@sheafbook/units';
import type { BagReading, Condition, Decision } from './queue.ts';
import type { ScaleUnit } from './scale.ts';

/** What stands on the pad while a bag is on the scale. It outlives a closed tab. */
export type PadDraft = {
  readonly text: string;
  readonly unit: ScaleUnit;
  readonly condition: Condition;
  readonly note: string;
  readonly mark: string;
  readonly tare: string;
  /** The refused reading that is put right; empty for a new bag. */
  readonly mendingId: string;
};

export const padOf = (unit: ScaleUnit): PadDraft => ({
  text: '',
  unit,
  condition: 'dry',
  note: '',
  mark: '',
  tare: unit === 'kg' ? '0.250 kg' : `${STARTER_TARE_GRAMS.woven} g`,
  mendingId: '',
});

/** A typed mass in grams; null when nothing or nothing readable was typed. Nothing on the scale is 0. */
export function gramsOf(text: string, unit: ScaleUnit): number | null {
  const mass = parseMass(text, { defaultUnit: unit });
  if (!('problem' in mass)) return mass.grams;
  return mass.problem === 'zero' ? 0 : null;
}

export type Weighed = {
  readonly grossGrams: number;
  readonly tareGrams: number;
  readonly received: ReturnType<typeof receivedBag>;
};

/** What the pad says of a bag, by the same sum with which the book will take it in; null while it says nothing yet. */
export function weighedBy(
  pad: Pick<PadDraft, 'text' | 'unit' | 'tare'>,
  declaredGrams: number,
): Weighed | null {
  const grossGrams = gramsOf(pad.text, pad.unit);
  const tareGrams = gramsOf(pad.tare, 'kg');
  if (grossGrams === null || tareGrams === null || grossGrams === 0 || tareGrams > grossGrams) return null;
  return { grossGrams, tareGrams, received: receivedBag({ declaredGrams, grossGrams, tareGrams }) };
}

type Judging = {
  readonly pad: PadDraft;
  readonly bagOfferId: string;
  readonly weighed: Weighed | null;
  readonly isRefused: boolean;
  /** Said of a bag that is kept in another condition than dry, when nothing was typed. */
  readonly conditionWords: string;
};

/** The reading as it goes into the book. Whatever is no plain dry bag is kept with a note. */
export function readingOf({ pad, bagOfferId, weighed, isRefused, conditionWords }: Judging): BagReading {
  const isPlain = pad.condition === 'dry' && pad.note.trim() === '';
  const decision: Decision = isRefused ? 'refused' : isPlain ? 'accepted' : 'accepted-with-note';
  const note = pad.note.trim() === '' && decision === 'accepted-with-note' ? conditionWords : pad.note.trim();
  return {
    bagOfferId,
    supplierMark: pad.mark.trim(),
    ...(weighed ? { grossGrams: weighed.grossGrams, tareGrams: weighed.tareGrams } : {}),
    condition: pad.condition,
    decision,
    note,
    isExemptFromWeighing: weighed === null && !isRefused,
  };
}
