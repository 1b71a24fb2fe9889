import type { ContainerRow, GiftFactRow } from '@sheafbook/db/tables';
import { LABEL_FACTS, type LabelFact, type SealedBy } from '@sheafbook/giving';
import { readTreatment, treatmentOf } from '@sheafbook/keeping';

/** What is known of a container for giving it. Nothing said: packed by us, under our own label. */
export type GiftFacts = {
  readonly sealedBy: SealedBy;
  readonly labelFacts: readonly LabelFact[];
  readonly isTreatedSeed: boolean;
  readonly isMouldy: boolean;
};

/** Our label names food, grams, day, packer and allergens, and what has one ingredient is its own list of them. */
const OURS: Omit<GiftFacts, 'sealedBy'> = {
  labelFacts: LABEL_FACTS,
  isTreatedSeed: false,
  isMouldy: false,
};

export function factsOf(
  { openedOn }: Pick<ContainerRow, 'openedOn'>,
  said: GiftFactRow | undefined,
): GiftFacts {
  if (!said) return { ...OURS, sealedBy: openedOn === null ? 'home' : 'unsealed' };
  return {
    sealedBy: said.sealedBy as SealedBy,
    labelFacts: said.labelFacts as LabelFact[],
    isTreatedSeed: said.isTreatedSeed,
    isMouldy: said.isMouldy,
  };
}

/** Whether it was packed without oxygen; null where nobody said how it was packed. */
export function isWithoutOxygen({ treatment }: Pick<ContainerRow, 'treatment'>): boolean | null {
  const known = readTreatment(treatment);
  return known === null ? null : treatmentOf(known).isOxygenFree;
}
