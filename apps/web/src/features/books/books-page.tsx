import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { useHouse } from '../../ui/house.ts';
import { useTitle } from '../../ui/use-title.ts';
import './books.css';
import { BOOKS_PLACES } from './books-places.ts';
import { useBooksText } from './words.ts';

/** A page of the books: the way to its neighbours, then the page. Whoever may not read the books is told so. */
export function BooksPage({ title, children }: { title: string; children: ReactNode }) {
  const t = useBooksText();
  const house = useHouse();
  useTitle(title);
  const places = BOOKS_PLACES.filter(({ isFor }) => isFor(house));
  if (places.length === 0) return <h1>{t.notForYou}</h1>;
  return (
    <>
      <nav className="books-nav" aria-label={t.books}>
        {places.map(({ to, name }) => (
          <Link
            key={to}
            to={to}
            params={{ storehouse: house.storehouse }}
            activeOptions={{ exact: to === '/s/$storehouse/books' }}
          >
            {t.places[name]}
          </Link>
        ))}
      </nav>
      {children}
    </>
  );
}
