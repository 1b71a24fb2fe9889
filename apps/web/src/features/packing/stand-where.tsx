import { useHouse } from '../../ui/house.ts';
import type { PlanBody } from './queries.ts';
import { usePackingText } from './words.ts';

/** Who of those that come stands where, spell by spell. */
export function StandWhere({ plan }: { plan: PlanBody }) {
  const t = usePackingText();
  const { format } = useHouse();
  const { spells, session, lines } = plan;
  if (spells.length === 0) return null;
  const busy = lines.filter(({ containers }) => containers > 0).length;
  const hour = (seconds: number) =>
    format.hour(new Date(Date.parse(session.startsAt) + seconds * 1000).toISOString());
  const stationsOf = (stations: readonly string[]) =>
    stations.map((name) => t.stations[name as keyof typeof t.stations] ?? name).join(', ');
  return (
    <section className="stack">
      <h2>{t.standing}</h2>
      <p className="soft">{t.standingSays}</p>
      {spells.map(({ startsAtSecond, blocks, resting }) => (
        <section key={startsAtSecond}>
          <h3>{t.standFrom(hour(startsAtSecond))}</h3>
          <ul className="lanes">
            {blocks.map(({ line, stations, names, missing }) => (
              <li key={`${line} ${stations.join()}`}>
                <b>{[busy > 1 ? t.line(line) : '', stationsOf(stations)].filter(Boolean).join(', ')}:</b>{' '}
                {names.join(', ')}
                {missing === 0 ? null : (
                  <span className="wrong">
                    {names.length === 0 ? '' : '; '}
                    {t.standMissing(missing)}
                  </span>
                )}
              </li>
            ))}
            {resting.length === 0 ? null : (
              <li>
                <b>{t.standRest}:</b> {resting.join(', ')}
              </li>
            )}
          </ul>
        </section>
      ))}
    </section>
  );
}
