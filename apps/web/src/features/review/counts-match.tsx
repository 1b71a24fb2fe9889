import { sumOf } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { commonStockQuery } from './queries.ts';
import { useReviewText } from './words.ts';

/** Whether what was counted of common stock is what the book says, and what the difference is worth. */
export function CountsMatch() {
  const t = useReviewText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(commonStockQuery({ storehouse }));
  return (
    <section className="stack">
      <h2>{t.countMatches}</h2>
      <Loaded reading={reading}>
        {({ stock }) => {
          const open = stock.filter(({ differenceGrams, isBooked }) => differenceGrams && !isBooked);
          const worth = sumOf(open.map(({ differenceMinorUnits }) => differenceMinorUnits ?? 0));
          const counted = stock.filter(({ countedAt }) => countedAt !== null).length;
          return (
            <p>
              <Link to="/s/$storehouse/books/counts" params={{ storehouse }}>
                {stock.length === 0 ? t.noCommonStock : t.countsTitle(stock.length, open.length)}
              </Link>{' '}
              {stock.length === 0 ? '' : t.countedOf(counted, stock.length)}{' '}
              {open.length === 0 ? '' : t.differenceWorth(`${format.money(worth)} ${format.currency}`)}
            </p>
          );
        }}
      </Loaded>
    </section>
  );
}
