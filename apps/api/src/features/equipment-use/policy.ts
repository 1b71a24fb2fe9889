import { seesLoans } from '../equipment/policy.ts';

/** Who sees the loans sees what they come to: keeper, coordinator and reviewer. */
export const seesUse = seesLoans;
