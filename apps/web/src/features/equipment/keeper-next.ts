import { needOfPiece } from '@sheafbook/booking';
import type { Desk } from './queries.ts';

export type KeeperStep = {
  readonly kind: 'late-blocking' | 'late' | 'broken' | 'dirty' | 'part-missing' | 'service-due';
  readonly key: string;
  readonly name: string;
  readonly itemId: string;
  readonly loanId: string | null;
  /** Who has it, where it is a loan. */
  readonly who: string;
};
type Known = {
  readonly out: readonly Pick<
    Desk['out'][number],
    'id' | 'itemId' | 'itemName' | 'unitNo' | 'isLate' | 'blocks' | 'dueAt' | 'household'
  >[];
  readonly units: readonly Pick<
    Desk['units'][number],
    'id' | 'itemId' | 'itemName' | 'unitNo' | 'condition' | 'dueBackAt' | 'missing' | 'blockers'
  >[];
};

const RANK: readonly KeeperStep['kind'][] = [
  'late-blocking',
  'late',
  'broken',
  'dirty',
  'part-missing',
  'service-due',
];

/**
 * What the keeper does next: first what somebody else waits for, then what is late, then what stands here and can't be
 * lent. Each piece once, under what comes first; of one kind the earliest due, then by name.
 */
export function keeperSteps({ out, units }: Known): KeeperStep[] {
  const late = out
    .filter(({ isLate }) => isLate)
    .toSorted((a, b) => a.dueAt.localeCompare(b.dueAt))
    .map(
      (loan): KeeperStep => ({
        kind: loan.blocks ? 'late-blocking' : 'late',
        key: loan.id,
        name: `${loan.itemName} ${loan.unitNo}`,
        itemId: loan.itemId,
        loanId: loan.id,
        who: loan.household.name,
      }),
    );
  const here = units
    .filter(({ dueBackAt }) => dueBackAt === null)
    .flatMap((unit): KeeperStep[] => {
      const kind = needOf(unit);
      if (kind === null) return [];
      const name = `${unit.itemName} ${unit.unitNo}`;
      return [{ kind, key: unit.id, name, itemId: unit.itemId, loanId: null, who: '' }];
    })
    .toSorted((a, b) => a.name.localeCompare(b.name));
  return [...late, ...here].toSorted((a, b) => RANK.indexOf(a.kind) - RANK.indexOf(b.kind));
}

/** A part is a part here, whether the piece runs without it or not. */
function needOf({ condition, missing, blockers }: Known['units'][number]): KeeperStep['kind'] | null {
  const need = needOfPiece({ condition, missing, isServiceDue: blockers.includes('service-due') });
  return need === 'critical-part-missing' ? 'part-missing' : need;
}
