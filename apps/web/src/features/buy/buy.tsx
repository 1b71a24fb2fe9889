import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { buyQuery, pledgesQuery } from '../../api/queries.ts';
import { useTaste, useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { useTitle } from '../../ui/use-title.ts';
import { BuyDays } from '../calendar/buy-days.tsx';
import { BuyPapers } from '../paper/paper-links.tsx';
import type { BuyPage, OwnPledge } from './buy-body.ts';
import { PickUps } from './pick-ups.tsx';
import { PledgeEffect } from './pledge-effect.tsx';
import { StageState } from './stage-state.tsx';
import { isLineAhead } from './tips.ts';
import { useRunText } from './words.ts';

/** One buy as a member sees it: where it stands, its foods, and what the household wants of each. */
export function Buy() {
  const param = useParams({ from: '/s/$storehouse/buys/$buy' });
  const buy = useQuery(buyQuery(param));
  const pledges = useQuery(pledgesQuery(param));
  return (
    <Loaded isPage reading={joined(buy, pledges)}>
      {([page, { own }]) => <BuySheet buy={page} own={own.filter(({ isWithdrawn }) => !isWithdrawn)} />}
    </Loaded>
  );
}

/** From here on the bags are settled, so it can be said what each pledge did. */
const FIXED = ['fixed', 'ordered', 'landed', 'shared-out', 'closed'];

function BuySheet({ buy, own }: { buy: BuyPage; own: readonly OwnPledge[] }) {
  const t = useText();
  const words = useRunText();
  const { storehouse, household, duties, format } = useHouse();
  useTitle(buy.name);
  const isGathering = buy.stage === 'gathering';
  return (
    <>
      <div className="row place no-print">
        <Link className="who" to="/s/$storehouse/buys" params={{ storehouse }}>
          <BackIcon />
          {t.buys}
        </Link>
        <StageState stage={buy.stage} />
      </div>
      <h1>
        {isGathering
          ? t.buyGathers(buy.name, own.length, buy.lines.length)
          : t.buyStands(buy.name, t.stageWords[buy.stage] ?? buy.stage)}
      </h1>
      {duties.length === 0 ? null : (
        <div className="actions no-print">
          <Link className="btn" to="/s/$storehouse/buys/$buy/run" params={{ storehouse, buy: buy.id }}>
            {duties.includes('coordinator') ? words.runBuy : words.seeRun}
          </Link>
        </div>
      )}
      <dl className="figures">
        <div>
          <dt>{t.gatheringCloses}</dt>
          <dd>{format.instant(buy.gatheringClosesAt)}</dd>
        </div>
        {buy.landingOn === null ? null : (
          <div>
            <dt>{t.landsOn}</dt>
            <dd>{format.day(buy.landingOn)}</dd>
          </div>
        )}
        {buy.landingPlace === '' ? null : (
          <div>
            <dt>{t.landsAt}</dt>
            <dd>{buy.landingPlace}</dd>
          </div>
        )}
      </dl>
      <section>
        <h2>{t.foods}</h2>
        {buy.lines.length === 0 ? <p>{t.noFoods}</p> : <Lines buy={buy} own={own} />}
      </section>
      {household !== null && FIXED.includes(buy.stage) ? <PledgeEffect buy={buy} /> : null}
      {household !== null && ['landed', 'shared-out', 'closed'].includes(buy.stage) ? (
        <PickUps buy={buy.id} lines={buy.lines} isOpen={buy.stage === 'shared-out'} />
      ) : null}
      <BuyDays buy={buy.id} />
      <BuyPapers buy={buy} />
    </>
  );
}

function Lines({ buy, own }: { buy: BuyPage; own: readonly OwnPledge[] }) {
  const t = useText();
  const { language } = useTaste();
  const { storehouse, format } = useHouse();
  return (
    <ul className="list">
      {buy.lines.map((line) => {
        const pledge = own.find(({ buyLineId }) => buyLineId === line.id);
        return (
          <li key={line.id}>
            <Link
              to="/s/$storehouse/buys/$buy/lines/$line"
              params={{ storehouse, buy: buy.id, line: line.id }}
            >
              <span>
                <b>{nameIn(language, line.food)}</b>
                <br />
                <span className="soft">
                  {line.pledged.isShown
                    ? t.pledgedTogether(format.mass(line.pledged.wantedGrams), line.pledged.households)
                    : t.heldBack}
                </span>
              </span>
              <span className="num">
                {pledge
                  ? t.youWant(format.mass(pledge.wantedGrams))
                  : isLineAhead(buy.stage)
                    ? t.notPledged
                    : ''}
              </span>
            </Link>
          </li>
        );
      })}
    </ul>
  );
}
