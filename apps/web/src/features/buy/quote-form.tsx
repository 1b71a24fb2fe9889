import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { Choice, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { BuyPage, Quote } from './buy-body.ts';
import { fieldWordsOf } from './field-words.ts';
import { FreightFields } from './freight-fields.tsx';
import { OfferFields } from './offer-fields.tsx';
import {
  draftOfQuote,
  emptyOffer,
  emptyQuote,
  NEW_SUPPLIER,
  type QuoteDraft,
  readQuote,
} from './quote-draft.ts';
import { suppliersQuery } from './run-queries.ts';
import { useQuotesText } from './words.ts';

const inside = api.storehouses[':storehouse'];
const quotes = inside.buys[':buy'].quotes;

type FormProps = { buy: BuyPage; quote?: Quote; onDone: () => void };

/** A quote is entered or replaced whole: who, until when, freight, and each bag with its prices. */
export function QuoteForm({ buy, quote, onDone }: FormProps) {
  const words = useQuotesText();
  const { storehouse, massDisplay, format } = useHouse();
  const queries = useQueryClient();
  const [isTried, setIsTried] = useState(false);
  const unit = buy.lines[0]?.massUnit === 'kg' ? 'kg' : buy.lines[0] ? 'lb' : massDisplay;
  const { draft, change, forget } = useDraft<QuoteDraft>(
    `quote.${buy.id}.${quote?.id ?? 'new'}`,
    quote ? draftOfQuote(quote, unit, format) : emptyQuote(buy),
    { version: quote?.version ?? 0 },
  );
  const { terms, unread } = readQuote(draft, unit, format.currency);
  const param = { storehouse, buy: buy.id };
  const sending = useMutation({
    mutationFn: async () => {
      if (quote) {
        const json = { ...terms, version: quote.version };
        return ask(quotes[':quote'].$put({ param: { ...param, quote: quote.id }, json }));
      }
      const supplierId =
        draft.supplierId === NEW_SUPPLIER ? await enterSupplier(storehouse, draft) : draft.supplierId;
      change({ supplierId, supplierName: '' }); // entered once, also when the quote itself is refused
      return ask(quotes.$post({ param, json: { ...terms, supplierId } }));
    },
    onSuccess: async () => {
      forget();
      await queries.invalidateQueries({ queryKey: ['buy', param] });
      onDone();
    },
    onSettled: () => queries.invalidateQueries({ queryKey: ['suppliers'] }),
  });
  const { hasFields, wordsOf } = fieldWordsOf(sending.error);
  const said = {
    money: words.moneyProblem,
    mass: words.massProblem,
    count: words.countProblem,
    whole: words.wholeProblem,
    day: words.dayProblem,
    supplier: words.supplierProblem,
  };
  const problemAt = (field: string): string | undefined => {
    const kind = isTried ? unread[field] : undefined;
    return kind ? said[kind] : wordsOf(field);
  };
  const edit = (part: Partial<QuoteDraft>) => {
    sending.reset();
    change(part);
  };
  const text = (
    key: 'reference' | 'leadDays' | 'cropYear' | 'moistureNote' | 'foreignPriceNote',
    label: string,
    hint?: string,
  ) => (
    <Field
      label={label}
      {...(hint === undefined ? {} : { hint })}
      value={draft[key]}
      onChange={(event) => edit({ [key]: event.target.value })}
      problem={problemAt(key)}
    />
  );
  return (
    <Form
      onSend={() => {
        setIsTried(true);
        if (Object.keys(unread).length === 0) sending.mutate();
      }}
    >
      {quote ? null : <SupplierFields draft={draft} change={edit} problem={problemAt('supplierId')} />}
      <div className="pair roomy">
        {text('reference', words.reference, words.referenceHint)}
        <Field
          label={words.validUntil}
          type="date"
          value={draft.validUntil}
          onChange={(event) => edit({ validUntil: event.target.value })}
          problem={problemAt('validUntil')}
        />
      </div>
      <section className="stack">
        <h3>{words.offers}</h3>
        <ul className="rows-of-form">
          {draft.offers.map((offer, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: an offer is its place in the form
            <li key={at} className="stack">
              <OfferFields
                buy={buy}
                at={at}
                offer={offer}
                problemAt={problemAt}
                freight={{
                  steps: terms.freightSteps,
                  freeFromGoodsMinorUnits: terms.freightFreeFromMinorUnits,
                }}
                read={terms.offers[at]}
                change={(part) =>
                  edit({
                    offers: draft.offers.map((one, place) => (place === at ? { ...one, ...part } : one)),
                  })
                }
                remove={
                  draft.offers.length > 1
                    ? () => edit({ offers: draft.offers.filter((_, place) => place !== at) })
                    : null
                }
              />
            </li>
          ))}
        </ul>
        <div>
          <button
            type="button"
            className="btn"
            onClick={() => edit({ offers: [...draft.offers, emptyOffer(nextLine(buy, draft))] })}
          >
            {words.addOffer}
          </button>
        </div>
      </section>
      <FreightFields draft={draft} change={edit} problemAt={problemAt} />
      <div className="pair roomy">
        <Field
          label={words.minimumGoods}
          inputMode="decimal"
          value={draft.minimumGoods}
          onChange={(event) => edit({ minimumGoods: event.target.value })}
          problem={problemAt('minimumGoodsMinorUnits')}
        />
        <Field
          label={words.minimumMass}
          value={draft.minimumMass}
          onChange={(event) => edit({ minimumMass: event.target.value })}
          problem={problemAt('minimumGrams')}
        />
      </div>
      <div className="pair roomy">
        {text('leadDays', words.leadDays)}
        {text('cropYear', words.cropYear)}
      </div>
      <div className="pair roomy">
        {text('moistureNote', words.moistureNote)}
        {text('foreignPriceNote', words.foreignNote)}
      </div>
      {sending.error && !hasFields ? <ProblemSaid error={sending.error} /> : null}
      <div>
        <button type="submit" className="btn go" disabled={sending.isPending}>
          {quote ? words.changeNow : words.enterNow}
        </button>
      </div>
    </Form>
  );
}

/** The first food that the quote does not offer yet. */
function nextLine(buy: BuyPage, { offers }: QuoteDraft): string {
  const taken = offers.map(({ buyLineId }) => buyLineId);
  return buy.lines.find(({ id }) => !taken.includes(id))?.id ?? buy.lines[0]?.id ?? '';
}

async function enterSupplier(storehouse: string, draft: QuoteDraft): Promise<string> {
  const json = { name: draft.supplierName.trim(), contact: draft.supplierContact };
  const { id } = await ask(inside.suppliers.$post({ param: { storehouse }, json }));
  return id;
}

function SupplierFields(at: {
  draft: QuoteDraft;
  change: (part: Partial<QuoteDraft>) => void;
  problem: string | undefined;
}) {
  const words = useQuotesText();
  const { storehouse } = useHouse();
  const suppliers = useQuery(suppliersQuery({ storehouse }));
  const { draft, change, problem } = at;
  const isNew = draft.supplierId === NEW_SUPPLIER;
  return (
    <>
      <Choice
        label={words.supplier}
        value={draft.supplierId}
        options={[
          { value: '', name: words.chooseSupplier },
          ...(suppliers.data ?? []).map(({ id, name }) => ({ value: id, name })),
          { value: NEW_SUPPLIER, name: words.newSupplier },
        ]}
        onChange={(supplierId) => change({ supplierId })}
        problem={isNew ? undefined : problem}
      />
      {isNew ? (
        <div className="pair roomy">
          <Field
            label={words.supplierName}
            value={draft.supplierName}
            onChange={(event) => change({ supplierName: event.target.value })}
            problem={problem}
          />
          <Field
            label={words.supplierContact}
            value={draft.supplierContact}
            onChange={(event) => change({ supplierContact: event.target.value })}
          />
        </div>
      ) : null}
    </>
  );
}
