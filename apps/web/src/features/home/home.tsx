import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { lazy, type ReactNode, Suspense } from 'react';
import { balanceQuery, coverageQuery, planQuery } from '../../api/queries.ts';
import { useText } from '../../text/taste.ts';
import { useHouse, useOwnHousehold } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Figures } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { WhenSeen } from '../../ui/when-seen.tsx';
import { nextStepsQuery } from '../buy/run-queries.ts';
import type { Coverage } from './coverage.ts';
import { HomeStep } from './home-step.tsx';
import { Lasting } from './lasting.tsx';
import { useCoverageText } from './words.ts';
import { YearRibbon } from './year-ribbon.tsx';

const Duties = lazy(() => import('./duties.tsx').then((page) => ({ default: page.Duties })));

const EatFirst = lazy(() => import('../rotation/eat-first.tsx').then((page) => ({ default: page.EatFirst })));

// Without a signal it may not be there; the page above it still is.
const Asked = lazy<() => ReactNode>(() =>
  import('../asked/asked.tsx').then(
    (page) => ({ default: page.Asked }),
    () => ({ default: () => null }),
  ),
);

function OwnDuties() {
  const { duties } = useHouse();
  return duties.length === 0 ? null : (
    <Suspense>
      <Duties />
    </Suspense>
  );
}

/** How long would we last, what runs out first, what do we owe, what do I do next. */
export function Home() {
  const t = useText();
  const { storehouse, household } = useHouse();
  useTitle(t.home);
  return household === null ? <OutsiderHome storehouse={storehouse} /> : <MemberHome />;
}

/** Whoever has no household here came for a duty; the page leads to its first page. */
function OutsiderHome({ storehouse }: { storehouse: string }) {
  const words = useCoverageText();
  const { storehouseName } = useHouse();
  const steps = useQuery(nextStepsQuery({ storehouse }));
  return (
    <>
      <h1>{words.outsiderTitle(storehouseName)}</h1>
      <p>{words.outsiderWords}</p>
      <OwnDuties />
      <Loaded reading={steps}>{({ items }) => <HomeStep items={items} hasEaters />}</Loaded>
    </>
  );
}

function MemberHome() {
  const own = useOwnHousehold();
  const coverage = useQuery(coverageQuery({ storehouse: own.storehouse }));
  const plan = useQuery(planQuery(own));
  const balance = useQuery(balanceQuery(own));
  const steps = useQuery(nextStepsQuery({ storehouse: own.storehouse }));
  const words = useCoverageText();
  return (
    <Loaded isPage reading={joined(joined(coverage, plan), joined(balance, steps))}>
      {([[covered, { targetDays }], [owed, { items }]]) => (
        <>
          <div className="cols">
            <div className="stack">
              <Lasting coverage={covered} />
              <HomeStep items={items} hasEaters={covered.state !== 'no-eaters'} />
              <Owed
                balanceMinorUnits={owed.balanceMinorUnits}
                deposits={owed.deposits}
                coverage={covered}
                isSaidAbove={items.some(({ kind }) => kind === 'balance-due')}
              />
              <Suspense>
                <EatFirst />
              </Suspense>
              <OwnDuties />
            </div>
            {covered.state === 'no-eaters' ? null : (
              <div className="stack">
                <YearRibbon coverage={covered} targetDays={targetDays} />
                <Link className="btn" to="/s/$storehouse/coverage" params={{ storehouse: own.storehouse }}>
                  {words.seeCoverage}
                </Link>
              </div>
            )}
          </div>
          <WhenSeen name="asked">
            <Suspense>
              <Asked />
            </Suspense>
          </WhenSeen>
        </>
      )}
    </Loaded>
  );
}

type OwedProps = {
  balanceMinorUnits: number;
  deposits: readonly { buy: string; heldMinorUnits: number }[];
  coverage: Coverage;
  /** What is owed stands among the things to do already, with the way to it. */
  isSaidAbove: boolean;
};

function Owed({ balanceMinorUnits, deposits, coverage, isSaidAbove }: OwedProps) {
  const t = useText();
  const { format } = useHouse();
  const held = deposits.reduce((sum, deposit) => sum + deposit.heldMinorUnits, 0);
  const coming = coverage.coming.reduce((sum, food) => sum + food.grams, 0);
  const rows = [
    ...(isSaidAbove
      ? []
      : [
          {
            name: balanceMinorUnits < 0 ? t.inCredit : t.youOwe,
            value: format.money(Math.abs(balanceMinorUnits)),
            unit: format.currency,
          },
        ]),
    ...(held > 0 ? [{ name: t.depositsHeld, value: format.money(held) }] : []),
    ...(coming > 0 ? [{ name: t.coming, value: format.mass(coming) }] : []),
  ];
  return rows.length === 0 ? null : <Figures rows={rows} />;
}
