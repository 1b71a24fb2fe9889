import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { scalesQuery, thermometersQuery } from './queries.ts';
import { Standing, ThermometerStanding } from './standing.tsx';
import { useScaleText } from './words.ts';

/** The keeper's ninth question: each scale and each thermometer with its last check. */
export function DeskScales() {
  const t = useScaleText();
  const { storehouse } = useHouse();
  const reading = joined(useQuery(scalesQuery({ storehouse })), useQuery(thermometersQuery({ storehouse })));
  return (
    <section className="stack">
      <h2>{t.ask}</h2>
      <Loaded reading={reading}>
        {([{ scales }, { thermometers }]) => (
          <>
            {scales.length === 0 ? <p className="soft">{t.none}</p> : null}
            {thermometers.length === 0 ? <p className="soft">{t.thermometer.none}</p> : null}
            {scales.length + thermometers.length === 0 ? null : (
              <ul className="list">
                {scales.map((scale) => (
                  <li key={scale.unitId}>
                    <p>
                      <Standing scale={scale} />
                    </p>
                  </li>
                ))}
                {thermometers.map((thermometer) => (
                  <li key={thermometer.unitId}>
                    <p>
                      <ThermometerStanding thermometer={thermometer} />
                    </p>
                  </li>
                ))}
              </ul>
            )}
          </>
        )}
      </Loaded>
    </section>
  );
}
