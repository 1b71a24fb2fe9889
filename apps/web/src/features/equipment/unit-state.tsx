import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import type { Unit } from './queries.ts';
import { useEquipmentText } from './words.ts';

/** Whether a piece is here, out, or can't be lent, and why. */
export function UnitState({ unit }: { unit: Pick<Unit, 'blockers' | 'condition' | 'dueBackAt'> }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  const [blocker] = unit.blockers;
  if (unit.dueBackAt !== null) {
    const when = format.instant(unit.dueBackAt);
    return Date.parse(unit.dueBackAt) < Date.now() ? (
      <State kind="wrong" word={words.wasDueBack(when)} />
    ) : (
      <State kind="watch" word={words.outUntil(when)} />
    );
  }
  if (blocker !== undefined) return <State kind="wrong" word={words.blockers[blocker] ?? blocker} />;
  return unit.condition === 'ready' ? (
    <State kind="well" word={words.free} />
  ) : (
    <State kind="watch" word={words.states[unit.condition] ?? unit.condition} />
  );
}
