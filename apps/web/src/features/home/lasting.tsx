import { addDays } from '../../text/format.ts';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import type { Coverage } from './coverage.ts';

/** How many days the stock feeds the household, as a figure and its sentence. */
export function Lasting({ coverage }: { coverage: Coverage }) {
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
