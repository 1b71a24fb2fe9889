import type { Solver } from '@sheafbook/solve';
import { assert } from '@sheafbook/units';
import { buyNothing, type Drops, fillAlone, fillByDrops, isSound } from './fill-alone.ts';
import type { FillAnswer } from './fill-answer.ts';
import { certify, type Findings, watchSolver } from './fill-certificate.ts';
import { assertFillAnswer, assertFillRequest } from './fill-check.ts';
import { compareKeys, sumOf } from './fill-order.ts';
import { presentFill } from './fill-present.ts';
import type { FillRequest } from './fill-request.ts';
import { type Choice, settleChoice } from './fill-search.ts';
import { openCandidates, type Survey, surveyLines } from './fill-survey.ts';
import { searchTogether } from './fill-together.ts';

type Solved = { readonly choice: Choice; readonly drops: Drops; readonly certificate: Findings };

type Unfinished = Pick<Findings, 'bound'> & { readonly found: Choice | undefined; readonly tried: number };

/**
 * Decides how many whole bags to buy and what each pledge gets.
 * Made as small as can be, one after the other: dropped pledges; unfilled bags; unfilled units; total deviation
 * from what was wanted (a dropped pledge by its whole want); the largest deviation; with several bag sizes the
 * goods cost, then the number of bags; the deviations in pledge order; then the earlier pledge gets more. Left
 * ties: more bags of the larger size, then of the offer whose name sorts first. So the same pledges always get
 * the same answer, whatever order lines and offers are typed in.
 * Each line is filled by itself, without the pledges whose ceiling would not hold even if delivery were free; if
 * then a ceiling breaks or the supplier's minimum is missed, all lines are filled together, with the cost of the
 * whole order, then its bags, after the largest deviation. The joint key is the sum over lines. A ceiling is
 * compared with the landed price at the bag counts: (goods + by-weight share of freight) / grams of the line.
 * Units: whole line units, bags, grams and minor units, as in `FillRequest`. Nothing bought is a valid answer.
 * Grams: the grams of all bags of a line by largest remainder over allotments in pledge order, then common.
 * Errors: AssertionError when the request makes no sense (amounts not whole, not multiples of the step, out of
 * order, ids twice), or the answer fails its exact re-check.
 */
export function fillBags(request: FillRequest, solver: Solver): FillAnswer {
  assertFillRequest(request);
  const watched = watchSolver(solver);
  const survey = surveyLines(request);
  const solved = solveFill(survey, watched.solver);
  const answer = {
    ...presentFill(survey, solved.choice, solved.drops),
    certificate: certify(survey, { ...solved.certificate, key: solved.choice.key }, watched.tally),
  };
  assertFillAnswer(request, answer);
  return answer;
}

function solveFill(survey: Survey, solver: Solver): Solved {
  const { request } = survey;
  const noDrops = survey.lines.map(() => new Set<number>());
  const method = survey.lines.length > 1 ? 'joint-bag-counts' : 'exhausted-bag-counts';
  if (!survey.canReachMinimum) {
    const note = 'no order of these pledges reaches the supplier’s minimum';
    const certificate = { method, countsTried: 0, bound: undefined, note } as const;
    return { choice: buyNothing(survey), drops: noDrops, certificate };
  }
  if (survey.lines.length !== 1) {
    const { choice, tried, isProven } = fillAlone(survey, noDrops, solver);
    const note = 'each line is at its own best, and the order keeps every ceiling and the minimum';
    const certificate = {
      method: 'exhausted-bag-counts',
      countsTried: tried,
      bound: undefined,
      note,
    } as const;
    if (isProven && isSound(request, choice)) return { choice, drops: noDrops, certificate };
  }
  const lines = openCandidates(survey.lines, solver);
  const { best, tried, bound } = searchTogether(request, { lines, leastFreight: survey.leastFreight });
  assert(best || bound, 'buying nothing is always possible');
  const found = best && settleChoice(lines, best);
  if (found && !bound) {
    const isJoint = survey.lines.length > 1;
    const note = isJoint ? 'the lines were weighed together' : 'the line was weighed at every bag count';
    return { choice: found, drops: noDrops, certificate: { method, countsTried: tried, bound, note } };
  }
  return solveByDrops(survey, { found, tried, bound }, solver);
}

/** Too many joint counts to finish: the better of what the search saw and of dropping the lowest ceilings. */
function solveByDrops(survey: Survey, search: Unfinished, solver: Solver): Solved {
  const byDrops = fillByDrops(survey, solver);
  const noDrops = survey.lines.map(() => new Set<number>());
  const options: Pick<Solved, 'choice' | 'drops'>[] = [{ choice: buyNothing(survey), drops: noDrops }];
  if (isSound(survey.request, byDrops.choice)) options.unshift(byDrops);
  if (search.found) options.unshift({ choice: search.found, drops: noDrops });
  const best = options.reduce((a, b) => (compareKeys(b.choice.key, a.choice.key) < 0 ? b : a));
  const dropped = sumOf(byDrops.drops.map((positions) => positions.size));
  const how =
    best.choice === byDrops.choice
      ? `best given ${dropped} pledges dropped one by one, the lowest ceiling first`
      : 'the best of the joint bag counts that were looked at';
  const note = `too many joint bag counts to look at all: ${how}`;
  const countsTried = search.tried + byDrops.tried;
  return { ...best, certificate: { method: 'drops-then-solve', countsTried, bound: search.bound, note } };
}
