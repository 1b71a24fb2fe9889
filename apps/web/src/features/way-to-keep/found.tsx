import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { NextStep } from '../../ui/pieces.tsx';
import type { Way, WaysAnswer } from './queries.ts';
import { useWaysText } from './words.ts';

/** The ranked ways, the best one first and largest, and then what is not done and why. */
export function WaysFound({ found }: { found: WaysAnswer }) {
  const words = useWaysText();
  const [best, ...others] = found.ways ?? [];
  return (
    <>
      {found.ways === null ? <p className="said watch-said">{words.noBulk}</p> : null}
      {best ? (
        <NextStep title={best.costPerYearMinorUnits === null ? words.first : words.cheapest}>
          <OneWay way={best} />
        </NextStep>
      ) : null}
      {others.length === 0 ? null : (
        <section className="stack">
          <h2>{words.others(others.length)}</h2>
          <p>{words.modest}</p>
          <ul className="list">
            {others.map((way) => (
              <li key={`${way.kind?.id} ${way.treatment.code}`}>
                <OneWay way={way} />
              </li>
            ))}
          </ul>
        </section>
      )}
      <Refused found={found} />
    </>
  );
}

function OneWay({ way }: { way: Way }) {
  const words = useWaysText();
  const { format } = useHouse();
  const { language } = format;
  const kind = nameIn(language, way.kind);
  const { life, treatment, warnings, packets, dryIceGrams } = way;
  return (
    <div className="stack">
      <p>
        <b>{words.way(kind, treatment.names[language])}</b>
      </p>
      <p>{words.counts(way.containers, format.mass(way.gramsEach), format.mass(way.lastGrams))}</p>
      {packets.length === 0 ? null : (
        <p>
          {words.packets(
            packets
              .map(({ sizeMillilitres, count }) => words.packet(count, format.count(sizeMillilitres)))
              .join(', '),
          )}
        </p>
      )}
      {dryIceGrams === 0 ? null : <p>{words.dryIce(format.mass(dryIceGrams))}</p>}
      {treatment.needs === null ? null : <p>{words.needs(treatment.needs[language])}</p>}
      <p>{life === null ? words.lifeUnknown : words.keeps(life.lowDays, life.likelyDays, life.highDays)}</p>
      <p>
        {way.costMinorUnits === null
          ? words.costUnknown
          : words.costs(
              format.money(way.costMinorUnits),
              way.costPerYearMinorUnits === null ? null : format.money(way.costPerYearMinorUnits),
            )}
      </p>
      {way.kind?.isDark === false ? <p>{words.keepDark}</p> : null}
      {way.kind?.needsOuter ? <p>{words.wantsOuter}</p> : null}
      {warnings.map(({ misfit, say }) => (
        <p key={misfit} className="said watch-said">
          {say[language]}
        </p>
      ))}
      {treatment.cautions.length === 0 ? null : (
        <details>
          <summary>{words.cautions}</summary>
          {treatment.cautions.map(({ code, say, deferTo }) => (
            <p key={code}>
              {say[language]} <span className="soft">{words.deferTo(deferTo[language])}</span>
            </p>
          ))}
        </details>
      )}
      {life === null ? null : <p className="soft">{life.source}</p>}
    </div>
  );
}

function Refused({ found }: { found: WaysAnswer }) {
  const words = useWaysText();
  const { format } = useHouse();
  const { language } = format;
  if (found.refused.length === 0) return null;
  return (
    <details>
      <summary>{words.refused(found.refused.length)}</summary>
      <ul className="list">
        {found.refused.map(({ kind, treatment, why, nearest }) => (
          <li key={`${kind?.id} ${treatment.code}`}>
            <span>
              <b>{words.way(nameIn(language, kind), treatment.names[language])}</b>
              <br />
              {why.map(({ say }) => say[language]).join(' ')}{' '}
              {nearest === null ? null : words.nearest(nearest.names[language])}
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}
