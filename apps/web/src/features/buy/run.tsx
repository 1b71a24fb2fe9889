import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { SecondHalf } from '../landing/second-half.tsx';
import type { BuyPage, Fill, Quote } from './buy-body.ts';
import { dearestOf, RunFoods } from './run-foods.tsx';
import { RunLate } from './run-late.tsx';
import { RunMore } from './run-more.tsx';
import { RunPledges } from './run-pledges.tsx';
import type { Next } from './run-queries.ts';
import { Lapsing, sentenceOf, useRunReading, WholeBuy } from './run-standing.tsx';
import { RunStep } from './run-step.tsx';
import { Stages } from './stages.tsx';
import { isLineAhead } from './tips.ts';
import { useRunText } from './words.ts';

/** The duties that see what each household pledged (job map 14). */
const SEES_PLEDGES = ['coordinator', 'treasurer', 'packing_lead', 'reviewer'];

/** The one page that a buy is run from: where it stands, what comes next, and what that still lacks. */
export function RunBuy() {
  const param = useParams({ from: '/s/$storehouse/buys/$buy/run' });
  return (
    <Loaded isPage reading={useRunReading(param)}>
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
