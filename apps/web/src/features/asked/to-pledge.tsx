import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { api, ask } from '../../api/client.ts';
import { buysQuery, coverageQuery, planQuery, pledgesQuery } from '../../api/queries.ts';
import { Answer } from '../../ui/glance.tsx';
import { useHouse, useOwnHousehold } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import type { OwnPledge } from '../buy/buy-body.ts';
import { useGapSaid } from '../coverage/gap-said.ts';
import { useFoodNames } from '../coverage/other-stock.tsx';
import { useAskedText } from './words.ts';

const inside = api.storehouses[':storehouse'];

/** More than anybody spends: the cheapest way to the target is looked for, whatever it costs. */
const ANY_BUDGET = '1000000000';

type Gathering = { readonly id: string; readonly name: string };

/** Questions 4 and 5, of the buy that closes first: what to pledge in it, and what is pledged will cost. */
export function ToPledge() {
  const words = useAskedText();
  const { storehouse } = useHouse();
  const { data } = useQuery(buysQuery({ storehouse }));
  if (!data) return null;
  const buy = data.buys
    .filter(({ stage }) => stage === 'gathering')
    .toSorted((a, b) => Date.parse(a.gatheringClosesAt) - Date.parse(b.gatheringClosesAt))[0];
  return (
    <>
      <Answer ask={words.pledge}>{buy ? <WayIn buy={buy} /> : words.noBuy}</Answer>
      <Answer ask={words.cost}>{buy ? <CostIn buy={buy} /> : words.noBuy}</Answer>
    </>
  );
}

function WayIn({ buy }: { buy: Gathering }) {
  const words = useAskedText();
  const own = useOwnHousehold();
  const { storehouse } = own;
  const reading = joined(useQuery(coverageQuery({ storehouse })), useQuery(planQuery(own)));
  return (
    <>
      <Loaded reading={reading}>
        {([{ wholeDays }, { targetDays }]) =>
          wholeDays === null || wholeDays >= targetDays ? words.reached(targetDays) : <Cheapest buy={buy} />
        }
      </Loaded>{' '}
      <Link to="/s/$storehouse/coverage" params={{ storehouse }}>
        {words.toWay}
      </Link>
    </>
  );
}

function Cheapest({ buy }: { buy: Gathering }) {
  const words = useAskedText();
  const { storehouse, format } = useHouse();
  const nameOf = useFoodNames();
  const said = useGapSaid();
  const reading = useQuery({
    queryKey: ['coverage', { storehouse }, 'gap', buy.id],
    staleTime: 60_000, // a solver works it out
    queryFn: () =>
      ask(
        inside.coverage.gap.$get({
          param: { storehouse },
          query: { buy: buy.id, budgetMinorUnits: ANY_BUDGET },
        }),
      ),
  });
  return (
    <Loaded reading={reading}>
      {(gap) => (
        <>
          {gap.pledges.length === 0 ? null : (
            <>
              {words.take(
                buy.name,
                gap.pledges.map(({ grams, foodCode }) => `${format.mass(grams)} ${nameOf(foodCode)}`),
              )}{' '}
            </>
          )}
          {said(gap)}
        </>
      )}
    </Loaded>
  );
}

function CostIn({ buy }: { buy: Gathering }) {
  const words = useAskedText();
  const { storehouse } = useHouse();
  const reading = useQuery(pledgesQuery({ storehouse, buy: buy.id }));
  return (
    <Loaded reading={reading}>
      {({ own }) => {
        const first = own.find(({ isWithdrawn }) => !isWithdrawn);
        return first ? <Cost buy={buy} pledge={first} /> : words.notPledged(buy.name);
      }}
    </Loaded>
  );
}

/** One pledge asked for just as it stands: the answer counts the household's whole part of the buy, all its lines in it. */
function Cost({ buy, pledge }: { buy: Gathering; pledge: OwnPledge }) {
  const words = useAskedText();
  const { storehouse, format } = useHouse();
  const param = { storehouse, buy: buy.id };
  const { buyLineId, leastGrams, wantedGrams, mostGrams, wholeBags, substituteLineId } = pledge;
  const { ceilingMinorUnits, ceilingPerGrams } = pledge;
  const hasCeiling = ceilingMinorUnits !== null && ceilingPerGrams !== null;
  const json = {
    ...{ buyLineId, leastGrams, wantedGrams, mostGrams, wholeBags, substituteLineId },
    ...(hasCeiling ? { ceilingMinorUnits, ceilingPerGrams } : {}),
  };
  const reading = useQuery({
    queryKey: ['buy', param, 'preview', 'as-it-stands', json],
    queryFn: () => ask(inside.buys[':buy'].preview.$post({ param, json })),
  });
  return (
    <Loaded reading={reading}>
      {({ atFill, allAtLeast, allAtMost }) => {
        const [low, high] = [allAtLeast.buyMinorUnits, allAtMost.buyMinorUnits].map(format.money);
        return (
          <>
            <Link to="/s/$storehouse/buys/$buy" params={param}>
              {words.costs(buy.name, `${format.money(atFill.buyMinorUnits)} ${format.currency}`)}
            </Link>{' '}
            {low === high ? null : words.between(low ?? '', high ?? '')}
          </>
        );
      }}
    </Loaded>
  );
}
