import { spellCode } from '@sheafbook/units';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import type { Queued, Rotation } from './queries.ts';
import { TakenSaid } from './taken-said.tsx';
import { useTaking } from './use-taking.ts';
import { useRotationText } from './words.ts';

const SHOWN = 10;

type Props = Pick<Rotation, 'queued' | 'queue' | 'leaveShut'> & {
  readonly isWhole: boolean;
  readonly onWhole: () => void;
};

/** The first ten, or all when asked for, each with one tap to the kitchen, and the last taking to be undone. */
export function EatNext({ queued, queue, leaveShut, isWhole, onWhole }: Props) {
  const words = useRotationText();
  const { storehouse, format } = useHouse();
  const kitchen = useTaking();
  const { taking } = kitchen;
  const shut = queue.filter(({ container }) => container !== null);
  const next = isWhole ? shut : shut.slice(0, SHOWN);
  const nameOf = ({ food }: Pick<Queued, 'food'>) => nameIn(format.language, food);
  return (
    <NextStep title={words.eatNext}>
      <TakenSaid {...kitchen} />
      {next.length === 0 ? <p>{words.nothingWords}</p> : null}
      <Searched
        items={next}
        wordsOf={(row) => [nameOf(row), row.container?.code ?? '', row.place?.name ?? ''].join(' ')}
      >
        {(shown) => (
          <ol className="list eat-next">
            {shown.map(({ container, food, place, grams, isOpen, daysLeft, pastDays, atRiskGrams }) =>
              container === null ? null : (
                <li key={container.id}>
                  <Link to="/s/$storehouse/shelf/$container" params={{ storehouse, container: container.id }}>
                    <span>
                      <b>{nameOf({ food })}</b> <span className="code">{spellCode(container.code)}</span>
                      <br />
                      <span className="soft">
                        {[
                          format.mass(grams),
                          place?.name ?? words.noPlace,
                          isOpen ? words.open : null,
                          daysLeft === null ? words.untold : words.keeps(daysLeft, pastDays),
                          atRiskGrams > 0 ? words.tooMuch(format.mass(atRiskGrams)) : null,
                        ]
                          .filter(Boolean)
                          .join(' · ')}
                      </span>
                    </span>
                  </Link>
                  <button
                    type="button"
                    className="btn"
                    disabled={taking.isPending}
                    aria-label={words.takeOne(spellCode(container.code))}
                    onClick={() => taking.mutate(container.id)}
                  >
                    {words.take}
                  </button>
                </li>
              ),
            )}
          </ol>
        )}
      </Searched>
      {isWhole || queued <= next.length ? null : (
        <div className="actions">
          <button type="button" className="btn" onClick={onWhole}>
            {words.wholeQueue(format.count(queued))}
          </button>
        </div>
      )}
      <LeaveShut leaveShut={leaveShut} />
    </NextStep>
  );
}

/** Good cans that are only old stay shut; one line a food says why. */
function LeaveShut({ leaveShut }: Pick<Rotation, 'leaveShut'>) {
  const words = useRotationText();
  const { format } = useHouse();
  const foods = [...new Map(leaveShut.map((one) => [one.container.food.code, one])).values()];
  if (foods.length === 0) return null;
  return (
    <section>
      <h2>{words.leaveShut}</h2>
      <ul>
        {foods.map(({ container: { food }, because, costsDays, inPlaceOf }) => {
          const name = nameIn(format.language, food);
          const count = leaveShut.filter((one) => one.container.food.code === food.code).length;
          const instead = inPlaceOf.container ? spellCode(inPlaceOf.container.code) : words.theKitchen;
          return (
            <li key={food.code}>
              {because === 'one-is-open'
                ? words.oneIsOpen(name, count, instead)
                : words.olderButKeeps(name, count, instead)}{' '}
              {words.opensCosts(costsDays)}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
