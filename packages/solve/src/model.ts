/** A whole-number unknown between two bounds. Units: the caller's. Errors: none. */
export type IntegerVariable = { readonly least: number; readonly most: number };

/**
 * A linear condition: least ≤ Σ coefficient × variable ≤ most; null leaves that side open.
 * Units: the caller's. Shape: `variable` is a position in the model's list; naming one twice adds up.
 * Errors: none.
 */
export type IntegerRow = {
  readonly terms: readonly { readonly variable: number; readonly coefficient: number }[];
  readonly least: number | null;
  readonly most: number | null;
};

/**
 * An integer program: find whole values within all bounds and rows that make Σ cost × value smallest.
 * Units: the caller's. Shape: one cost per variable, in the same order; every number in it is whole.
 * Errors: none.
 */
export type IntegerModel = {
  readonly variables: readonly IntegerVariable[];
  readonly rows: readonly IntegerRow[];
  readonly costs: readonly number[];
};

/**
 * What a model came to. `bound` is the solver's proof: no whole answer costs less.
 * Units: the caller's. Shape: `values` are whole, in the order of the variables, checked against every row.
 * Errors: none.
 */
export type IntegerAnswer =
  | {
      readonly status: 'optimal';
      readonly values: number[];
      readonly objective: number;
      readonly bound: number;
    }
  | { readonly status: 'infeasible' };
