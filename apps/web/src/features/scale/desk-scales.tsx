import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { scalesQuery } from './queries.ts';
import { Standing } from './standing.tsx';
import { useScaleText } from './words.ts';

/** The keeper's ninth question: each scale with its last check. */
export function DeskScales() {
  const t = useScaleText();
  const { storehouse } = useHouse();
  return (
    <section className="stack">
      <h2>{t.ask}</h2>
      <Loaded reading={useQuery(scalesQuery({ storehouse }))}>
        {({ scales }) =>
          scales.length === 0 ? (
            <p className="soft">{t.none}</p>
          ) : (
            <ul className="list">
              {scales.map((scale) => (
                <li key={scale.unitId}>
                  <p>
                    <Standing scale={scale} />
                  </p>
                </li>
              ))}
            </ul>
          )
        }
      </Loaded>
    </section>
  );
}
