import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { BasketTable } from './basket.tsx';
import type { BuyPage, Fill, Quote } from './buy-body.ts';
import { FoodStands } from './run-foods.tsx';
import { RunLate } from './run-late.tsx';
import { comparisonQuery, type Next } from './run-queries.ts';
import { Lapsing, sentenceOf, useRunReading, WholeBuy } from './run-standing.tsx';
import { MissingList } from './run-step.tsx';
import { isLineAhead } from './tips.ts';
import { useQuotesText, useRunText } from './words.ts';
import './run.css';

/** An open buy at a glance: whether its bags fill, what would tip it, who is late, what lapses, what it costs, what blocks it. */
export function BuyGlance({ id }: { id: string }) {
  const { storehouse } = useHouse();
  const param = { storehouse, buy: id };
  return (
    <Loaded reading={useRunReading(param)}>
      {([[page, step], [filled, { quotes: found }]]) => (
        <Glance buy={page} next={step} fill={filled} quotes={found} />
      )}
    </Loaded>
  );
}

type GlanceProps = { buy: BuyPage; next: Next; fill: Fill; quotes: readonly Quote[] };

function Glance({ buy, next, fill, quotes }: GlanceProps) {
  const t = useText();
  const words = useRunText();
  const { storehouse, format } = useHouse();
  const params = { storehouse, buy: buy.id };
  return (
    <section className="stack" aria-label={buy.name}>
      <h2>{sentenceOf({ buy, next, fill }, { t, words, format })}</h2>
      <div className="actions">
        <Link className="btn" to="/s/$storehouse/buys/$buy/run" params={params}>
          {words.runBuy}
        </Link>
      </div>
      <p>{format.sentence(next.words)}</p>
      <MissingList missing={next.missing} />
      <Lapsing buy={buy} quotes={quotes} />
      {isLineAhead(buy.stage) ? <WholeBuy buy={buy.id} /> : null}
      <ul className="foods-of-buy">
        {buy.lines.map((line) => (
          <li key={line.id}>
            <Link to="/s/$storehouse/buys/$buy/lines/$line" params={{ ...params, line: line.id }}>
              <FoodStands
                stage={buy.stage}
                line={line}
                filled={fill.lines.find(({ lineId }) => lineId === line.id)}
                quotes={quotes}
              />
            </Link>
          </li>
        ))}
      </ul>
      {isLineAhead(buy.stage) ? <CheapestBasket buy={buy} /> : null}
      <RunLate buy={buy} />
    </section>
  );
}

/** From which suppliers all that is wanted comes cheapest, with their freight and minimums, and the way to the quotes. */
function CheapestBasket({ buy }: { buy: BuyPage }) {
  const words = useQuotesText();
  const { storehouse } = useHouse();
  const params = { storehouse, buy: buy.id };
  return (
    <section className="stack">
      <h2>{words.basket}</h2>
      <Loaded reading={useQuery(comparisonQuery(params, null))}>
        {(comparison) => <BasketTable buy={buy} comparison={comparison} />}
      </Loaded>
      <div>
        <Link className="btn" to="/s/$storehouse/buys/$buy/quotes" params={params}>
          {words.allQuotes}
        </Link>
      </div>
    </section>
  );
}
