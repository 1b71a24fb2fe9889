import type { Solver } from '@sheafbook/solve';
import type { FillCertificate } from './fill-answer.ts';
import { LEVELS } from './fill-case.ts';
import type { Survey } from './fill-survey.ts';

/**
 * What a way of filling found out. `bound`: the least key of what was not looked at, undefined when nothing
 * was left.
 */
export type Findings = Pick<FillCertificate, 'method' | 'countsTried' | 'note'> & {
  readonly bound: readonly number[] | undefined;
};

export type Tally = { solves: number; isProven: boolean };

/** Passes every model on, and counts the solves and whether each one came with a closed bound. */
export function watchSolver(solver: Solver): { readonly solver: Solver; readonly tally: Tally } {
  const tally: Tally = { solves: 0, isProven: true };
  const minimise: Solver['minimise'] = (model) => {
    const answer = solver.minimise(model);
    tally.solves += 1;
    if (answer.status === 'optimal' && answer.bound !== answer.objective) tally.isProven = false;
    return answer;
  };
  return { solver: { minimise }, tally };
}

export function certify(
  survey: Survey,
  { method, countsTried, note, bound, key }: Findings & { readonly key: readonly number[] },
  tally: Tally,
): FillCertificate {
  const countsInAll = survey.lines.map((line) => line.counts.length).join(' + ') || '0';
  const details = [
    note,
    `${countsTried} bag counts looked at, where the lines have ${countsInAll}`,
    ...(bound === undefined && method !== 'drops-then-solve' ? ['the others excluded by their bounds'] : []),
    ...(survey.isComplete ? [] : ['equal masses in equally many bags merged into the cheapest']),
    `${tally.solves} solves`,
  ];
  return {
    method,
    countsTried,
    isProvenBest: bound === undefined && tally.isProven && survey.isComplete,
    note: details.join('; '),
    levels: levelsOf(survey, key, bound),
  };
}

/** A level's bound is known as long as all levels before it stand at theirs; after that only 0 is certain. */
function levelsOf(survey: Survey, key: readonly number[], bound: readonly number[] | undefined) {
  const costName = survey.lines.length > 1 ? 'goods and freight in minor units' : 'goods in minor units';
  let isSettled = true;
  return key.map((value, position) => {
    const proven = bound === undefined ? value : isSettled ? Math.min(value, bound[position] ?? 0) : 0;
    isSettled &&= proven === value;
    return { level: [...LEVELS, costName, 'bags'][position] ?? '', value, bound: proven };
  });
}
