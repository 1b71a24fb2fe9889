import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { NextStep, State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import type { BuyPage, Quote } from './buy-body.ts';
import { ConfirmForm } from './confirm-form.tsx';
import { foodNameOf } from './food-name.ts';
import { QuoteForm } from './quote-form.tsx';
import { isStanding } from './quote-offers.ts';
import { isLineAhead } from './tips.ts';
import { useQuotesText } from './words.ts';

type ListProps = { buy: BuyPage; quotes: readonly Quote[] };

/** Every quote of the buy with what can be done with it, and the way to enter one. */
export function QuoteList({ buy, quotes }: ListProps) {
  const words = useQuotesText();
  const { duties } = useHouse();
  const [isEntering, setIsEntering] = useState(quotes.length === 0);
  const mayEnter = duties.includes('coordinator') && isLineAhead(buy.stage) && buy.lines.length > 0;
  return (
    <>
      {mayEnter ? (
        <NextStep title={words.enter}>
          {isEntering ? (
            <QuoteForm buy={buy} onDone={() => setIsEntering(false)} />
          ) : (
            <div className="actions">
              <button type="button" className="btn go" onClick={() => setIsEntering(true)}>
                {words.enter}
              </button>
            </div>
          )}
        </NextStep>
      ) : null}
      <section className="stack">
        <h2>{words.allQuotes}</h2>
        <ul className="rows-of-form">
          {quotes.map((quote) => (
            <OneQuote key={quote.id} buy={buy} quote={quote} />
          ))}
        </ul>
      </section>
    </>
  );
}

function OneQuote({ buy, quote }: { buy: BuyPage; quote: Quote }) {
  const words = useQuotesText();
  const { duties, format } = useHouse();
  const [isEditing, setIsEditing] = useState(false);
  const isCoordinator = duties.includes('coordinator');
  const mayChange = isCoordinator && isLineAhead(buy.stage) && !quote.isWithdrawn;
  const isOut = !isStanding(quote, format.today());
  const foods = [...new Set(quote.offers.map(({ buyLineId }) => buyLineId))].flatMap((lineId) => {
    const line = buy.lines.find(({ id }) => id === lineId);
    return line ? [foodNameOf(line, format.language)] : [];
  });
  return (
    <li className="stack">
      <div>
        <b>{quote.supplier.name}</b>
        {quote.reference === '' ? null : <span className="soft">{`, ${quote.reference}`}</span>}
        <span className="soft block">
          {`${foods.join(', ')}; ${words.standsUntil(format.day(quote.validUntil))}`}
        </span>
        {isOut ? (
          <State kind="wrong" word={quote.isWithdrawn ? words.withdrawn : words.lapsed} />
        ) : (
          quote.warnings.map(({ code, message }) => (
            <span key={`${code} ${message}`} className="block mark">
              <State kind="watch" word={words.warnings[code] ?? message} />
            </span>
          ))
        )}
      </div>
      {mayChange ? (
        <div className="actions">
          <button
            type="button"
            className="btn"
            onClick={() => setIsEditing(!isEditing)}
            aria-expanded={isEditing}
          >
            {words.edit(quote.supplier.name)}
          </button>
          <Withdraw buy={buy} quote={quote} />
        </div>
      ) : null}
      {isEditing && mayChange ? (
        <QuoteForm key={quote.version} buy={buy} quote={quote} onDone={() => setIsEditing(false)} />
      ) : null}
      {isCoordinator && buy.stage === 'fixed' && !quote.isWithdrawn ? (
        <ConfirmForm buy={buy} quote={quote} />
      ) : null}
    </li>
  );
}

function Withdraw({ buy, quote }: { buy: BuyPage; quote: Quote }) {
  const words = useQuotesText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, buy: buy.id };
  const withdrawing = useMutation({
    mutationFn: () =>
      ask(
        api.storehouses[':storehouse'].buys[':buy'].quotes[':quote'].withdrawal.$post({
          param: { ...param, quote: quote.id },
          json: { version: quote.version },
        }),
      ),
    onSettled: () => queries.invalidateQueries({ queryKey: ['buy', param] }),
  });
  return (
    <div className="stack">
      <button
        type="button"
        className="btn quiet"
        disabled={withdrawing.isPending}
        aria-describedby={`${quote.id}-withdraw`}
        onClick={() => withdrawing.mutate()}
      >
        {words.withdraw(quote.supplier.name)}
      </button>
      <p id={`${quote.id}-withdraw`} className="soft mark">
        {words.withdrawWords}
      </p>
      {withdrawing.error ? <ProblemSaid error={withdrawing.error} /> : null}
    </div>
  );
}
