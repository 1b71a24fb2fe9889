import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { buyQuery } from '../../api/queries.ts';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Searched } from '../../ui/searched.tsx';
import { ChargeTable } from '../closing/charge-table.tsx';
import { ownersOf } from '../closing/cost-columns.ts';
import { chargesQuery } from '../closing/queries.ts';
import { useClosingText } from '../closing/words.ts';
import { useBooksText } from './words.ts';

/** What each household's charge of a buy is made of, cost by cost; a name opens the statement that tells it. */
export function ChargesOf({ buy }: { buy: { readonly id: string; readonly name: string } }) {
  const t = useBooksText();
  const closing = useClosingText();
  const { storehouse } = useHouse();
  const param = { storehouse, buy: buy.id };
  const reading = joined(useQuery(buyQuery(param)), useQuery(chargesQuery(param)));
  return (
    <section className="stack">
      <h2>{t.chargesOf(buy.name)}</h2>
      <Loaded reading={reading}>
        {([page, charges]) => (
          <>
            <Searched
              items={ownersOf(charges.lines)}
              wordsOf={({ name, isCommonStock }) => (isCommonStock ? closing.commonStock : name)}
              find={t.findHousehold}
              none={t.noSuchHousehold}
            >
              {(owners) => (
                <ChargeTable
                  {...{ page, charges, owners }}
                  nameOf={({ ownerId, name }) => (
                    <Link
                      to="/s/$storehouse/books/statements/$household"
                      params={{ storehouse, household: ownerId }}
                    >
                      {name}
                    </Link>
                  )}
                />
              )}
            </Searched>
            <p className="soft">{closing.tieBreak}</p>
          </>
        )}
      </Loaded>
    </section>
  );
}
