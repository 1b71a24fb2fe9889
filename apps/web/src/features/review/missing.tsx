import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import { useReviewText } from './words.ts';

type Missing = {
  readonly code: string;
  readonly isBlocking: boolean;
  readonly count: number;
  readonly minorUnits: number | null;
  readonly onDay: string | null;
  readonly buys: readonly { readonly buyId: string; readonly name: string }[];
};

/** Where each of them is settled; the buys name their own page. */
const PLACES = {
  'claims-open': '/s/$storehouse/books/claims',
  'deposits-held': '/s/$storehouse/books/deposits',
  'bank-differs': '/s/$storehouse/books/bank',
  'bank-not-told': '/s/$storehouse/books/bank',
  'tin-not-counted': '/s/$storehouse/books/tin',
  'stock-not-counted': '/s/$storehouse/books/counts',
  'stock-differs': '/s/$storehouse/books/counts',
} as const;

const placeOf = (code: string) => (code in PLACES ? PLACES[code as keyof typeof PLACES] : undefined);

/** What a close would leave open: what blocks it first, each with the page where it is settled. */
export function MissingAtClose({ missing }: { missing: readonly Missing[] }) {
  const t = useReviewText();
  if (missing.length === 0) return <State kind="well" word={t.nothingOpen} />;
  return (
    <ul className="list">
      {missing.map((row) => (
        <li key={row.code} className="row">
          <State
            kind={row.isBlocking ? 'wrong' : 'watch'}
            word={row.isBlocking ? t.blocksClose : t.staysOpen}
          />
          <Said row={row} />
        </li>
      ))}
    </ul>
  );
}

function Said({ row }: { row: Missing }) {
  const t = useReviewText();
  const { storehouse, format } = useHouse();
  const place = placeOf(row.code);
  const say = t.missingAtClose[row.code] ?? ((count: number) => `${row.code}: ${count}`);
  const words = say(
    row.count,
    format.money(row.minorUnits ?? 0),
    row.onDay === null ? null : format.day(row.onDay),
  );
  return (
    <span>
      {place ? (
        <Link to={place} params={{ storehouse }}>
          {words}
        </Link>
      ) : (
        words
      )}
      {row.buys.map(({ buyId, name }, at) => (
        <span key={buyId}>
          {at === 0 ? ' ' : ', '}
          {row.code === 'buys-not-clear' ? (
            <Link to="/s/$storehouse/books/clearing/$buy" params={{ storehouse, buy: buyId }}>
              {name}
            </Link>
          ) : (
            <Link to="/s/$storehouse/buys/$buy" params={{ storehouse, buy: buyId }}>
              {name}
            </Link>
          )}
        </span>
      ))}
    </span>
  );
}
