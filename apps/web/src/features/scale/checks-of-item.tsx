import { useQuery } from '@tanstack/react-query';
import { askOnce } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { wholeTyped } from '../equipment/typed.ts';
import { CHECKS, CheckForm } from './check-form.tsx';
import { inside, type Scale, scaleChecksQuery, scalesQuery } from './queries.ts';
import { Standing } from './standing.tsx';
import { useScaleText } from './words.ts';

/** A thing that is a scale: how each piece stands, a form for its next check, and all checks so far. */
export function ChecksOfItem({ item }: { item: string }) {
  const t = useScaleText();
  const { storehouse, format, duties } = useHouse();
  const mayCheck = CHECKS.some((duty) => duties.includes(duty));
  const reading = joined(
    useQuery(scalesQuery({ storehouse })),
    useQuery(scaleChecksQuery({ storehouse, item })),
  );
  return (
    <section className="stack">
      <h2>{t.title}</h2>
      <Loaded reading={reading}>
        {([{ scales }, { checks }]) => (
          <>
            {scales
              .filter(({ itemId }) => itemId === item)
              .map((scale) => (
                <div key={scale.unitId} className="stack">
                  <p>
                    <b>{t.name(scale.itemName, scale.unitNo)}</b> <Standing scale={scale} isNamed={false} />
                  </p>
                  {mayCheck ? <ScaleForm scale={scale} /> : null}
                </div>
              ))}
            <h3>{t.checks}</h3>
            {checks.length === 0 ? <p className="soft">{t.noChecks}</p> : null}
            <ul>
              {checks.map((check) => (
                <li key={check.id}>
                  {t.check(format.day(check.checkedOn), check.checkedBy, check.unitNo)}
                  <span className="soft block">
                    {t.reading(
                      format.count(check.laidGrams),
                      format.count(check.shownGrams),
                      format.count(check.limitGrams),
                    )}
                  </span>
                </li>
              ))}
            </ul>
          </>
        )}
      </Loaded>
    </section>
  );
}

const asText = (grams: number | null) => (grams === null ? '' : String(grams));

function ScaleForm({ scale }: { scale: Scale }) {
  const t = useScaleText();
  const { storehouse } = useHouse();
  return (
    <CheckForm
      name={`scale-check.${scale.unitId}`}
      said={[t.words]}
      start={{ should: asText(scale.laidGrams), limit: asText(scale.limitGrams) }}
      figures={{
        should: { api: 'laidGrams', label: t.laid },
        shown: { api: 'shownGrams', label: t.shown },
        limit: { api: 'limitGrams', label: t.limit },
      }}
      problem={t.gramsProblem}
      inputMode="numeric"
      read={wholeTyped}
      send={({ should, shown, limit }, checkedOn) => {
        const json = { laidGrams: should, shownGrams: shown, limitGrams: limit, checkedOn };
        return askOnce(`scale-check.${scale.unitId}`, json, (headers) =>
          inside['equipment-units'][':unit']['scale-checks'].$post(
            { param: { storehouse, unit: scale.unitId }, json },
            { headers },
          ),
        );
      }}
    />
  );
}
