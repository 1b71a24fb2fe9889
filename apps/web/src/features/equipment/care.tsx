import { needOfPiece } from '@sheafbook/booking';
import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useHouse } from '../../ui/house.ts';
import type { Desk } from './queries.ts';
import { UnitState } from './unit-state.tsx';
import { useEquipmentText } from './words.ts';

/** What can’t be lent as it is, what it lacks and what that is worth; then what will want service in the next 60 days. */
export function Care({ desk }: { desk: Desk }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  const needs = desk.units.filter(
    ({ condition, missing, blockers }) =>
      needOfPiece({ condition, missing, isServiceDue: blockers.includes('service-due') }) !== null,
  );
  const ahead = desk.units
    .filter((unit) => unit.condition !== 'retired' && unit.serviceAhead !== null && !needs.includes(unit))
    .toSorted((a, b) => (a.serviceAhead?.onDay ?? '').localeCompare(b.serviceAhead?.onDay ?? ''));
  return (
    <section className="stack">
      <h2>{words.careTitle}</h2>
      {needs.length === 0 ? <p className="soft">{words.noCare}</p> : null}
      <ul className="list">
        {needs.map((unit) => (
          <UnitRow
            key={unit.id}
            unit={unit}
            says={[
              unit.conditionNote,
              ...unit.missing.map(({ name, pieces, valueMinorUnits }) =>
                valueMinorUnits === 0
                  ? words.missing(name, pieces)
                  : `${words.missing(name, pieces)}, ${format.money(pieces * valueMinorUnits)}`,
              ),
            ]
              .filter(Boolean)
              .join(' · ')}
          >
            <UnitState unit={unit.condition === 'ready' ? unit : { ...unit, dueBackAt: null }} />
          </UnitRow>
        ))}
      </ul>
      {ahead.length === 0 ? null : (
        <>
          <h3>{words.serviceAhead}</h3>
          <ul className="list">
            {ahead.map((unit) => (
              <UnitRow
                key={unit.id}
                unit={unit}
                says={
                  unit.serviceAhead?.because === 'uses'
                    ? words.serviceByUses(format.day(unit.serviceAhead.onDay))
                    : words.serviceByDays(format.day(unit.serviceAhead?.onDay ?? ''))
                }
              />
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

type RowProps = { unit: Desk['units'][number]; says: string; children?: ReactNode };

function UnitRow({ unit, says, children }: RowProps) {
  const { storehouse } = useHouse();
  return (
    <li>
      <Link to="/s/$storehouse/equipment/$item" params={{ storehouse, item: unit.itemId }}>
        <span>
          <b>{`${unit.itemName} ${unit.unitNo}`}</b>
          <br />
          <span className="soft">{says}</span>
        </span>
        {children}
      </Link>
    </li>
  );
}
