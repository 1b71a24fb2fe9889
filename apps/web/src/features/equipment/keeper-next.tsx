import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { keeperSteps } from './keeper-next.ts';
import type { Desk } from './queries.ts';
import { useEquipmentText } from './words.ts';

/** So many stand at the top; the lists beneath have all of them. */
const MOST_SHOWN = 5;

/** What the keeper does next, in the order in which somebody waits for it. */
export function KeeperNext({ desk }: { desk: Desk }) {
  const words = useEquipmentText();
  const { storehouse } = useHouse();
  const steps = keeperSteps(desk);
  if (steps.length === 0) return null;
  return (
    <NextStep title={words.doNext}>
      <ol className="list">
        {steps.slice(0, MOST_SHOWN).map(({ kind, key, name, itemId, loanId, who }) => (
          <li key={key}>
            {loanId === null ? (
              <Link to="/s/$storehouse/equipment/$item" params={{ storehouse, item: itemId }}>
                {words.keeperSteps[kind](name, who)}
              </Link>
            ) : (
              <Link
                to="/s/$storehouse/equipment/$item/loans/$loan"
                params={{ storehouse, item: itemId, loan: loanId }}
              >
                {words.keeperSteps[kind](name, who)}
              </Link>
            )}
          </li>
        ))}
      </ol>
      {steps.length > MOST_SHOWN ? (
        <p className="soft">{words.moreSteps(steps.length - MOST_SHOWN)}</p>
      ) : null}
    </NextStep>
  );
}
