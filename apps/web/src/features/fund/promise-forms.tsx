import { useHouse } from '../../ui/house.ts';
import { PostForm } from '../books/post-form.tsx';
import { useBooksText } from '../books/words.ts';
import { tillMoneyOf, usePaymentFields } from '../payments/sent.ts';
import { usePaymentsText } from '../payments/words.ts';
import { type FundPromise, inside } from './queries.ts';
import { useFundText } from './words.ts';

type Named = { readonly id: string; readonly name: string };
type OfPromise = { readonly promise: FundPromise };

/** Promises an amount for a purpose; beyond what is free only with a reason. */
export function MakePromise({ items }: { items: readonly Named[] }) {
  const words = useFundText();
  const { storehouse } = useHouse();
  const { amount } = usePaymentFields();
  const things = items.map(({ id, name }) => ({ value: id, name }));
  return (
    <PostForm
      name="fund-promise"
      summary={words.promise}
      button={words.promise}
      fields={[
        { name: 'purpose', label: words.purpose, kind: 'text' },
        amount,
        {
          name: 'itemId',
          label: words.thing,
          kind: 'choice',
          options: [{ value: '', name: words.noThing }, ...things],
          isOptional: true,
        },
        { name: 'overrideReason', label: words.override, kind: 'text', isOptional: true },
      ]}
      sentence={(_, money) => words.promiseSentence(money)}
      send={({ purpose, minorUnits, itemId, overrideReason }, headers) =>
        inside['fund-promises'].$post(
          {
            param: { storehouse },
            json: {
              ...{ purpose: String(purpose), minorUnits: Number(minorUnits) },
              ...(itemId === undefined ? {} : { itemId: String(itemId) }),
              ...(overrideReason === undefined ? {} : { overrideReason: String(overrideReason) }),
            },
          },
          { headers },
        )
      }
    />
  );
}

export function PayPromise({ promise }: OfPromise) {
  const words = useFundText();
  const t = useBooksText();
  const payments = usePaymentsText();
  const { storehouse, format } = useHouse();
  const { amount, till, day, note } = usePaymentFields();
  const param = { storehouse, fundPromise: promise.id };
  return (
    <PostForm
      name={`fund-payment.${promise.id}`}
      summary={words.pay}
      button={t.post}
      fields={[{ ...amount, start: format.money(promise.minorUnits) }, till(payments.goesBy), day, note]}
      sentence={(_, money) => payments.spendSentence(money)}
      send={(body, headers) =>
        inside['fund-promises'][':fundPromise'].payment.$post({ param, json: tillMoneyOf(body) }, { headers })
      }
    />
  );
}

/** For what a line of the bank became, or a debt that was written off. */
export function FulfilPromise({ promise }: OfPromise) {
  const words = useFundText();
  const t = useBooksText();
  const { storehouse } = useHouse();
  const param = { storehouse, fundPromise: promise.id };
  return (
    <PostForm
      name={`fund-fulfilment.${promise.id}`}
      summary={words.fulfil}
      button={t.post}
      fields={[{ name: 'entryNo', label: words.entryNo, kind: 'text' }]}
      sentence={() => words.fulfilSentence}
      send={({ entryNo }, headers) =>
        inside['fund-promises'][':fundPromise'].fulfilment.$post(
          { param, json: { entryNo: Number(entryNo) } },
          { headers },
        )
      }
    />
  );
}

export function WithdrawPromise({ promise }: OfPromise) {
  const words = useFundText();
  const { storehouse } = useHouse();
  const { reason } = usePaymentFields();
  const param = { storehouse, fundPromise: promise.id };
  return (
    <PostForm
      name={`fund-withdrawal.${promise.id}`}
      summary={words.withdraw}
      button={words.withdraw}
      fields={[reason]}
      sentence={() => words.withdrawSentence}
      send={(body, headers) =>
        inside['fund-promises'][':fundPromise'].withdrawal.$post(
          { param, json: { reason: String(body.reason) } },
          { headers },
        )
      }
    />
  );
}
