import { AssertionError, assert } from '@sheafbook/units';
import type { Highs } from 'highs';
import loadHighs from 'highs';
import { checkAnswer } from './check-answer.ts';
import { checkModel, LARGEST, toHighs } from './highs-model.ts';
import type { IntegerAnswer, IntegerModel, IntegerRow } from './model.ts';

/**
 * The door to HiGHS: one integer model in, one exact answer out. Units: the model's. Errors: see
 * `loadSolver`.
 */
export type Solver = { minimise(model: IntegerModel): IntegerAnswer };

/**
 * Loads HiGHS (WebAssembly) and returns a solver. The same model always gets the same answer.
 * Two instances are loaded: when the first breaks inside a solve, the spare takes over at once and
 * solves the model again, while a new spare loads.
 * Units: none. `loadRuntime` is the engine's own loader, passed in by tests that need it to break.
 * Errors: rejects when WebAssembly cannot load; `minimise` throws AssertionError when a number of the model
 * is not whole, the answer fails the exact check, or two instances in a row break (later calls work again
 * once a new instance has loaded).
 */
export async function loadSolver(loadRuntime: () => Promise<Highs> = () => loadHighs()): Promise<Solver> {
  const ready: Highs[] = [await loadRuntime(), await loadRuntime()];
  let isLoading = false;
  // A load that fails is tried again when the pool is next found wanting.
  const refill = async (): Promise<void> => {
    if (isLoading) return;
    isLoading = true;
    const loaded = await loadRuntime().catch(() => undefined);
    isLoading = false;
    if (loaded) ready.push(loaded);
    if (loaded && ready.length < 2) await refill();
  };
  return {
    minimise(model) {
      checkModel(model);
      if (isPlainlyInfeasible(model)) return { status: 'infeasible' };
      if (model.variables.length === 0) return { status: 'optimal', values: [], objective: 0, bound: 0 };
      for (let attempt = 1; attempt <= 2; attempt += 1) {
        const [active] = ready;
        if (ready.length < 2) void refill();
        assert(active, 'the solver broke and is being loaded again');
        const answer = tryOnce(active, model);
        if (!('broke' in answer)) return answer;
        ready.shift();
        void refill();
      }
      throw new AssertionError('the solver broke twice on the same model');
    },
  };
}

/** HiGHS calls an empty model "empty" and crossed bounds an error; both have a plain answer without it. */
function isPlainlyInfeasible({ variables, rows }: IntegerModel): boolean {
  const excludesZero = (row: IntegerRow): boolean => (row.least ?? 0) > 0 || (row.most ?? 0) < 0;
  return (
    variables.some((variable) => variable.least > variable.most) ||
    rows.some((row) => (row.least ?? -LARGEST) > (row.most ?? LARGEST)) ||
    (variables.length === 0 && rows.some(excludesZero))
  );
}

/**
 * A trap in WebAssembly leaves its memory in an unknown state, so whatever is thrown inside means "broke".
 */
function tryOnce(highs: Highs, model: IntegerModel): IntegerAnswer | { readonly broke: unknown } {
  let raw: RawAnswer;
  try {
    raw = runHighs(highs, model);
  } catch (broke) {
    return { broke };
  }
  return raw === 'infeasible' ? { status: 'infeasible' } : toExact(model, raw);
}

const OPTIONS = {
  output_flag: false,
  // "Nearly the best" is no answer here.
  mip_rel_gap: 0,
  mip_abs_gap: 0,
  // The same run every time.
  random_seed: 0,
  // This heuristic takes 15 ms to set up, twenty times what a model of a few pledges takes to solve.
  mip_heuristic_run_feasibility_jump: false,
};

type RawAnswer = 'infeasible' | { readonly values: Float64Array; readonly bound: number };

function runHighs(highs: Highs, model: IntegerModel): RawAnswer {
  return highs.withModel(toHighs(highs, model), (instance): RawAnswer => {
    instance.options.set(OPTIONS);
    instance.run();
    const { infeasible, optimal, unboundedOrInfeasible } = highs.constants.modelStatus;
    const status = instance.getModelStatus();
    // Every variable has two bounds, so nothing is unbounded and "either" can only mean infeasible.
    if (status === infeasible || status === unboundedOrInfeasible) return 'infeasible';
    if (status !== optimal) throw new Error(`HiGHS ended with model status ${status}`);
    const bound = Number(instance.info.get('mip_dual_bound'));
    return { values: instance.getSolution().colValue, bound };
  });
}

function toExact(model: IntegerModel, raw: Exclude<RawAnswer, 'infeasible'>): IntegerAnswer {
  // Adding 0 turns the double -0 into 0.
  const values = Array.from(raw.values, (value) => Math.round(value) + 0);
  const objective = checkAnswer(model, values);
  // Every cost is whole, so the next whole number above the solver's bound is a bound too.
  const bound = Math.min(objective, Math.ceil(raw.bound - 1e-4)) + 0;
  return { status: 'optimal', values, objective, bound };
}
