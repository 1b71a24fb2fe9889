import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { NextStep, State } from '../../ui/pieces.tsx';
import { LooseLink } from './loose-link.tsx';
import { pageFor } from './run-links.ts';
import { type NextItem, nextStepsQuery } from './run-queries.ts';
import { useRunText } from './words.ts';
import './run.css';

/** What is asked of a duty; what a household itself owes or may fetch stands on its own page. */
const OF_DUTIES = [
  ...['move-buy', 'quote-lapses', 'claim-window', 'hand-over', 'hold-open', 'seam-check', 'suspects-open'],
  ...['unreached', 'bill-due', 'duty-ends'],
];

/** What waits for somebody with a duty over all buys, the most urgent first; and a new buy to plan. */
export function NeedsMe() {
  const words = useRunText();
  const { storehouse, duties } = useHouse();
  const steps = useQuery(nextStepsQuery({ storehouse }));
  const isCoordinator = duties.includes('coordinator');
  return (
    <Loaded reading={steps}>
      {({ items }) => {
        const mine = items.filter(({ kind, isOfStore }) => isOfStore || OF_DUTIES.includes(kind));
        return (
          <NextStep title={words.needsMe}>
            {mine.length === 0 ? (
              <p>{words.nothingNeedsMe}</p>
            ) : (
              <ul className="todo">
                {mine.map((item) => (
                  <Item key={`${item.kind} ${item.path} ${item.words}`} item={item} />
                ))}
              </ul>
            )}
            {isCoordinator ? (
              <div className="actions">
                <Link className="btn" to="/s/$storehouse/buys/new" params={{ storehouse }}>
                  {words.planOne}
                </Link>
              </div>
            ) : null}
          </NextStep>
        );
      }}
    </Loaded>
  );
}

function Item({ item }: { item: NextItem }) {
  const words = useRunText();
  const { format, duties } = useHouse();
  const to = pageFor(item.path, { isTreasurer: duties.includes('treasurer') });
  const due = item.dueAt ? format.instant(item.dueAt) : item.dueOn ? format.day(item.dueOn) : null;
  return (
    <li>
      <span>
        {format.sentence(item.words)}
        {due === null ? null : <span className="soft block">{words.byDay(due)}</span>}
        {item.isOverdue ? (
          <span className="block">
            <State kind="wrong" word={words.overdue} />
          </span>
        ) : null}
      </span>
      {to === null ? null : <LooseLink to={to}>{words.see}</LooseLink>}
    </li>
  );
}
