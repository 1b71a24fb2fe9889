import { useQuery } from '@tanstack/react-query';
import { buyQuery, fillQuery, quotesQuery } from '../../api/queries.ts';
import type { Formats } from '../../text/format.ts';
import type { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Figures, State } from '../../ui/pieces.tsx';
import type { BuyPage, Fill, Quote } from './buy-body.ts';
import { foodNameOf } from './food-name.ts';
import { daysToSpare } from './quote-offers.ts';
import { type Next, nextQuery, outlookQuery } from './run-queries.ts';
import { isLineAhead, leadTipOf } from './tips.ts';
import { useRunText } from './words.ts';

/** A buy with its next step, its fill and its quotes: what whoever runs it reads on the way in and on its own page. */
export function useRunReading(param: { readonly storehouse: string; readonly buy: string }) {
  const buy = useQuery(buyQuery(param));
  const next = useQuery(nextQuery(param));
  const fill = useQuery(fillQuery(param));
  const quotes = useQuery(quotesQuery(param));
  return joined(joined(buy, next), joined(fill, quotes));
}

/** One sentence that says where the buy stands. */
export function sentenceOf(
  { buy, next, fill }: { buy: BuyPage; next: Next; fill: Fill },
  say: {
    t: ReturnType<typeof useText>;
    words: ReturnType<typeof useRunText>;
    format: Formats;
  },
): string {
  const { t, words, format } = say;
  if (buy.stage === 'planning') return words.planned(buy.name, buy.lines.length, buy.quotes.standing);
  if (buy.stage === 'fixed') {
    const unpaid = next.missing.find(({ code }) => code === 'deposit-unpaid')?.count ?? 0;
    return unpaid > 0 ? words.fixedWaits(buy.name, unpaid) : words.fixedReady(buy.name);
  }
  if (buy.stage !== 'gathering') return t.buyStands(buy.name, t.stageWords[buy.stage] ?? buy.stage);
  const tip = leadTipOf(buy, fill);
  const first = gathersFor(buy, words, format);
  if (!tip) return first;
  const food = foodNameOf(tip.line, format.language);
  const sayTip = tip.reachesBreak ? words.tipPrice : words.tipFreight;
  return `${first} ${sayTip(food, tip.bags - tip.extraBags, tip.extraBags)}`;
}

const DAY = 86_400_000;

function gathersFor(buy: BuyPage, words: ReturnType<typeof useRunText>, format: Formats): string {
  const left = Date.parse(buy.gatheringClosesAt) - Date.now();
  if (left <= 0) return words.gatheringOver(buy.name);
  if (left < DAY) return words.gathersToday(buy.name, format.instant(buy.gatheringClosesAt));
  return words.gathersDays(buy.name, Math.floor(left / DAY));
}

const FEW_DAYS = 3;

/** The quotes that end before the order, or so soon after it that one late deposit is too much. */
export function Lapsing({ buy, quotes }: { buy: BuyPage; quotes: readonly Quote[] }) {
  const words = useRunText();
  const { format } = useHouse();
  if (!isLineAhead(buy.stage) && buy.stage !== 'fixed') return null;
  const soon = quotes
    .filter(({ isWithdrawn }) => !isWithdrawn)
    .map((quote) => ({ quote, spare: daysToSpare(quote.validUntil, buy.orderOn, format.today()) }))
    .filter(({ spare }) => spare < FEW_DAYS);
  if (soon.length === 0) return null;
  return (
    <section>
      <h2>{words.lapsing}</h2>
      <ul>
        {soon.map(({ quote, spare }) => (
          <li key={quote.id} className="row">
            <span>{words.till(quote.supplier.name, format.day(quote.validUntil))}</span>
            <State
              kind={spare < 0 ? 'wrong' : 'watch'}
              word={spare < 0 ? words.lapsesBefore : words.daysToSpare(spare)}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}

/** What the whole buy comes to as it stands, and between everybody's least and most. */
export function WholeBuy({ buy }: { buy: string }) {
  const words = useRunText();
  const { storehouse, format } = useHouse();
  const outlook = useQuery(outlookQuery({ storehouse, buy }));
  return (
    <Loaded reading={outlook}>
      {({ atFill, allAtLeast, allAtMost, currency }) => {
        const ends = [allAtLeast.totalMinorUnits, allAtMost.totalMinorUnits].toSorted((a, b) => a - b);
        return (
          <Figures
            rows={[
              { name: words.wholeBuy, value: format.money(atFill.totalMinorUnits), unit: currency },
              { name: words.wholeBetween, value: ends.map((end) => format.money(end)).join(' – ') },
              { name: words.wholeMass, value: format.mass(atFill.grams) },
            ]}
          />
        );
      }}
    </Loaded>
  );
}
