/** Which column of a table of needs is read; `unstated` takes the mean of the other two. Units: none. Errors: none. */
export type Sex = 'female' | 'male' | 'unstated';

/** How much an eater moves on a usual day. Units: none. Errors: none. */
export type Activity = 'sedentary' | 'moderate' | 'active';

/**
 * What is known of an eater that their need and their diet depend on.
 * Units: `birthOn` is an ISO day, `YYYY-MM` or `YYYY` (the first day of what is known); `presentPercent` is the
 * share of the year at this table, whole, 0 to 100. Errors: none by itself.
 */
export type EaterFacts = {
  readonly eaterId: string;
  readonly birthOn: string;
  readonly sex: Sex;
  readonly activity: Activity;
  readonly presentPercent: number;
  readonly heightCentimetres: number | null;
  readonly massKilograms: number | null;
  readonly typedKilocalories: number | null;
  readonly excludedAllergens: readonly string[];
  readonly excludedFoodCodes: readonly string[];
  readonly avoidsGluten: boolean;
};
