import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { type Agreement, agreementQuery } from '../bank/queries.ts';
import { useStanding } from '../bank/standing.ts';
import { useBankText } from '../bank/words.ts';

/** Whether the bank agrees with the book, in a sentence that opens the bank's own page. */
export function BankAgrees() {
  const words = useBankText();
  const { storehouse } = useHouse();
  const agreement = useQuery(agreementQuery({ storehouse }));
  return (
    <section className="stack">
      <h2>{words.agreement}</h2>
      <Loaded reading={agreement}>{(body) => <Standing body={body} />}</Loaded>
    </section>
  );
}

function Standing({ body }: { body: Agreement }) {
  const { storehouse } = useHouse();
  return (
    <p>
      <Link to="/s/$storehouse/books/bank" params={{ storehouse }}>
        {useStanding(body)}
      </Link>
    </p>
  );
}
