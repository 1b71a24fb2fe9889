import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { buyQuery, fillQuery, pledgesQuery, quotesQuery } from '../../api/queries.ts';
import { useTaste, useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { Figures } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { ByPen } from '../paper/by-pen.tsx';
import type { BuyLineBody, BuyPage, Fill, FillLine, OwnPledge, Quote } from './buy-body.ts';
import './beam.css';
import { LeftOut } from './left-out.tsx';
import { type LineFacts, lineFactsOf } from './line-facts.ts';
import { PledgeForm } from './pledge-form.tsx';
import { Sacks } from './sacks.tsx';
import { standingWords } from './standing-words.ts';

/** One food of a buy: the sacks rise above the beam, so that the thumb moves the poise and the eye sees the stack. */
export function BuyLine() {
  const t = useText();
  const { line: lineId, ...param } = useParams({ from: '/s/$storehouse/buys/$buy/lines/$line' });
  const buy = useQuery(buyQuery(param));
  const pledges = useQuery(pledgesQuery(param));
  const fill = useQuery(fillQuery(param));
  const quotes = useQuery(quotesQuery(param));
  return (
    <Loaded isPage reading={joined(joined(buy, pledges), joined(fill, quotes))}>
      {([[page, { own }], [filled, { quotes: found }]]) => {
        const line = page.lines.find(({ id }) => id === lineId);
        if (!line) return <h1>{t.lostTitle}</h1>;
        const pledge = own.find(({ buyLineId, isWithdrawn }) => buyLineId === lineId && !isWithdrawn);
        return <LineSheet buy={page} line={line} pledge={pledge} fill={filled} quotes={found} />;
      }}
    </Loaded>
  );
}

type SheetProps = {
  buy: BuyPage;
  line: BuyLineBody;
  pledge: OwnPledge | undefined;
  fill: Fill;
  quotes: readonly Quote[];
};

function LineSheet({ buy, line, pledge, fill, quotes }: SheetProps) {
  const t = useText();
  const { language } = useTaste();
  const { storehouse, household, format } = useHouse();
  const filled = fill.lines.find(({ lineId }) => lineId === line.id);
  const facts = lineFactsOf(line, fill, quotes);
  const food = nameIn(language, line.food);
  useTitle(`${food}, ${buy.name}`);
  const isGathering = buy.stage === 'gathering';
  const bags = (filled?.bags ?? []).reduce((sum, bag) => sum + bag.bags, 0);
  const isPlanned = isGathering || buy.stage === 'planning';
  const title =
    facts && !isPlanned
      ? t.fixedTitle(food, bags)
      : facts
        ? standingWords(t, format, { food, facts })
        : t.noQuoteYet(food);
  return (
    <>
      <div className="row place">
        <Link className="who" to="/s/$storehouse/buys/$buy" params={{ storehouse, buy: buy.id }}>
          <BackIcon />
          {buy.name}
        </Link>
        <span className="soft">
          {isGathering ? t.closes(format.instant(buy.gatheringClosesAt)) : (t.stages[buy.stage] ?? '')}
        </span>
      </div>
      <h1>{title}</h1>
      {!facts ? <p>{t.noQuoteWords}</p> : null}
      {household === null || buy.stage === 'called-off' ? null : (
        <p>
          <Link
            to="/s/$storehouse/buys/$buy/lines/$line/containers"
            params={{ storehouse, buy: buy.id, line: line.id }}
          >
            {t.packMineIn}
          </Link>
        </p>
      )}
      {pledge ? <ByPen buy={buy.id} subject={pledge.id} /> : null}
      {isGathering && household !== null ? <LeftOut line={line} household={household} /> : null}
      {facts && isGathering && household !== null ? (
        <PledgeForm
          key={pledge?.version ?? 0}
          buy={buy}
          line={line}
          pledge={pledge}
          facts={facts}
          landed={filled?.landedPrice ?? null}
          title={title}
        />
      ) : null}
      {facts && !(isGathering && household !== null) ? (
        <Fixed
          facts={isPlanned ? facts : { ...facts, standingUnits: bags * facts.bagUnits, mostUnits: null }}
          title={title}
          filled={filled}
        />
      ) : null}
    </>
  );
}

/** Once the pledges are in, the page only tells. */
function Fixed({ facts, title, filled }: { facts: LineFacts; title: string; filled: FillLine | undefined }) {
  const t = useText();
  const { format } = useHouse();
  const own = (filled?.own ?? []).reduce((sum, pledge) => sum + pledge.grams, 0);
  const price = filled?.landedPrice;
  return (
    <div className="cols">
      <Sacks facts={facts} title={title} landed={price ?? null} />
      <Figures
        rows={[
          { name: t.yourShare, value: format.mass(own) },
          ...(price
            ? [{ name: t.landedAt(facts.unit), value: format.perUnit(price, facts.unit), unit: t.cents }]
            : []),
        ]}
      />
    </div>
  );
}
