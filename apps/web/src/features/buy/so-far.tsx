import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { api, ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Figures } from '../../ui/pieces.tsx';
import { buyClaimsQuery } from '../claim/queries.ts';
import { useRunText } from './words.ts';

type ClaimsProps = { buy: { readonly id: string; readonly name: string } };

/** What was short or damaged in the last landing, and what became of each claim. */
export function LastClaims({ buy }: ClaimsProps) {
  const words = useRunText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(buyClaimsQuery({ storehouse, buy: buy.id }));
  return (
    <section className="stack">
      <h2>{words.claimsOf(buy.name)}</h2>
      <Loaded reading={reading}>
        {({ claims }) =>
          claims.length === 0 ? (
            <p className="soft">{words.noClaims}</p>
          ) : (
            <ul className="list">
              {claims.map(({ id, because, state, minorUnits, creditedMinorUnits }) => (
                <li key={id}>
                  <Link to="/s/$storehouse/books/claims/$claim" params={{ storehouse, claim: id }}>
                    <span>
                      {because}
                      <span className="soft block">
                        {state === 'open'
                          ? words.claimOpen(format.money(minorUnits))
                          : words.claimed(format.money(minorUnits), format.money(creditedMinorUnits))}
                      </span>
                    </span>
                  </Link>
                </li>
              ))}
            </ul>
          )
        }
      </Loaded>
    </section>
  );
}

const fairness = api.storehouses[':storehouse']['split-fairness'];

/** How far apart households stand in what they lost beyond their parts. */
export function FairSoFar() {
  const t = useText();
  const words = useRunText();
  const { storehouse, format } = useHouse();
  const reading = useQuery({
    queryKey: ['splits', storehouse, 'fairness'],
    queryFn: () => ask(fairness.$get({ param: { storehouse } })),
  });
  return (
    <section className="stack">
      <h2>{words.fairTitle}</h2>
      <Loaded reading={reading}>
        {({ groups }) =>
          groups.length === 0 ? (
            <p className="soft">{words.noSplits}</p>
          ) : (
            <>
              <Figures
                rows={groups.map(({ foodGroup, leastGrams, mostGrams }) => ({
                  name: t.groups[foodGroup] ?? foodGroup,
                  value: format.mass(mostGrams - leastGrams),
                }))}
              />
              <p className="soft">{words.fairWords}</p>
            </>
          )
        }
      </Loaded>
    </section>
  );
}
