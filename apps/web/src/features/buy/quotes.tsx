import { parseMass } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { buyQuery, fillQuery, quotesQuery } from '../../api/queries.ts';
import { useText } from '../../text/taste.ts';
import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { Basket } from './basket.tsx';
import type { BuyLineBody, BuyPage, Fill, Quote } from './buy-body.ts';
import { foodNameOf } from './food-name.ts';
import { QuoteList } from './quote-list.tsx';
import { isStanding } from './quote-offers.ts';
import { ComparedFood, dearestOf } from './run-foods.tsx';
import { type Comparison, comparisonQuery } from './run-queries.ts';
import { isLineAhead } from './tips.ts';
import { useQuotesText, useRunText } from './words.ts';
import './run.css';

const SEES_COMPARISON = ['coordinator', 'treasurer', 'packing_lead', 'reviewer'];
/** What foods are compared at while nobody has pledged: 200 lb, as a first order of a dozen households. */
const FIRST_GRAMS = 90_719;

/** What suppliers offer, side by side on what a unit lands at, and the place to enter and choose. */
export function Quotes() {
  const param = useParams({ from: '/s/$storehouse/buys/$buy/quotes' });
  const buy = useQuery(buyQuery(param));
  const fill = useQuery(fillQuery(param));
  const quotes = useQuery(quotesQuery(param));
  return (
    <Loaded isPage reading={joined(buy, joined(fill, quotes))}>
      {([page, [filled, { quotes: found }]]) => <QuotesSheet buy={page} fill={filled} quotes={found} />}
    </Loaded>
  );
}

type SheetProps = { buy: BuyPage; fill: Fill; quotes: readonly Quote[] };

function QuotesSheet({ buy, fill, quotes }: SheetProps) {
  const words = useQuotesText();
  const run = useRunText();
  const { storehouse, duties, format } = useHouse();
  useTitle(`${words.allQuotes}, ${buy.name}`);
  const standing = quotes.filter((quote) => isStanding(quote, format.today()));
  const isPledged = buy.lines.some(({ pledged }) => !pledged.isShown || pledged.households > 0);
  const [typed, setTyped] = useState('');
  const mass = parseMass(typed, { defaultUnit: buy.lines[0]?.massUnit === 'kg' ? 'kg' : 'lb' });
  const grams = 'grams' in mass ? mass.grams : isPledged ? null : FIRST_GRAMS;
  const mayCompare = duties.some((duty) => SEES_COMPARISON.includes(duty)) && isLineAhead(buy.stage);
  const comparison = useQuery({
    ...comparisonQuery({ storehouse, buy: buy.id }, grams),
    enabled: mayCompare,
  });
  const [chosenId, setChosenId] = useState('');
  const chosen = buy.lines.find(({ id }) => id === chosenId) ?? dearestOf(buy, fill);
  const isWrong = typed.trim() !== '' && 'problem' in mass;
  return (
    <>
      <div className="row place">
        <Link className="who" to="/s/$storehouse/buys/$buy/run" params={{ storehouse, buy: buy.id }}>
          <BackIcon />
          {buy.name}
        </Link>
      </div>
      <h1>
        {standing.length === 0 ? words.noQuotes(buy.name) : words.quotesStand(buy.name, standing.length)}{' '}
        {chosen && comparison.data ? <Cheapest line={chosen} comparison={comparison.data} /> : null}
      </h1>
      <div className="cols">
        <div className="stack">
          {chosen ? (
            <div className="pair roomy">
              <Choice
                label={words.whichFood}
                value={chosen.id}
                options={buy.lines.map((line) => ({
                  value: line.id,
                  name: foodNameOf(line, format.language),
                }))}
                onChange={setChosenId}
              />
              {mayCompare ? (
                <Field
                  label={words.compareAt}
                  hint={words.compareHint(chosen.massUnit)}
                  value={typed}
                  onChange={(event) => setTyped(event.target.value)}
                  problem={isWrong ? run.massProblem : undefined}
                />
              ) : null}
            </div>
          ) : null}
          {chosen ? (
            <ComparedFood
              buy={buy}
              line={chosen}
              quotes={quotes}
              filled={fill.lines.find(({ lineId }) => lineId === chosen.id)}
              compared={(comparison.data?.lines ?? []).filter(({ buyLineId }) => buyLineId === chosen.id)}
            />
          ) : null}
          {chosen && duties.includes('coordinator') && isLineAhead(buy.stage) ? (
            <FilledFrom key={chosen.id} buy={buy} line={chosen} quotes={standing} />
          ) : null}
        </div>
        <div className="stack">
          <QuoteList buy={buy} quotes={quotes} />
          {comparison.data && standing.length > 0 ? <Basket buy={buy} comparison={comparison.data} /> : null}
        </div>
      </div>
    </>
  );
}

function Cheapest({ line, comparison }: { line: BuyLineBody; comparison: Comparison }) {
  const words = useQuotesText();
  const { format } = useHouse();
  const unit = line.massUnit === 'kg' ? 'kg' : 'lb';
  const row = comparison.lines.find(
    ({ buyLineId, at }) => buyLineId === line.id && (at === 'wanted' || at === 'asked'),
  );
  const found = row?.quotes.find(({ quoteId }) => quoteId === row.cheapestQuoteId);
  if (!found) return null;
  const price = format.perUnit(found.landedPrice, unit);
  return <>{words.cheapestAt(foodNameOf(line, format.language), found.supplier, price, unit)}</>;
}

/** The choice of the quote that a food's bags are filled from. */
function FilledFrom({ buy, line, quotes }: { buy: BuyPage; line: BuyLineBody; quotes: readonly Quote[] }) {
  const t = useText();
  const words = useQuotesText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, buy: buy.id };
  const choosing = useMutation({
    mutationFn: (quoteId: string | null) =>
      ask(
        api.storehouses[':storehouse'].buys[':buy'].lines[':line'].quote.$put({
          param: { ...param, line: line.id },
          json: { version: line.version, quoteId },
        }),
      ),
    onSettled: () => queries.invalidateQueries({ queryKey: ['buy', param] }),
  });
  const offering = quotes.filter(({ offers }) => offers.some(({ buyLineId }) => buyLineId === line.id));
  return (
    <div className="stack">
      <Choice
        label={`${words.filledFrom}: ${foodNameOf(line, format.language)}`}
        value={line.quoteId ?? ''}
        options={[
          { value: '', name: words.cheapestWins },
          ...offering.map(({ id, supplier, reference }) => ({
            value: id,
            name: reference === '' ? supplier.name : `${supplier.name}, ${reference}`,
          })),
        ]}
        onChange={(quoteId) => choosing.mutate(quoteId === '' ? null : quoteId)}
      />
      {choosing.error ? <ProblemSaid error={choosing.error} /> : null}
      {choosing.isPending ? <p className="wait">{t.loading}</p> : null}
      {choosing.data ? (
        <p className="soft" role="status">
          {choosing.data.pledgesOffBagSize > 0
            ? words.offBagSize(choosing.data.pledgesOffBagSize)
            : words.choiceSaved}
        </p>
      ) : null}
    </div>
  );
}
