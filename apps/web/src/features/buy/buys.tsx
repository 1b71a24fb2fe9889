import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { buysQuery } from '../../api/queries.ts';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { BuyGlance } from './buy-glance.tsx';
import { NeedsMe } from './needs-me.tsx';
import { FairSoFar, LastClaims } from './so-far.tsx';
import { StageState } from './stage-state.tsx';

type ListedBuy = {
  id: string;
  name: string;
  stage: string;
  gatheringClosesAt: string;
  landingOn: string | null;
};

export function Buys() {
  const t = useText();
  const { storehouse, duties } = useHouse();
  const buys = useQuery(buysQuery({ storehouse }));
  useTitle(t.buys);
  return (
    <Loaded isPage reading={buys}>
      {({ buys: found }) => {
        const open = found.filter(({ stage }) => stage === 'gathering').length;
        const atGlance = duties.includes('coordinator') ? nearestOpen(found) : undefined;
        return (
          <>
            <h1>{found.length === 0 ? t.noBuys : t.buysTitle(open)}</h1>
            {duties.length === 0 ? null : <NeedsMe />}
            {atGlance === undefined ? null : <BuyGlance id={atGlance.id} />}
            {duties.includes('coordinator') ? <SoFar buys={found} /> : null}
            {found.length === 0 ? <p>{t.noBuysWords}</p> : <BuyList buys={found} />}
            <p>
              <Link to="/s/$storehouse/foods" params={{ storehouse }}>
                {t.knownFoods}
              </Link>
            </p>
          </>
        );
      }}
    </Loaded>
  );
}

/** What came of the last landing, and of all splits. */
function SoFar({ buys }: { buys: readonly ListedBuy[] }) {
  const last = buys
    .filter(({ stage, landingOn }) => LANDED.includes(stage) && landingOn !== null)
    .toSorted((a, b) => (b.landingOn ?? '').localeCompare(a.landingOn ?? ''))[0];
  if (last === undefined) return null;
  return (
    <>
      <LastClaims buy={last} />
      <FairSoFar />
    </>
  );
}

const LANDED = ['landed', 'shared-out', 'closed'];

/** Of the buys that are not over, the one that closed or closes first. */
const nearestOpen = (buys: readonly ListedBuy[]): ListedBuy | undefined =>
  buys
    .filter(({ stage }) => stage !== 'closed' && stage !== 'called-off')
    .toSorted((a, b) => Date.parse(a.gatheringClosesAt) - Date.parse(b.gatheringClosesAt))[0];

function BuyList({ buys }: { buys: readonly ListedBuy[] }) {
  const t = useText();
  const { storehouse, format } = useHouse();
  return (
    <Searched items={buys} wordsOf={({ name }) => name} find={t.findBuy} none={t.nothingFound}>
      {(shown) => (
        <ul className="list">
          {shown.map((buy) => (
            <li key={buy.id}>
              <Link to="/s/$storehouse/buys/$buy" params={{ storehouse, buy: buy.id }}>
                <span>
                  <b>{buy.name}</b>
                  <br />
                  <span className="soft">
                    {buy.stage === 'gathering'
                      ? t.closes(format.instant(buy.gatheringClosesAt))
                      : buy.landingOn === null
                        ? ''
                        : t.lands(format.day(buy.landingOn))}
                  </span>
                </span>
                <StageState stage={buy.stage} />
              </Link>
            </li>
          ))}
        </ul>
      )}
    </Searched>
  );
}
