import { loadSolver, type Solver } from '@sheafbook/solve';

let loading: Promise<Solver> | undefined;

/** The solver of this process, loaded when the first fill asks for it. A load that failed is tried anew. */
export function loadFillSolver(): Promise<Solver> {
  loading ??= loadSolver().catch((error: unknown) => {
    loading = undefined;
    throw error;
  });
  return loading;
}
