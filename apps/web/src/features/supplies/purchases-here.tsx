import { usePurchases } from './use-purchases.ts';
import { useSuppliesText } from './words.ts';

/** What was bought and the book has not taken, beside the list in the shop. */
export function PurchasesHere() {
  const t = useSuppliesText();
  const { waiting, again, drop } = usePurchases();
  return waiting.map(({ id, refusal }) => (
    <p key={id} className="said" role="status">
      {refusal ?? t.waits}{' '}
      {refusal === null ? null : (
        <>
          <button type="button" className="btn quiet" onClick={() => again(id)}>
            {t.sendAgain}
          </button>{' '}
          <button type="button" className="btn quiet" onClick={() => drop(id)}>
            {t.throwAway}
          </button>
        </>
      )}
    </p>
  ));
}
