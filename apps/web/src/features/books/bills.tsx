import { sumOf } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { api } from '../../api/client.ts';
import { buyQuery, buysQuery } from '../../api/queries.ts';
import { CsvLink } from '../../ui/csv-link.tsx';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Ledger, State } from '../../ui/pieces.tsx';
import { foodNameOf } from '../buy/food-name.ts';
import { suppliersQuery } from '../buy/run-queries.ts';
import { BooksPage } from './books-page.tsx';
import { minorUnitsOf, type PostBody, type PostField, PostForm } from './post-form.tsx';
import { billsQuery } from './queries.ts';
import { isTill, useTills } from './tills.ts';
import { useBooksText } from './words.ts';

const inside = api.storehouses[':storehouse'];

/** What suppliers and carriers billed each buy, a further bill, and paying them. */
export function Bills() {
  const t = useBooksText();
  const { storehouse } = useHouse();
  const all = useQuery(buysQuery({ storehouse }));
  const suppliers = useQuery(suppliersQuery({ storehouse }));
  const [chosen, setChosen] = useState<string | null>(null);
  return (
    <BooksPage title={t.places.bills ?? ''}>
      <Loaded isPage reading={joined(all, suppliers)}>
        {([{ buys }, known]) => {
          const billed = buys.filter(({ stage }) => !['planning', 'gathering', 'fixed'].includes(stage));
          const buy = chosen ?? billed[0]?.id;
          if (buy === undefined) return <h1>{t.noBills}</h1>;
          return (
            <>
              <h1>{t.billsTitle(billed.find(({ id }) => id === buy)?.name ?? '')}</h1>
              <Choice
                label={t.buy}
                value={buy}
                options={billed.map(({ id, name }) => ({ value: id, name }))}
                onChange={setChosen}
              />
              <BillsOfBuy key={buy} buy={buy} suppliers={known} />
            </>
          );
        }}
      </Loaded>
    </BooksPage>
  );
}

type Supplier = { readonly id: string; readonly name: string };

function BillsOfBuy({ buy, suppliers }: { buy: string; suppliers: readonly Supplier[] }) {
  const t = useBooksText();
  const { storehouse, format, duties } = useHouse();
  const reading = useQuery(billsQuery({ storehouse, buy }));
  const nameOf = new Map(suppliers.map(({ id, name }) => [id, name]));
  return (
    <Loaded reading={reading}>
      {({ invoices }) => {
        const standing = invoices.filter(({ voidedAt }) => voidedAt === null);
        const sum = standing.reduce((total, { minorUnits }) => total + minorUnits, 0);
        return (
          <>
            {invoices.length === 0 ? (
              <p>{t.noBills}</p>
            ) : (
              <Ledger
                caption={t.places.bills ?? ''}
                columns={[
                  { name: t.supplier },
                  { name: t.number },
                  { name: t.day },
                  { name: t.dueBy },
                  { name: t.state },
                  { name: t.amount, isNumber: true },
                ]}
                rows={[
                  ...invoices.map((bill) => ({
                    key: bill.id,
                    cells: [
                      nameOf.get(bill.supplierId) ?? '',
                      <Link
                        key="entry"
                        to="/s/$storehouse/books/entries/$entry"
                        params={{ storehouse, entry: bill.entryId }}
                      >
                        {bill.number}
                      </Link>,
                      format.day(bill.onDay),
                      bill.dueOn === null ? '' : format.day(bill.dueOn),
                      bill.voidedAt === null ? '' : <State key="void" kind="watch" word={t.voided} />,
                      format.money(bill.minorUnits),
                    ],
                  })),
                  { key: 'sum', isSum: true, cells: [t.all, '', '', '', '', format.money(sum)] },
                ]}
              />
            )}
            <p>
              <CsvLink list={`buys/${buy}/invoices`}>{t.download}</CsvLink>
            </p>
            {duties.includes('treasurer') ? (
              <>
                <EnterBill buy={buy} suppliers={suppliers} />
                <PaySupplier buy={buy} suppliers={suppliers} />
                {standing.map((bill) => (
                  <VoidBill key={bill.id} bill={bill.id} number={bill.number} />
                ))}
              </>
            ) : null}
          </>
        );
      }}
    </Loaded>
  );
}

type BillLine = {
  kind: 'goods' | 'freight' | 'other';
  buyLineId: string | null;
  minorUnits: number;
};

/** The amounts of a bill by the field they were typed in: a food's goods, freight, or another cost. */
function linesOf(body: PostBody): BillLine[] {
  return Object.entries(body).flatMap(([name, minorUnits]): BillLine[] => {
    if (typeof minorUnits !== 'number') return [];
    const [kind, buyLineId = null] = name.split(' ');
    return kind === 'goods' || kind === 'freight' || kind === 'other'
      ? [{ kind, buyLineId, minorUnits }]
      : [];
  });
}

function EnterBill({ buy, suppliers }: { buy: string; suppliers: readonly Supplier[] }) {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(buyQuery({ storehouse, buy }));
  const billedIn = (values: Readonly<Record<string, string>>) =>
    sumOf(
      Object.entries(values)
        .filter(([name]) => /^(goods|freight|other)/.test(name))
        .map(([, typed]) => minorUnitsOf(typed, format.currency) ?? 0),
    );
  return (
    <Loaded reading={reading}>
      {(body) => {
        const goods: PostField[] = body.lines.map((line) => ({
          name: `goods ${line.id}`,
          label: t.goodsOf(foodNameOf(line, format.language)),
          kind: 'money',
          isOptional: true,
        }));
        return (
          <PostForm
            name={`bill.${buy}`}
            summary={t.enterBill}
            button={t.post}
            fields={[
              {
                name: 'supplierId',
                label: t.supplier,
                kind: 'choice',
                options: suppliers.map(({ id, name }) => ({ value: id, name })),
              },
              { name: 'number', label: t.billNumber, kind: 'text' },
              { name: 'onDay', label: t.day, kind: 'day', start: format.today() },
              { name: 'dueOn', label: t.dueBy, kind: 'day', isOptional: true },
              ...goods,
              { name: 'freight', label: t.freight, kind: 'money', isOptional: true },
              { name: 'other', label: t.otherCosts, kind: 'money', isOptional: true },
            ]}
            sentence={(values) => t.billSentence(body.name, format.money(billedIn(values)))}
            send={(sent, headers) =>
              inside.buys[':buy'].invoices.$post(
                {
                  param: { storehouse, buy },
                  json: {
                    supplierId: String(sent.supplierId),
                    number: String(sent.number),
                    onDay: String(sent.onDay),
                    dueOn: sent.dueOn ? String(sent.dueOn) : null,
                    lines: linesOf(sent),
                  },
                },
                { headers },
              )
            }
          />
        );
      }}
    </Loaded>
  );
}

function PaySupplier({ buy, suppliers }: { buy: string; suppliers: readonly Supplier[] }) {
  const t = useBooksText();
  const { storehouse } = useHouse();
  const tills = useTills();
  const nameOf = new Map(suppliers.map(({ id, name }) => [id, name]));
  return (
    <PostForm
      name={`pay.${buy}`}
      summary={t.paySupplier}
      button={t.post}
      fields={[
        {
          name: 'supplierId',
          label: t.supplier,
          kind: 'choice',
          options: suppliers.map(({ id, name }) => ({ value: id, name })),
        },
        { name: 'minorUnits', label: t.amount, kind: 'money' },
        { name: 'till', label: t.goesBy, kind: 'choice', options: tills },
        { name: 'note', label: t.note, kind: 'text', isOptional: true },
      ]}
      sentence={(values, money) => t.paySentence(money, nameOf.get(values.supplierId ?? '') ?? '…')}
      send={({ supplierId, minorUnits, till, note }, headers) =>
        inside['supplier-payments'].$post(
          {
            param: { storehouse },
            json: {
              supplierId: String(supplierId),
              minorUnits: Number(minorUnits),
              till: isTill(till) ? till : 'bank',
              note: String(note ?? ''),
            },
          },
          { headers },
        )
      }
    />
  );
}

function VoidBill({ bill, number }: { bill: string; number: string }) {
  const t = useBooksText();
  const { storehouse } = useHouse();
  return (
    <PostForm
      name={`void.${bill}`}
      summary={t.voidBill(number)}
      button={t.post}
      fields={[{ name: 'reason', label: t.reason, kind: 'text' }]}
      sentence={() => t.voidSentence(number)}
      send={({ reason }, headers) =>
        inside.invoices[':invoice'].void.$post(
          { param: { storehouse, invoice: bill }, json: { reason: String(reason) } },
          { headers },
        )
      }
    />
  );
}
