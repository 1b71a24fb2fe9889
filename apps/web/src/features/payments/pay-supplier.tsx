import { api } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { type PostBody, PostForm } from '../books/post-form.tsx';
import { useBooksText } from '../books/words.ts';
import type { SupplierStanding } from './queries.ts';
import { tillMoneyOf, usePaymentFields } from './sent.ts';
import { usePaymentsText } from './words.ts';

const pay = api.storehouses[':storehouse']['supplier-payments'];

/** Pays one supplier what it is owed, or a part of it. */
export function PayOne({ supplier }: { supplier: SupplierStanding }) {
  const words = usePaymentsText();
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const { amount, day, note, till } = usePaymentFields();
  const { supplierId, owedMinorUnits } = supplier;
  return (
    <PostForm
      name={`pay-supplier.${supplierId}`}
      summary={words.pay(supplier.supplier)}
      button={t.post}
      fields={[{ ...amount, start: format.money(owedMinorUnits) }, till(words.goesBy), day, note]}
      sentence={(_, money) => words.paySentence(money, supplier.supplier)}
      send={(body, headers) =>
        pay.$post({ param: { storehouse }, json: { supplierId, ...tillMoneyOf(body) } }, { headers })
      }
    />
  );
}

/** Pays whichever supplier or carrier, also one whose bill is still to come. */
export function PayAny({ suppliers }: { suppliers: readonly SupplierStanding[] }) {
  const words = usePaymentsText();
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const { amount, day, note, till } = usePaymentFields();
  if (suppliers.length === 0) return <p className="soft">{words.noSuppliers}</p>;
  const nameOf = new Map(suppliers.map(({ supplierId, supplier }) => [supplierId, supplier]));
  const sent = (body: PostBody) => ({
    ...tillMoneyOf(body),
    supplierId: String(body.supplierId),
    isPrepayment: body.isFor === 'later',
  });
  return (
    <PostForm
      name="pay-supplier"
      summary={words.paySupplier}
      button={t.post}
      fields={[
        {
          name: 'supplierId',
          label: words.supplier,
          kind: 'choice',
          options: suppliers.map(({ supplierId, supplier, owedMinorUnits }) => ({
            value: supplierId,
            name: owedMinorUnits > 0 ? words.isOwed(supplier, format.money(owedMinorUnits)) : supplier,
          })),
        },
        amount,
        {
          name: 'isFor',
          label: words.isFor,
          kind: 'choice',
          options: [
            { value: 'bill', name: words.forBill },
            { value: 'later', name: words.forLater },
          ],
        },
        till(words.goesBy),
        day,
        note,
      ]}
      sentence={(values, money) => words.paySentence(money, nameOf.get(values.supplierId ?? '') ?? '…')}
      send={(body, headers) => pay.$post({ param: { storehouse }, json: sent(body) }, { headers })}
    />
  );
}
