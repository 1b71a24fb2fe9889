import type { Solver } from '@sheafbook/solve';
import { assert, sumOf } from '@sheafbook/units';
import { buyNothing, type Drops, fillAlone, fillByDrops, isSound } from './fill-alone.ts';
import type { FillAnswer } from './fill-answer.ts';
import { certify, type Findings, watchSolver } from './fill-certificate.ts';
import { assertFillAnswer, assertFillRequest } from './fill-check.ts';
import { compareKeys } from './fill-order.ts';
import { presentFill } from './fill-present.ts';
import type { FillRequest } from './fill-request.ts';
import { type Choice, settleChoice } from './fill-search.ts';
import { openCandidates, type Survey, surveyLines } from './fill-survey.ts';
import { searchTogether } from './fill-together.ts';

type Solved = { readonly choice: Choice; readonly drops: Drops; readonly certificate: Findings };

type Unfinished = {
  readonly found: Choice | undefined;
  readonly tried: number;
  readonly bound: readonly number[] | undefined;
};

/**
 * Decides how many whole bags to buy and what each pledge gets.
 * Made as small as can be, one after the other: dropped pledges; unfilled bags; unfilled units; total
 * deviation from what was wanted (a dropped pledge by its whole want); the largest deviation; with several
 * bag sizes the goods cost, then the number of bags; the deviations in pledge order; then the earlier pledge
 * gets more. Left ties: more bags of the larger size, then of the offer whose name sorts first. So the same
 * pledges always get the same answer, whatever order lines and offers are typed in.
 * Each line is filled by itself, without the pledges whose ceiling would not hold even if delivery were free;
 * if then a ceiling breaks or the supplier's minimum is missed, all lines are filled together, with the cost
 * of the whole order, then its bags, after the largest deviation. The joint key is the sum over lines. A
 * ceiling is compared with the landed price at the bag counts: (goods + by-weight share of freight) / grams
 * of the line.
 * Units: whole line units, bags, grams and minor units, as in `FillRequest`. Nothing bought is a valid
 * answer.
 * Grams: the grams of all bags of a line by largest remainder over allotments in pledge order, then common.
 * Errors: AssertionError when the request makes no sense (amounts not whole, not multiples of the step, out
 * of order, ids twice), or the answer fails its exact re-check.
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
  if (!survey.canReachMinimum) return refuseAll(survey);
  const alone = survey.lines.length === 1 ? undefined : solveAlone(survey, solver);
  return alone ?? solveTogether(survey, solver);
}

function refuseAll(survey: Survey): Solved {
  const method = survey.lines.length > 1 ? 'joint-bag-counts' : 'exhausted-bag-counts';
  const note = 'no order of these pledges reaches the supplier’s minimum';
  const certificate = { method, countsTried: 0, bound: undefined, note } as const;
  return { choice: buyNothing(survey), drops: noDrops(survey), certificate };
}

/** Each line by itself, when the order that makes is one that can be placed. */
function solveAlone(survey: Survey, solver: Solver): Solved | undefined {
  const { choice, tried, isProven } = fillAlone(survey, solver);
  if (!isProven || !isSound(survey.request, choice)) return undefined;
  const note = 'each line is at its own best, and the order keeps every ceiling and the minimum';
  const certificate = { method: 'exhausted-bag-counts', countsTried: tried, bound: undefined, note } as const;
  return { choice, drops: noDrops(survey), certificate };
}

function solveTogether(survey: Survey, solver: Solver): Solved {
  const lines = openCandidates(survey.lines, solver);
  const { request, leastFreight } = survey;
  const { best, tried, bound } = searchTogether(request, { lines, leastFreight });
  assert(best || bound, 'buying nothing is always possible');
  const found = best && settleChoice(lines, best);
  if (!found || bound) return solveByDrops(survey, { found, tried, bound }, solver);
  const isJoint = survey.lines.length > 1;
  const method = isJoint ? 'joint-bag-counts' : 'exhausted-bag-counts';
  const note = isJoint ? 'the lines were weighed together' : 'the line was weighed at every bag count';
  return { choice: found, drops: noDrops(survey), certificate: { method, countsTried: tried, bound, note } };
}

/**
 * Too many joint counts to look at: an integer program over all lines without ceilings. If every ceiling
 * holds all the same, that is the best; if not, the better of what the search saw and of dropping the lowest
 * ceilings.
 */
function solveByDrops(survey: Survey, search: Unfinished, solver: Solver): Solved {
  const byDrops = fillByDrops(survey, solver);
  const dropped = sumOf(byDrops.drops.map((positions) => positions.size));
  const found = { method: 'drops-then-solve', countsTried: search.tried } as const;
  const tooMany = 'too many joint bag counts to look at all';
  if (dropped === 0) {
    const note = `${tooMany}: the solver proved each level; between equal keys its own order decides`;
    return { ...byDrops, certificate: { ...found, bound: undefined, note } };
  }
  const isSearchBetter = search.found && compareKeys(search.found.key, byDrops.choice.key) < 0;
  const kept = isSearchBetter ? { choice: search.found, drops: noDrops(survey) } : byDrops;
  const how = isSearchBetter
    ? 'the best of those looked at'
    : `the best once ${dropped} pledges were dropped one by one, the lowest ceiling first`;
  return { ...kept, certificate: { ...found, bound: search.bound, note: `${tooMany}: ${how}` } };
}

const noDrops = (survey: Survey): Drops => survey.lines.map(() => new Set());
