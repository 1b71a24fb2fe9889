import { Link } from '@tanstack/react-router';
import { useSettlementText } from './words.ts';

/** Where whoever leads or pays finds what a day needs and what it cost. */
export function CostLinks({
  params,
  stage,
}: {
  params: { storehouse: string; session: string };
  stage: string;
}) {
  const t = useSettlementText();
  const isOver = stage === 'signed' || stage === 'settled';
  return (
    <div className="actions">
      {isOver ? (
        <Link
          className={stage === 'signed' ? 'btn go' : 'btn'}
          to="/s/$storehouse/packing/$session/settlement"
          params={params}
        >
          {t.toSettlement}
        </Link>
      ) : (
        <Link className="btn" to="/s/$storehouse/packing/$session/shopping" params={params}>
          {t.toShopping}
        </Link>
      )}
      <Link className="btn quiet" to="/s/$storehouse/packing/supplies" params={params}>
        {t.toShelf}
      </Link>
    </div>
  );
}
