import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { buyQuery, fillQuery, quotesQuery } from '../../api/queries.ts';
import type { Formats } from '../../text/format.ts';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Figures, State } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { SecondHalf } from '../landing/second-half.tsx';
import type { BuyPage, Fill, Quote } from './buy-body.ts';
import { foodNameOf } from './food-name.ts';
import { daysToSpare } from './quote-offers.ts';
import { dearestOf, RunFoods } from './run-foods.tsx';
import { RunLate } from './run-late.tsx';
import { RunMore } from './run-more.tsx';
import { RunPledges } from './run-pledges.tsx';
import { type Next, nextQuery, outlookQuery } from './run-queries.ts';
import { RunStep } from './run-step.tsx';
import { Stages } from './stages.tsx';
import { isLineAhead, leadTipOf } from './tips.ts';
import { useRunText } from './words.ts';

/** The duties that see what each household pledged (job map 14). */
const SEES_PLEDGES = ['coordinator', 'treasurer', 'packing_lead', 'reviewer'];

/** The one page that a buy is run from: where it stands, what comes next, and what that still lacks. */
export function RunBuy() {
  const param = useParams({ from: '/s/$storehouse/buys/$buy/run' });
  const buy = useQuery(buyQuery(param));
  const next = useQuery(nextQuery(param));
  const fill = useQuery(fillQuery(param));
  const quotes = useQuery(quotesQuery(param));
  return (
    <Loaded reading={joined(joined(buy, next), joined(fill, quotes))}>
      {([[page, step], [filled, { quotes: found }]]) => (
        <RunSheet buy={page} next={step} fill={filled} quotes={found} />
      )}
    </Loaded>
  );
}

type SheetProps = { buy: BuyPage; next: Next; fill: Fill; quotes: readonly Quote[] };

function RunSheet({ buy, next, fill, quotes }: SheetProps) {
  const t = useText();
  const words = useRunText();
  const { storehouse, duties, format } = useHouse();
  useTitle(`${words.runBuy}, ${buy.name}`);
  const seesPledges = duties.some((duty) => SEES_PLEDGES.includes(duty));
  const [chosenId, setChosenId] = useState<string | null>(null);
  const chosen = buy.lines.find(({ id }) => id === chosenId) ?? dearestOf(buy, fill);
  const isEnded = buy.stage === 'closed' || buy.stage === 'called-off';
  return (
    <>
      <div className="row place no-print">
        <Link className="who" to="/s/$storehouse/buys/$buy" params={{ storehouse, buy: buy.id }}>
          <BackIcon />
          {buy.name}
        </Link>
      </div>
      <h1>{sentenceOf({ buy, next, fill }, { t, words, format })}</h1>
      <Stages stage={buy.stage} />
      <div className="run">
        <div className="stack run-step">
          {isEnded ? null : <RunStep buy={buy} next={next} fill={fill} />}
          <Lapsing buy={buy} quotes={quotes} />
          {seesPledges && isLineAhead(buy.stage) ? <WholeBuy buy={buy.id} /> : null}
        </div>
        <div className="stack run-foods">
          {chosen === undefined ? (
            <p>{t.noFoods}</p>
          ) : (
            <RunFoods
              {...{ buy, fill, quotes, seesPledges, chosen }}
              onChoose={(line) => setChosenId(line.id)}
            />
          )}
        </div>
        <div className="stack run-rest">
          {seesPledges && chosen ? (
            <RunPledges
              buy={buy}
              line={chosen}
              fill={fill.lines.find(({ lineId }) => lineId === chosen.id)}
            />
          ) : null}
          {seesPledges ? <RunLate buy={buy} /> : null}
          <SecondHalf buy={buy.id} stage={buy.stage} />
          <RunMore buy={buy} />
        </div>
      </div>
    </>
  );
}

/** One sentence that says where the buy stands. */
function sentenceOf(
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
function Lapsing({ buy, quotes }: { buy: BuyPage; quotes: readonly Quote[] }) {
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
function WholeBuy({ buy }: { buy: string }) {
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
