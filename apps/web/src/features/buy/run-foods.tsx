import { useQuery } from '@tanstack/react-query';
import type { ReactNode } from 'react';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { AsTable, Ledger } from '../../ui/pieces.tsx';
import type { BuyLineBody, BuyPage, Fill, FillLine, Quote } from './buy-body.ts';
import { CurveFigure } from './curve-figure.tsx';
import { foodNameOf } from './food-name.ts';
import { unitsOf } from './line-facts.ts';
import { MiniSacks } from './mini-sacks.tsx';
import { curveOffersOf } from './quote-offers.ts';
import { QuoteTable } from './quote-table.tsx';
import { type ComparedLine, comparisonQuery } from './run-queries.ts';
import { isLineAhead } from './tips.ts';
import { useRunText } from './words.ts';

type FoodsProps = {
  buy: BuyPage;
  fill: Fill;
  quotes: readonly Quote[];
  seesPledges: boolean;
  chosen: BuyLineBody;
  onChoose: (line: BuyLineBody) => void;
};

/** The foods of a buy: how their bags fill, and of the chosen one what every quote lands at. */
export function RunFoods({ buy, fill, quotes, seesPledges, chosen, onChoose }: FoodsProps) {
  const words = useRunText();
  const filledOf = (line: BuyLineBody) => fill.lines.find(({ lineId }) => lineId === line.id);
  return (
    <>
      {isLineAhead(buy.stage) && seesPledges ? (
        <Compared buy={buy} line={chosen} quotes={quotes} fill={filledOf(chosen)} />
      ) : null}
      <section>
        <h2>{words.lines}</h2>
        <ul className="foods-of-buy">
          {buy.lines.map((line) => (
            <li key={line.id}>
              <button type="button" aria-pressed={line.id === chosen.id} onClick={() => onChoose(line)}>
                <FoodStands stage={buy.stage} line={line} filled={filledOf(line)} quotes={quotes} />
              </button>
            </li>
          ))}
        </ul>
        <AsTable>
          <FoodTable buy={buy} fill={fill} />
        </AsTable>
      </section>
    </>
  );
}

/** The food that most money goes into stands first in the picture. */
export function dearestOf(buy: BuyPage, fill: Fill): BuyLineBody | undefined {
  const goods = (line: BuyLineBody) =>
    fill.lines.find(({ lineId }) => lineId === line.id)?.goodsMinorUnits ?? 0;
  return buy.lines.toSorted((a, b) => goods(b) - goods(a))[0];
}

const unitOf = (line: BuyLineBody) => (line.massUnit === 'kg' ? 'kg' : 'lb');

type StandsProps = {
  stage: string;
  line: BuyLineBody;
  filled: FillLine | undefined;
  quotes: readonly Quote[];
};

/** One food of a buy: its name, how far its next bag is, its bags, and what it lands at. */
export function FoodStands(at: StandsProps) {
  const { format } = useHouse();
  return (
    <>
      <b>{foodNameOf(at.line, format.language)}</b>
      <Standing {...at} />
      <Facts line={at.line} filled={at.filled} />
    </>
  );
}

function Standing(at: StandsProps) {
  const words = useRunText();
  const { format } = useHouse();
  const { stage, line, filled, quotes } = at;
  const unit = unitOf(line);
  const offer = quotes.flatMap(({ offers }) => offers).find(({ id }) => id === filled?.bags[0]?.bagOfferId);
  const wanted = filled?.tips?.wantedUnits ?? null;
  const lack = filled?.tips?.toNextBagUnits ?? 0;
  if (offer && !isLineAhead(stage)) {
    const bags = (filled?.bags ?? []).reduce((sum, bag) => sum + bag.bags, 0);
    return (
      <>
        <span className="num">{words.bagsOrdered(bags)}</span>
        <MiniSacks units={bags * offer.bagSize} bagUnits={offer.bagSize} />
      </>
    );
  }
  if (!offer || wanted === null) return <span className="soft num">{words.nobody}</span>;
  return (
    <>
      <span className="num">
        {lack === 0 ? (
          <span className="well">{words.full}</span>
        ) : (
          words.toGo(`${format.count(lack)} ${unit}`)
        )}
      </span>
      <MiniSacks units={wanted} bagUnits={offer.bagSize} />
    </>
  );
}

function Facts({ line, filled }: { line: BuyLineBody; filled: FillLine | undefined }) {
  const words = useRunText();
  const { format } = useHouse();
  const unit = unitOf(line);
  if (!line.pledged.isShown) return null;
  const { leastGrams, wantedGrams, mostGrams } = line.pledged;
  const say = (grams: number) => format.count(unitsOf(grams, unit));
  const price = filled?.landedPrice
    ? `; ${words.landedPrice.toLowerCase()} ${format.perUnit(filled.landedPrice, unit)} ¢`
    : '';
  const facts = words.lineFacts({
    least: say(leastGrams),
    wanted: say(wantedGrams),
    most: `${say(mostGrams)} ${unit}`,
  });
  return <span className="soft mark facts">{`${facts}${price}`}</span>;
}

function Compared(at: {
  buy: BuyPage;
  line: BuyLineBody;
  quotes: readonly Quote[];
  fill: FillLine | undefined;
}) {
  const { buy, line, quotes, fill } = at;
  const { storehouse } = useHouse();
  const param = { storehouse, buy: buy.id };
  const comparison = useQuery(comparisonQuery(param, null));
  return (
    <Loaded reading={joined(comparison, comparison)}>
      {([{ lines }]) => (
        <ComparedFood
          buy={buy}
          line={line}
          quotes={quotes}
          filled={fill}
          compared={lines.filter(({ buyLineId }) => buyLineId === line.id)}
        />
      )}
    </Loaded>
  );
}

/** The picture of one food's quotes, and the table behind it. */
export function ComparedFood(at: {
  buy: BuyPage;
  line: BuyLineBody;
  quotes: readonly Quote[];
  filled: FillLine | undefined;
  compared: readonly ComparedLine[];
  actions?: (quote: Quote) => ReactNode;
}) {
  const words = useRunText();
  const { format } = useHouse();
  const { buy, line, quotes, filled, compared, actions } = at;
  const unit = unitOf(line);
  const food = foodNameOf(line, format.language);
  const offers = curveOffersOf(quotes, line.id, format.today());
  const wantedRow = compared.find(({ at: place }) => place === 'wanted' || place === 'asked');
  const leadQuote = line.quoteId ?? filled?.quoteId ?? wantedRow?.cheapestQuoteId;
  const lead =
    filled?.bags[0]?.bagOfferId ??
    quotes.find(({ id }) => id === leadQuote)?.offers.find(({ buyLineId }) => buyLineId === line.id)?.id;
  const { pledged } = line;
  const wanted = pledged.isShown
    ? {
        least: unitsOf(pledged.leastGrams, unit),
        wanted: unitsOf(pledged.wantedGrams, unit),
        most: unitsOf(pledged.mostGrams, unit),
      }
    : { least: 0, wanted: 0, most: 0 };
  const title = words.quotesLanded(
    food,
    new Set(
      quotes
        .filter(
          ({ offers: found, isWithdrawn }) =>
            !isWithdrawn && found.some(({ buyLineId }) => buyLineId === line.id),
        )
        .map(({ id }) => id),
    ).size,
  );
  return (
    <section className="stack">
      <div className="row">
        <h2>{title}</h2>
        <span className="soft">{words.freightByOrder}</span>
      </div>
      {offers.length === 0 ? null : (
        <CurveFigure food={food} unit={unit} offers={offers} leadKey={lead ?? ''} wanted={wanted} />
      )}
      <QuoteTable
        caption={title}
        line={line}
        quotes={quotes}
        compared={compared}
        orderOn={buy.orderOn}
        {...(actions ? { actions } : {})}
      />
    </section>
  );
}

function FoodTable({ buy, fill }: { buy: BuyPage; fill: Fill }) {
  const words = useRunText();
  const { format } = useHouse();
  return (
    <Ledger
      caption={words.lines}
      columns={[
        { name: words.lines },
        { name: words.threeColumn, isNumber: true },
        { name: words.bagsFull, isNumber: true },
        { name: words.toNextBag, isNumber: true },
        { name: words.tipColumn, isNumber: true },
        { name: words.landedPrice, isNumber: true },
        { name: words.commonStock, isNumber: true },
      ]}
      rows={buy.lines.map((line) => {
        const unit = unitOf(line);
        const filled = fill.lines.find(({ lineId }) => lineId === line.id);
        const say = (grams: number) => format.count(unitsOf(grams, unit));
        const tip = filled?.tips?.tip;
        return {
          key: line.id,
          cells: [
            foodNameOf(line, format.language),
            line.pledged.isShown
              ? [line.pledged.leastGrams, line.pledged.wantedGrams, line.pledged.mostGrams]
                  .map(say)
                  .join(', ')
              : words.nobody,
            format.count((filled?.bags ?? []).reduce((sum, { bags }) => sum + bags, 0)),
            `${format.count(filled?.tips?.toNextBagUnits ?? 0)} ${unit}`,
            tip
              ? words.tipCell(
                  tip.extraBags,
                  format.money(tip.extraCostMinorUnits),
                  format.money(tip.savedMinorUnits),
                )
              : words.noTip,
            filled?.landedPrice ? `${format.perUnit(filled.landedPrice, unit)} ¢` : '',
            format.massIn(filled?.commonGrams ?? 0, unit),
          ],
        };
      })}
    />
  );
}
