/** Of one line, what became of the promise: who took over how much, and what stays with the household. Units and grams. */
export type WithdrawnLine = {
  readonly lineId: string;
  readonly units: number;
  readonly grams: number;
  readonly placements: readonly {
    readonly ownerId: string;
    readonly takenAs: 'pledger' | 'waitlist' | 'common-stock';
    readonly units: number;
    readonly grams: number;
  }[];
  readonly leftUnits: number;
  readonly leftGrams: number;
};

/**
 * What a withdrawal came to, as it is stored. Before the order the pledges go and the deposit is settled for the harm
 * to the others; after it the promises find takers, and the deposit waits for the charge. Minor units.
 */
export type WithdrawalAnswer = {
  readonly pledges: number;
  readonly harmMinorUnits: number;
  readonly withheldMinorUnits: number;
  readonly refundMinorUnits: number;
  readonly lines: readonly WithdrawnLine[];
};
