import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { foodNameOf } from '../buy/food-name.ts';
import { PriceForm } from './price-form.tsx';
import {
  inside,
  readsSavings,
  type SavingsOfYear,
  type ShelfPrice,
  savingsQuery,
  shelfPricesQuery,
} from './queries.ts';
import { useSavingsText } from './words.ts';

/** What a group saved against shelf price this year, by the prices that its coordinator noted. */
export function Savings() {
  const words = useSavingsText();
  const house = useHouse();
  useTitle(words.title);
  return (
    <>
      <Link className="who" to="/s/$storehouse/buys" params={{ storehouse: house.storehouse }}>
        <BackIcon />
        {words.buys}
      </Link>
      {readsSavings(house) ? <Book /> : <h1>{words.notYours}</h1>}
    </>
  );
}

function Book() {
  const words = useSavingsText();
  const { storehouse, duties, format } = useHouse();
  const reading = joined(useQuery(savingsQuery({ storehouse })), useQuery(shelfPricesQuery({ storehouse })));
  const mayNote = duties.includes('coordinator');
  return (
    <Loaded isPage reading={reading}>
      {([year, prices]) => (
        <>
          <Stands year={year} />
          <p className="soft">{words.period(format.day(year.fromOn), format.day(year.throughOn))}</p>
          <p>{words.howReckoned}</p>
          <Foods foods={year.foods} />
          {mayNote ? <PriceForm /> : null}
          <Prices prices={prices} mayTakeBack={mayNote} />
        </>
      )}
    </Loaded>
  );
}

/** The answer in one sentence: how much, on how much of the food, or that nobody knows. */
function Stands({ year }: { year: SavingsOfYear }) {
  const words = useSavingsText();
  const { format } = useHouse();
  const { savedMinorUnits, pricedGrams, grams } = year;
  if (grams === 0) return <h1>{words.nothingBought}</h1>;
  if (savedMinorUnits === null) return <h1>{words.unknown}</h1>;
  const money = `${format.money(Math.abs(savedMinorUnits))} ${format.currency}`;
  return (
    <>
      <h1>{savedMinorUnits < 0 ? words.dearer(money) : words.saved(money)}</h1>
      <p>{words.onPart(format.mass(pricedGrams), format.mass(grams))}</p>
    </>
  );
}

function Foods({ foods }: { foods: SavingsOfYear['foods'] }) {
  const words = useSavingsText();
  const { format } = useHouse();
  if (foods.length === 0) return null;
  const said = (minorUnits: number | null) =>
    minorUnits === null ? words.noPrice : format.money(minorUnits);
  return (
    <section className="stack">
      <h2>{words.byFood}</h2>
      <Searched items={foods} wordsOf={(row) => foodNameOf(row, format.language)}>
        {(shown) => (
          <Ledger
            caption={words.byFood}
            columns={[
              { name: words.food },
              { name: words.landed, isNumber: true },
              { name: words.shelf, isNumber: true },
              { name: words.savedShort, isNumber: true },
            ]}
            rows={shown.map((row) => ({
              key: row.food.id,
              cells: [
                <span key="food">
                  {foodNameOf(row, format.language)}
                  <span className="soft block">{format.mass(row.grams)}</span>
                </span>,
                format.money(row.landedMinorUnits),
                said(row.shelfMinorUnits),
                row.savedMinorUnits === null ? '' : format.money(row.savedMinorUnits),
              ],
            }))}
          />
        )}
      </Searched>
    </section>
  );
}

function Prices({ prices, mayTakeBack }: { prices: readonly ShelfPrice[]; mayTakeBack: boolean }) {
  const words = useSavingsText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const takingBack = useMutation({
    mutationFn: (shelfPrice: string) =>
      ask(inside['shelf-prices'][':shelfPrice'].$delete({ param: { storehouse, shelfPrice } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['savings'] }),
  });
  return (
    <section className="stack">
      <h2>{words.noted}</h2>
      {prices.length === 0 ? <p className="soft">{words.noneNoted}</p> : null}
      <Searched
        items={prices}
        wordsOf={(price) =>
          `${foodNameOf(price, format.language)} ${price.seenWhere} ${format.day(price.seenOn)}`
        }
      >
        {(shown) => (
          <ul className="list">
            {shown.map((price) => {
              const name = foodNameOf(price, format.language);
              return (
                <li key={price.id} className="row">
                  <span>
                    <b>{name}</b>
                    <span className="soft block">
                      {[
                        words.priceOf(
                          `${format.money(price.minorUnits)} ${format.currency}`,
                          format.mass(Math.round(price.milligrams / 1000)),
                        ),
                        format.day(price.seenOn),
                        price.seenWhere,
                        price.notedBy,
                      ]
                        .filter(Boolean)
                        .join(' · ')}
                    </span>
                  </span>
                  {mayTakeBack ? (
                    <button
                      type="button"
                      className="btn quiet"
                      disabled={takingBack.isPending}
                      aria-label={words.takeBackOf(name, format.day(price.seenOn))}
                      onClick={() => takingBack.mutate(price.id)}
                    >
                      {words.takeBack}
                    </button>
                  ) : null}
                </li>
              );
            })}
          </ul>
        )}
      </Searched>
      <ProblemSaid error={takingBack.error} />
    </section>
  );
}
