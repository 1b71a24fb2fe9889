import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Figures } from '../../ui/pieces.tsx';
import { type Fund, fundQuery } from './queries.ts';
import { useFundText } from './words.ts';

/** What is in the fund, what of it is promised, and what is free. */
export function FundFigures({ fund }: { fund: Fund }) {
  const words = useFundText();
  const { format } = useHouse();
  const unit = fund.currency;
  return (
    <Figures
      rows={[
        { name: words.inFund, value: format.money(fund.heldMinorUnits), unit },
        { name: words.thisYear, value: format.money(fund.yearMinorUnits), unit },
        { name: words.promised, value: format.money(fund.promisedMinorUnits), unit },
        { name: words.free, value: format.money(fund.freeMinorUnits), unit },
      ]}
    />
  );
}

/** The same on a duty's first page, with the way to what is promised. */
export function FundStand() {
  const words = useFundText();
  const { storehouse } = useHouse();
  return (
    <section className="stack" aria-label={words.fund}>
      <h2>{words.fund}</h2>
      <Loaded reading={useQuery(fundQuery({ storehouse }))}>{(fund) => <FundFigures fund={fund} />}</Loaded>
      <div className="actions">
        <Link className="btn quiet" to="/s/$storehouse/books/fund" params={{ storehouse }}>
          {words.toPage}
        </Link>
      </div>
    </section>
  );
}
