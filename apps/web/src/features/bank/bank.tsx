import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { NextStep } from '../../ui/pieces.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { AgreementTable } from './agreement.tsx';
import { Lines } from './lines.tsx';
import { Forecast } from './pay.tsx';
import { type Agreement, agreementQuery } from './queries.ts';
import { useStanding } from './standing.ts';
import { useBankText } from './words.ts';
import './bank.css';

/** The bank's lines beside the book: what waits for its place, and whether the two agree. */
export function Bank() {
  const words = useBankText();
  const { storehouse } = useHouse();
  const agreement = useQuery(agreementQuery({ storehouse }));
  return (
    <BooksPage title={words.bank}>
      <Loaded isPage reading={agreement}>
        {(body) => <Sheet body={body} />}
      </Loaded>
    </BooksPage>
  );
}

function Sheet({ body }: { body: Agreement }) {
  const words = useBankText();
  const { storehouse, duties } = useHouse();
  const isTreasurer = duties.includes('treasurer');
  const { open, done, setAside } = body.counts;
  const isEmpty = open + done + setAside === 0;
  const take = (
    <Link className={isEmpty ? 'btn go' : 'btn'} to="/s/$storehouse/books/bank/file" params={{ storehouse }}>
      {words.takeFile}
    </Link>
  );
  return (
    <>
      <h1>{useStanding(body)}</h1>
      {isEmpty && isTreasurer ? (
        <NextStep>
          <p>{words.nothingYetWords}</p>
          <div className="actions">{take}</div>
        </NextStep>
      ) : null}
      <div className="cols">
        <div className="stack">
          {isEmpty ? <p className="soft">{words.noneOpen}</p> : <Lines action={isTreasurer ? take : null} />}
        </div>
        <div className="stack">
          <AgreementTable body={body} />
          <Forecast />
        </div>
      </div>
    </>
  );
}
