import { Link, useRouterState } from '@tanstack/react-router';
import { type ReactNode, useEffect, useRef } from 'react';
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
  const here = useRouterState({ select: ({ location }) => location.pathname });
  const row = useRef<HTMLElement>(null);
  // On a phone the row moves sideways: where one is stands in its middle.
  useEffect(() => {
    const current = row.current?.querySelector<HTMLElement>(`a[href="${here}"]`);
    if (row.current && current)
      row.current.scrollLeft = current.offsetLeft - (row.current.clientWidth - current.offsetWidth) / 2;
  }, [here]);
  if (places.length === 0) return <h1>{t.notForYou}</h1>;
  const nav = (
    <nav ref={row} className="books-nav" aria-label={t.books}>
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
  );
  if (!placeAt(here, house.storehouse).isFor(house))
    return (
      <>
        <h1>{t.notForYou}</h1>
        <p>{t.yoursHere}</p>
        {nav}
      </>
    );
  return (
    <>
      {nav}
      {children}
    </>
  );
}

/** The place that an address lies in: the longest one that it begins with; the desk for what has none of its own. */
function placeAt(path: string, storehouse: string) {
  const [desk, ...others] = BOOKS_PLACES;
  return others.find(({ to }) => path.startsWith(to.replace('$storehouse', storehouse))) ?? desk;
}
