import { useQuery } from '@tanstack/react-query';
import { coverageQuery, eatersQuery, planQuery } from '../../api/queries.ts';
import { addDays } from '../../text/format.ts';
import { useText } from '../../text/taste.ts';
import { useHouse, useOwnHousehold } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { AsTable, Ledger } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { type Coverage, inOrderOfEnd } from '../home/coverage.ts';
import { Lasting } from '../home/lasting.tsx';
import { useCoverageText } from '../home/words.ts';
import { YearRibbon } from '../home/year-ribbon.tsx';
import { describeEater, type KnownEater } from '../household/eater.ts';
import { PlanForm } from '../household/plan-form.tsx';
import { ByFood } from './by-food.tsx';
import { dietGapOf } from './ends.ts';
import { OtherStock, useFoodNames } from './other-stock.tsx';
import { Way } from './way.tsx';

/** Who is fed how long by which food, and the cheapest way to the household's target. */
export function CoveragePage() {
  const t = useText();
  const words = useCoverageText();
  const { household } = useHouse();
  useTitle(words.title);
  return household === null ? <h1>{t.noHousehold}</h1> : <OwnCoverage />;
}

function OwnCoverage() {
  const own = useOwnHousehold();
  const coverage = useQuery(coverageQuery({ storehouse: own.storehouse }));
  const plan = useQuery(planQuery(own));
  const eaters = useQuery(eatersQuery(own));
  return (
    <Loaded isPage reading={joined(coverage, joined(plan, eaters))}>
      {([covered, [known, { eaters: people }]]) => (
        <div className="cols">
          <div className="stack">
            <Lasting coverage={covered} />
            {covered.state === 'no-eaters' ? null : (
              <>
                <Way targetDays={known.targetDays} lastsDays={covered.byMass.wholeDays} />
                <DietGaps coverage={covered} />
                <ByFood coverage={covered} />
                <OtherStock coverage={covered} />
              </>
            )}
          </div>
          <div className="stack">
            {covered.state === 'no-eaters' ? null : (
              <>
                <YearRibbon coverage={covered} targetDays={known.targetDays} />
                <WhoMayEat eaters={people} />
                <EndsTable coverage={covered} />
              </>
            )}
            <PlanForm key={known.version} plan={known} />
          </div>
        </div>
      )}
    </Loaded>
  );
}

/** One sentence a food of which some at the table run out before the others. */
function DietGaps({ coverage }: { coverage: Coverage }) {
  const t = useText();
  const words = useCoverageText();
  const { format } = useHouse();
  const on = (days: number) => format.day(addDays(format.today(), days));
  const gaps = inOrderOfEnd(coverage.groups).flatMap((group) => {
    const gap = dietGapOf(group);
    return gap ? [{ name: t.groups[group.group] ?? group.group, gap }] : [];
  });
  return (
    <section className="stack">
      <h2>{words.dietTitle}</h2>
      {gaps.length === 0 ? <p>{words.sameForAll}</p> : null}
      {gaps.map(({ name, gap }) => (
        <p key={name}>
          {gap.days === 0
            ? words.hasNone(gap.who, name)
            : words.runsOut(gap.who, name, on(gap.days), gap.days)}
          {gap.othersDays === null ? words.othersEndless : words.othersGo(on(gap.othersDays), gap.othersDays)}
        </p>
      ))}
      {coverage.groups
        .filter(({ nobodyMayEatGrams }) => nobodyMayEatGrams > 0)
        .map(({ group, nobodyMayEatGrams }) => (
          <p key={group}>{words.nobodyMayEat(format.mass(nobodyMayEatGrams), t.groups[group] ?? group)}.</p>
        ))}
    </section>
  );
}

/** Beneath the ribbon: what each of the threads stands for, where somebody does not eat everything. */
function WhoMayEat({ eaters }: { eaters: readonly KnownEater[] }) {
  const t = useText();
  const nameOf = useFoodNames();
  const words = useCoverageText();
  return (
    <ul>
      {eaters.map((eater) => (
        <li key={eater.id} className="soft">
          {words.whoEatsNo(eater.name, describeEater(t, eater, nameOf))}
        </li>
      ))}
    </ul>
  );
}

/** The ribbon's threads, to read: by food and eater the day until which they are fed. */
function EndsTable({ coverage }: { coverage: Coverage }) {
  const t = useText();
  const words = useCoverageText();
  const { format } = useHouse();
  const groups = inOrderOfEnd(coverage.groups);
  return (
    <AsTable>
      <Ledger
        caption={words.byEater}
        columns={[{ name: t.foodGroup }, ...coverage.eaters.map(({ name }) => ({ name, isNumber: true }))]}
        rows={groups.map(({ group, endsByEater }) => ({
          key: group,
          cells: [
            t.groups[group] ?? group,
            ...coverage.eaters.map(({ id }) => {
              const days = endsByEater.find((end) => end.id === id)?.wholeDays ?? null;
              if (days === null) return t.noEnd;
              return days === 0 ? t.none : format.day(addDays(format.today(), days));
            }),
          ],
        }))}
      />
    </AsTable>
  );
}
