import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { askOnce } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { OF_STOCK } from '../shelf/queries.ts';
import { inside, type Kitchen } from './queries.ts';
import { useRotationText } from './words.ts';

/** What lies open in the kitchen, since when, and one tap when it is eaten. */
export function InKitchen({ lots }: Kitchen) {
  const words = useRotationText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const eating = useMutation({
    mutationFn: ({ lotId, grams }: Kitchen['lots'][number]) => {
      const json = { lotId, grams, to: 'eaten' as const, note: '' };
      return askOnce(`kitchen-eaten.${lotId}`, json, (headers) =>
        inside.kitchen.uses.$post({ param: { storehouse }, json }, { headers }),
      );
    },
    onSuccess: () => Promise.all(OF_STOCK.map((key) => queries.invalidateQueries({ queryKey: [key] }))),
  });
  if (lots.length === 0) return null;
  return (
    <section>
      <h2>{words.inKitchen}</h2>
      <ProblemSaid error={eating.error} />
      <ul className="list eat-next">
        {lots.map((lot) => {
          const name = nameIn(format.language, lot.food);
          return (
            <li key={lot.lotId}>
              <p>
                <b>{name}</b>
                <br />
                <span className="soft">
                  {format.mass(lot.grams)}
                  {lot.sinceOn === null ? null : ` · ${words.since(format.day(lot.sinceOn))}`}
                </span>
              </p>
              {lot.holdId === null ? (
                <button
                  type="button"
                  className="btn"
                  disabled={eating.isPending}
                  aria-label={words.eatenOne(name)}
                  onClick={() => eating.mutate(lot)}
                >
                  {words.eaten}
                </button>
              ) : (
                <Link to="/s/$storehouse/holds/$hold" params={{ storehouse, hold: lot.holdId }}>
                  {words.heldInKitchen}
                </Link>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
