import { assert, sumOf } from '@sheafbook/units';
import type { LinePlan } from './line-plan.ts';

/** So many of the last gaps between containers tell the pace (job map 3.3, question 3: the last ten). */
const GAPS = 10;

/**
 * A line while it runs. Units: seconds from the planned start of the day; `closedAtSeconds` has each container that is
 * closed, in order; `cycleSeconds` is the plan's pace. Errors: none by itself.
 */
export type RunningLine = Pick<LinePlan, 'runs' | 'finishSeconds'> & {
  readonly cycleSeconds: number | null;
  readonly closedAtSeconds: readonly number[];
};

/**
 * When a line that runs will be done. What it is behind its plan now is added to the plan's end, and so is what each
 * container to come takes longer at the pace of the last ten; once all are closed, what the last one was behind stays. The middle of the gaps is taken, so that a rest or a jam is
 * counted once, as being behind, and containers logged in one go don't make it fast. A line that is ahead keeps the plan's
 * end, since households come at their times.
 * Units: seconds from the planned start of the day; null when the line can't run. Errors: AssertionError when times go back.
 * Source: common practice, no source.
 */
export function runningFinish(line: RunningLine, nowSecond: number): number | null {
  const { finishSeconds, cycleSeconds, closedAtSeconds: closedAt } = line;
  if (finishSeconds === null || cycleSeconds === null) return null;
  const gaps = closedAt.slice(1).map((at, index) => at - (closedAt[index] as number));
  assert(
    gaps.every((gap) => gap >= 0),
    'containers are given in the order in which they were closed',
  );
  const toCome = Math.max(0, sumOf(line.runs.map(({ containers }) => containers)) - closedAt.length);
  const untilSecond = toCome === 0 ? Math.min(nowSecond, closedAt.at(-1) ?? nowSecond) : nowSecond;
  const lateSeconds = Math.max(0, untilSecond - plannedSecond(line, closedAt.length));
  const slowerSeconds = Math.max(0, middleOf(gaps.slice(-GAPS)) - cycleSeconds);
  return finishSeconds + lateSeconds + Math.round(slowerSeconds * toCome);
}

/** When the plan has so many containers closed and begins the next. */
function plannedSecond({ runs }: RunningLine, closed: number): number {
  const run = runs.find(({ toSerial }) => toSerial > closed);
  if (!run) return runs.at(-1)?.endsAtSecond ?? 0;
  const each = (run.endsAtSecond - run.startsAtSecond) / run.containers;
  return run.startsAtSecond + each * (closed - run.fromSerial + 1);
}

/** The middle one of some lengths; none is no length. */
function middleOf(lengths: readonly number[]): number {
  const sorted = lengths.toSorted((a, b) => a - b);
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
}
