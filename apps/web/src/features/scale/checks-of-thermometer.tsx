import { useQuery } from '@tanstack/react-query';
import { askOnce } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { shownPart } from '../../ui/parts-typed.ts';
import { degreeUnitOf, tenthsTyped } from '../place/degrees.ts';
import { CHECKS, CheckForm } from './check-form.tsx';
import { readingTyped, sayTenths, tenthsShown } from './degrees.ts';
import {
  inside,
  type Thermometer,
  type ThermometerCheck,
  thermometerChecksQuery,
  thermometersQuery,
} from './queries.ts';
import { ThermometerStanding } from './standing.tsx';
import { useScaleText } from './words.ts';

/** A thing that is a thermometer: how each piece stands, a form for its next check, and all checks so far. */
export function ChecksOfThermometer({ item }: { item: string }) {
  const t = useScaleText();
  const { storehouse, duties } = useHouse();
  const mayCheck = CHECKS.some((duty) => duties.includes(duty));
  const reading = joined(
    useQuery(thermometersQuery({ storehouse })),
    useQuery(thermometerChecksQuery({ storehouse, item })),
  );
  return (
    <section className="stack">
      <h2>{t.title}</h2>
      <Loaded reading={reading}>
        {([{ thermometers }, { checks }]) => (
          <>
            {thermometers
              .filter(({ itemId }) => itemId === item)
              .map((thermometer) => (
                <div key={thermometer.unitId} className="stack">
                  <p>
                    <b>{t.name(thermometer.itemName, thermometer.unitNo)}</b>{' '}
                    <ThermometerStanding thermometer={thermometer} isNamed={false} />
                  </p>
                  {mayCheck ? <ThermometerForm thermometer={thermometer} /> : null}
                </div>
              ))}
            <h3>{t.checks}</h3>
            {checks.length === 0 ? <p className="soft">{t.noChecks}</p> : null}
            <ul>
              {checks.map((check) => (
                <Checked key={check.id} check={check} />
              ))}
            </ul>
          </>
        )}
      </Loaded>
    </section>
  );
}

function Checked({ check }: { check: ThermometerCheck }) {
  const t = useScaleText();
  const { format } = useHouse();
  const { known, shown, limit } = tenthsShown(check, format);
  const say = (tenths: number) => sayTenths(tenths, format);
  return (
    <li>
      {t.check(format.day(check.checkedOn), check.checkedBy, check.unitNo)}
      <span className="soft block">{t.thermometer.reading(say(known), say(shown), say(limit))}</span>
    </li>
  );
}

function ThermometerForm({ thermometer }: { thermometer: Thermometer }) {
  const t = useScaleText();
  const { storehouse, format } = useHouse();
  const { knownTenths, shownTenths, limitTenths, unitId } = thermometer;
  const unit = degreeUnitOf(format);
  const last =
    knownTenths === null || shownTenths === null || limitTenths === null
      ? null
      : tenthsShown({ knownTenths, shownTenths, limitTenths }, format);
  return (
    <CheckForm
      name={`thermometer-check.${unitId}`}
      said={[t.thermometer.words[unit], t.thermometer.caution]}
      start={{ should: shownPart(last?.known ?? null, 10), limit: shownPart(last?.limit ?? null, 10) }}
      figures={{
        should: { api: 'knownTenths', label: t.thermometer.known(unit) },
        shown: { api: 'shownTenths', label: t.thermometer.shown(unit) },
        limit: { api: 'limitTenths', label: t.thermometer.limit(unit) },
      }}
      problem={t.thermometer.degreesProblem}
      inputMode="text"
      read={tenthsTyped}
      send={({ should, shown, limit }, checkedOn) => {
        const json = { ...readingTyped({ known: should, shown, limit }, format), checkedOn };
        return askOnce(`thermometer-check.${unitId}`, json, (headers) =>
          inside['equipment-units'][':unit']['thermometer-checks'].$post(
            { param: { storehouse, unit: unitId }, json },
            { headers },
          ),
        );
      }}
    />
  );
}
