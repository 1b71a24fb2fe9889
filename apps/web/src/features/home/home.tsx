import { useQuery } from '@tanstack/react-query';
import { balanceQuery, buysQuery, coverageQuery, planQuery } from '../../api/queries.ts';
import { addDays } from '../../text/format.ts';
import { useText } from '../../text/taste.ts';
import { useHouse, useOwnHousehold } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Figures } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import type { Coverage } from './coverage.ts';
import { HomeStep } from './home-step.tsx';
import { YearRibbon } from './year-ribbon.tsx';

/** How long would we last, what runs out first, what do we owe, what do I do next. */
export function Home() {
  const t = useText();
  const { storehouse, household } = useHouse();
  useTitle(t.home);
  return household === null ? <OutsiderHome storehouse={storehouse} /> : <MemberHome />;
}

function OutsiderHome({ storehouse }: { storehouse: string }) {
  const t = useText();
  const buys = useQuery(buysQuery({ storehouse }));
  return (
    <>
      <h1>{t.noHousehold}</h1>
      <p>{t.noHouseholdWords}</p>
      <Loaded reading={buys}>{(found) => <HomeStep buys={found.buys} owedMinorUnits={0} hasEaters />}</Loaded>
    </>
  );
}

function MemberHome() {
  const own = useOwnHousehold();
  const coverage = useQuery(coverageQuery({ storehouse: own.storehouse }));
  const plan = useQuery(planQuery(own));
  const balance = useQuery(balanceQuery(own));
  const buys = useQuery(buysQuery({ storehouse: own.storehouse }));
  return (
    <Loaded reading={joined(joined(coverage, plan), joined(balance, buys))}>
      {([[covered, { targetDays }], [owed, found]]) => (
        <div className="cols">
          <div className="stack">
            <Lasting coverage={covered} />
            <HomeStep
              buys={found.buys}
              owedMinorUnits={owed.balanceMinorUnits}
              hasEaters={covered.state !== 'no-eaters'}
            />
            <Owed balanceMinorUnits={owed.balanceMinorUnits} deposits={owed.deposits} coverage={covered} />
          </div>
          {covered.state === 'no-eaters' ? null : <YearRibbon coverage={covered} targetDays={targetDays} />}
        </div>
      )}
    </Loaded>
  );
}

function Lasting({ coverage }: { coverage: Coverage }) {
  const t = useText();
  const { format } = useHouse();
  const { wholeDays } = coverage;
  if (coverage.state === 'no-eaters') return <h1>{t.nobodyEats}</h1>;
  if (wholeDays === null) return <h1>{t.feedsOn}</h1>;
  const first = coverage.runsOutFirst === null ? '' : (t.groups[coverage.runsOutFirst] ?? '');
  const until = format.dayMonth(addDays(format.today(), wholeDays));
  return (
    <div>
      <p className="days">
        <b>{format.count(wholeDays)}</b>
        <span>{t.days(wholeDays)}</span>
      </p>
      <h1>
        {wholeDays === 0
          ? t.nothingFeeds(coverage.eaters.length, first)
          : t.feedsUntil(coverage.eaters.length, until, first)}
      </h1>
      <OtherMeasure coverage={coverage} />
    </div>
  );
}

/** Days by weight and by energy differ; the page leads with the shorter and names the other. */
function OtherMeasure({ coverage }: { coverage: Coverage }) {
  const t = useText();
  const { shorterMeasure, byMass, byEnergy } = coverage;
  const isByEnergy = shorterMeasure === 'energy';
  const other = isByEnergy ? byMass.wholeDays : byEnergy.wholeDays;
  if (other === null || other === coverage.wholeDays) return null;
  return <p className="soft">{isByEnergy ? t.byMassDays(other) : t.byEnergyDays(other)}</p>;
}

type OwedProps = {
  balanceMinorUnits: number;
  deposits: readonly { buy: string; heldMinorUnits: number }[];
  coverage: Coverage;
};

function Owed({ balanceMinorUnits, deposits, coverage }: OwedProps) {
  const t = useText();
  const { format } = useHouse();
  const held = deposits.reduce((sum, deposit) => sum + deposit.heldMinorUnits, 0);
  const coming = coverage.coming.reduce((sum, food) => sum + food.grams, 0);
  return (
    <Figures
      rows={[
        {
          name: balanceMinorUnits < 0 ? t.inCredit : t.youOwe,
          value: format.money(Math.abs(balanceMinorUnits)),
          unit: format.currency,
        },
        ...(held > 0 ? [{ name: t.depositsHeld, value: format.money(held) }] : []),
        ...(coming > 0 ? [{ name: t.coming, value: format.mass(coming) }] : []),
      ]}
    />
  );
}
