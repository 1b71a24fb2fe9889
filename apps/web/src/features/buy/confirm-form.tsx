import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { BuyPage, Quote } from './buy-body.ts';
import { fieldWordsOf } from './field-words.ts';
import { foodNameOf } from './food-name.ts';
import { FreightFields } from './freight-fields.tsx';
import { Breaks } from './offer-fields.tsx';
import { draftOfQuote, type QuoteDraft, readQuote } from './quote-draft.ts';
import { useQuotesText } from './words.ts';

const quotes = api.storehouses[':storehouse'].buys[':buy'].quotes;

/** What a supplier asks now that the buy is fixed; the bags themselves stay what households were promised grams of. */
export function ConfirmForm({ buy, quote }: { buy: BuyPage; quote: Quote }) {
  const words = useQuotesText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const [isTried, setIsTried] = useState(false);
  const unit = buy.lines[0]?.massUnit === 'kg' ? 'kg' : 'lb';
  const { draft, change, forget } = useDraft<QuoteDraft>(
    `confirm.${quote.id}`,
    draftOfQuote(quote, unit, format),
    { version: quote.version },
  );
  const { confirmed, unread } = readQuote(draft, unit, format.currency);
  const param = { storehouse, buy: buy.id };
  const sending = useMutation({
    mutationFn: () =>
      ask(
        quotes[':quote']['confirmed-terms'].$put({
          param: { ...param, quote: quote.id },
          json: { ...confirmed, version: quote.version },
        }),
      ),
    onSuccess: async () => {
      forget();
      await queries.invalidateQueries({ queryKey: ['buy', param] });
    },
  });
  const { hasFields, wordsOf } = fieldWordsOf(sending.error);
  const said = { money: words.moneyProblem, mass: words.massProblem, count: words.countProblem };
  const problemAt = (field: string): string | undefined => {
    const kind = isTried ? unread[field] : undefined;
    if (kind === 'day') return words.dayProblem;
    return kind === 'money' || kind === 'mass' || kind === 'count' ? said[kind] : wordsOf(field);
  };
  const answer = sending.data;
  return (
    <details>
      <summary>{words.confirmTitle(quote.supplier.name)}</summary>
      <Form
        onSend={() => {
          setIsTried(true);
          if (Object.keys(unread).length === 0) sending.mutate();
        }}
      >
        <p className="soft">{words.confirmWords}</p>
        <Field
          label={words.validUntil}
          type="date"
          value={draft.validUntil}
          onChange={(event) => change({ validUntil: event.target.value })}
          problem={problemAt('validUntil')}
        />
        {quote.offers.map((offer, at) => {
          const line = buy.lines.find(({ id }) => id === offer.buyLineId);
          return (
            <fieldset key={offer.id} className="stack">
              <legend className="legend">
                {`${line ? foodNameOf(line, format.language) : ''}, ${offer.bagLabel}`}
              </legend>
              <Breaks
                breaks={draft.offers[at]?.breaks ?? []}
                change={(breaks) =>
                  change({
                    offers: draft.offers.map((one, place) => (place === at ? { ...one, breaks } : one)),
                  })
                }
                problemAt={(field) => problemAt(`offers.${at}.breaks.${field}`)}
              />
            </fieldset>
          );
        })}
        <FreightFields draft={draft} change={change} problemAt={problemAt} />
        {sending.error && !hasFields ? <ProblemSaid error={sending.error} /> : null}
        <div>
          <button type="submit" className="btn" disabled={sending.isPending}>
            {words.confirmNow}
          </button>
        </div>
        {answer ? (
          <p className={`said ${answer.needsFixingAgain ? 'watch-said' : 'well-said'}`} role="status">
            {words.confirmed(
              format.money(answer.estimatedMinorUnits),
              format.money(answer.repricedMinorUnits),
            )}
            {answer.needsFixingAgain ? ` ${words.needsFixing}` : ''}
          </p>
        ) : null}
      </Form>
    </details>
  );
}
