import type { ReactNode } from 'react';
import { useHouse } from '../../ui/house.ts';
import { Ledger, State } from '../../ui/pieces.tsx';
import type { BuyLineBody, Offer, Quote } from './buy-body.ts';
import { unitsOf } from './line-facts.ts';
import { daysToSpare, isStanding } from './quote-offers.ts';
import type { ComparedLine } from './run-queries.ts';
import { useRunText } from './words.ts';

type TableProps = {
  caption: string;
  line: BuyLineBody;
  quotes: readonly Quote[];
  /** The line's rows of the comparison, one a mass. */
  compared: readonly ComparedLine[];
  orderOn: string;
  /** What can be done with a quote, beside it. */
  actions?: (quote: Quote) => ReactNode;
};

/** The quotes of one food side by side: prices, freight, and what a unit lands at for each mass. */
export function QuoteTable({ caption, line, quotes, compared, orderOn, actions }: TableProps) {
  const words = useRunText();
  const { format } = useHouse();
  const unit = line.massUnit === 'kg' ? 'kg' : 'lb';
  const today = format.today();
  const offering = quotes.filter(
    (quote) => isStanding(quote, today) && quote.offers.some((offer) => offer.buyLineId === line.id),
  );
  if (offering.length === 0) return <p>{words.noQuoteForFood}</p>;
  const masses = compared.filter((row, at) => compared.findIndex(({ grams }) => grams === row.grams) === at);
  return (
    <div className="quote-table">
      <Ledger
        caption={caption}
        columns={[
          { name: words.supplierAndBag },
          { name: words.priceABag },
          { name: words.freight },
          ...masses.map(({ grams }) => ({
            name: `${format.count(unitsOf(grams, unit))} ${unit}`,
            isNumber: true,
          })),
          ...(actions ? [{ name: words.see }] : []),
        ]}
        rows={offering.map((quote) => ({
          key: quote.id,
          cells: [
            <Who key="who" quote={quote} line={line} orderOn={orderOn} today={today} />,
            <Prices key="prices" offers={quote.offers.filter(({ buyLineId }) => buyLineId === line.id)} />,
            <Freight key="freight" quote={quote} unit={unit} />,
            ...masses.map((row) => <Landed key={row.grams} row={row} quote={quote} unit={unit} />),
            ...(actions ? [actions(quote)] : []),
          ],
        }))}
      />
    </div>
  );
}

function Who(at: { quote: Quote; line: BuyLineBody; orderOn: string; today: string }) {
  const words = useRunText();
  const { format } = useHouse();
  const { quote, line, orderOn, today } = at;
  const bags = quote.offers
    .filter(({ buyLineId }) => buyLineId === line.id)
    .map(({ bagLabel }) => bagLabel)
    .join(', ');
  const spare = daysToSpare(quote.validUntil, orderOn, today);
  return (
    <>
      <b>{quote.supplier.name}</b>
      <br />
      <span className="soft mark">{words.till(bags, format.shortDay(quote.validUntil))}</span>
      {line.quoteId === quote.id ? (
        <span className="mark block">
          <State kind="well" word={words.chosen} />
        </span>
      ) : null}
      {spare < 0 ? (
        <span className="mark block">
          <State kind="wrong" word={words.lapsesBefore} />
        </span>
      ) : spare < 3 ? (
        <span className="mark block">
          <State kind="watch" word={words.daysToSpare(spare)} />
        </span>
      ) : null}
    </>
  );
}

function Prices({ offers }: { offers: readonly Offer[] }) {
  const words = useRunText();
  const { format } = useHouse();
  return offers.map((offer) => (
    <span key={offer.id} className="block">
      {offers.length > 1 ? <span className="soft mark block">{offer.bagLabel}</span> : null}
      {offer.breaks.map(({ fromBags, bagPriceMinorUnits }) => (
        <span key={fromBags} className="block nb">
          {words.from(format.money(bagPriceMinorUnits), fromBags)}
        </span>
      ))}
      {offer.breakKind === 'incremental' && offer.breaks.length > 1 ? (
        <span className="soft mark block">{words.incremental}</span>
      ) : null}
      {offer.mostBags === null ? null : (
        <span className="soft mark block">{words.mostBagsOf(offer.mostBags)}</span>
      )}
    </span>
  ));
}

function Freight({ quote, unit }: { quote: Quote; unit: 'lb' | 'kg' }) {
  const words = useRunText();
  const { format } = useHouse();
  const { freightSteps: steps, freightFreeFromMinorUnits: free } = quote;
  return (
    <span className="mark block">
      {steps.length === 0 ? format.money(0) : null}
      {steps.map(({ fromGrams, minorUnits }) => (
        <span key={fromGrams} className="block nb">
          {fromGrams === 0
            ? format.money(minorUnits)
            : words.freightFrom(format.money(minorUnits), format.massIn(fromGrams, unit))}
        </span>
      ))}
      {free === null ? null : <span className="block nb">{words.freeFrom(format.money(free))}</span>}
      {quote.minimumGoodsMinorUnits > 0 ? (
        <span className="soft mark block">
          {words.atLeastGoods(format.money(quote.minimumGoodsMinorUnits))}
        </span>
      ) : null}
      {quote.minimumGrams > 0 ? (
        <span className="soft mark block">{words.atLeastMass(format.massIn(quote.minimumGrams, unit))}</span>
      ) : null}
    </span>
  );
}

/** Bold where it is the cheapest; a minimum that is not met is said, since the price can't be had alone. */
function Landed({ row, quote, unit }: { row: ComparedLine; quote: Quote; unit: 'lb' | 'kg' }) {
  const words = useRunText();
  const { format } = useHouse();
  const found = row.quotes.find(({ quoteId }) => quoteId === quote.id);
  if (!found) return <span className="soft mark">{words.notOffered}</span>;
  const price = format.perUnit(found.landedPrice, unit);
  return (
    <>
      {row.cheapestQuoteId === quote.id ? <b>{price}</b> : price} <span className="u">{'¢'}</span>
      {row.cheapestQuoteId === quote.id ? <span className="soft mark under">{words.cheapest}</span> : null}
      {found.meetsMinimum ? null : <span className="soft mark under">{words.belowMinimum}</span>}
    </>
  );
}
