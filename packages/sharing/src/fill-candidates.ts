import type { Solver } from '@sheafbook/solve';
import type { BagCount } from './fill-bag-counts.ts';
import { boundKey } from './fill-bound.ts';
import type { LineCase } from './fill-case.ts';
import { type Allotted, allotLine, breakTies } from './fill-levels.ts';
import { compareKeys, Heap } from './fill-order.ts';
import type { FillLine } from './fill-request.ts';

/** A bag count with the best allotment it could have, and that allotment's key followed by the goods cost. */
export type Candidate = LineCase & { readonly allotted: Allotted; readonly orderKey: readonly number[] };

type Waiting = LineCase & { readonly orderKey: readonly number[]; readonly allotted?: Allotted };

/**
 * A line with its bag counts, each with the pledges that could take part in it, whatever the other lines buy.
 */
export type HopefulLine = {
  readonly line: FillLine;
  readonly counts: readonly { readonly count: BagCount; readonly allowed: readonly number[] }[];
};

/**
 * The bag counts of one line, best first. A count is solved only when its bound says that it might be next,
 * and each distinct question is solved once.
 */
export class LineCandidates {
  readonly line: FillLine;
  private readonly solver: Solver;
  private readonly found: Candidate[] = [];
  private readonly waiting = new Heap<Waiting>((a, b) => compareKeys(a.orderKey, b.orderKey));
  private readonly solved = new Map<string, Allotted | undefined>();

  constructor({ line, counts }: HopefulLine, solver: Solver) {
    this.line = line;
    this.solver = solver;
    for (const { count, allowed } of counts) {
      const bound = boundKey({ line, count, allowed });
      if (bound) this.waiting.push({ line, count, allowed, orderKey: [...bound, count.goods] });
    }
  }

  /** The candidate at a rank, 0 the best; undefined when there are no more. */
  at(rank: number): Candidate | undefined {
    while (this.found.length <= rank) {
      const next = this.waiting.pop();
      if (!next) return undefined;
      const { allotted, ...lineCase } = next;
      if (allotted) {
        this.found.push({ ...lineCase, allotted });
      } else {
        const exact = this.allot(lineCase);
        const orderKey = [...(exact?.key ?? []), lineCase.count.goods];
        if (exact) this.waiting.push({ ...lineCase, orderKey, allotted: exact });
      }
    }
    return this.found[rank];
  }

  /** The best allotment of a bag count when only some may take part. */
  allot(lineCase: LineCase): Allotted | undefined {
    return this.remember('levels', lineCase, () => allotLine(lineCase, this.solver));
  }

  /** The one allotment that the tie-breaks choose. */
  settle(lineCase: LineCase): Allotted | undefined {
    return this.remember('ties', lineCase, () => {
      const allotted = this.allot(lineCase);
      return allotted && { ...allotted, units: breakTies(lineCase, allotted, this.solver) };
    });
  }

  private remember(what: string, { count, allowed }: LineCase, work: () => Allotted | undefined) {
    const question = `${what} ${count.units} ${count.mostSpare} ${allowed.join(',')}`;
    if (!this.solved.has(question)) this.solved.set(question, work());
    return this.solved.get(question);
  }
}
