import type { readYearOfMass, readYearsMovements } from './use-cases.ts';

export const presentYearOfMass = ({ year, of, mass }: Awaited<ReturnType<typeof readYearOfMass>>) => ({
  ...{ year, of },
  ...mass,
});

/** Grams count toward the number that they stand behind. */
export const presentYearsMovements = ({
  year,
  of,
  part,
  movements,
}: Awaited<ReturnType<typeof readYearsMovements>>) => ({
  ...{ year, of, part },
  movements: movements.map(({ entryId, entryNo, what, onDay, side, foodEn, foodEs, inGrams, outGrams }) => ({
    ...{ entryId, entryNo, what, onDay, side, foodEn, foodEs },
    grams: isComing(part) ? inGrams - outGrams : outGrams - inGrams,
  })),
});

const isComing = (part: string): boolean => ['landed', 'from-others', 'changed'].includes(part);
