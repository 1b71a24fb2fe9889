import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { sayDegrees } from '../place/degrees.ts';
import { MoveForm } from './move-form.tsx';
import { type KeepingSheet, keepingQuery } from './queries.ts';
import { useKeepingText } from './words.ts';

/** How long a container keeps, why, where it stood, what would help most, and moving it. */
export function HowLong({ container, lotIds }: { container: string; lotIds: readonly string[] }) {
  const words = useKeepingText();
  const { storehouse } = useHouse();
  const reading = useQuery(keepingQuery({ storehouse, container }));
  return (
    <section className="stack">
      <h2>{words.title}</h2>
      <Loaded reading={reading}>
        {(sheet) => (
          <>
            <Band sheet={sheet} />
            <Helps helps={sheet.helps} />
            <Stays stays={sheet.stays} />
            <MoveForm key={sheet.place?.id ?? ''} sheet={sheet} lotIds={lotIds} />
          </>
        )}
      </Loaded>
    </section>
  );
}

function Band({ sheet: { keeping, why } }: { sheet: KeepingSheet }) {
  const words = useKeepingText();
  const { format } = useHouse();
  if (!keeping || !why) return <p>{words.classUnknown}</p>;
  const figures = [
    { name: words.atLeast, value: words.time(keeping.lowDays) },
    { name: words.likely, value: words.time(keeping.likelyDays) },
    { name: words.atMost, value: words.time(keeping.highDays) },
    { name: words.usedUp, value: `${format.count(Math.round(why.usedPart * 100))} %` },
  ];
  return (
    <>
      <p>
        <b>
          {keeping.isUnfit
            ? words.unfit
            : keeping.likelyDays === 0
              ? words.eatNow(keeping.pastDays)
              : words.keeps(words.time(keeping.likelyDays), String(keeping.eatFirstYear))}
        </b>
        {keeping.isEstimate ? ` ${words.estimate}` : ''}
      </p>
      <dl className="figures">
        {figures.map(({ name, value }) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
      <h3>{words.why}</h3>
      <ul>
        <li>{words.packs[why.packClass] ?? why.packClass}</li>
        {why.reasons.map((reason) => (
          <li key={reason}>{words.reasons[reason] ?? reason}</li>
        ))}
      </ul>
    </>
  );
}

function Helps({ helps }: Pick<KeepingSheet, 'helps'>) {
  const words = useKeepingText();
  if (helps.length === 0) return null;
  return (
    <>
      <h3>{words.helps}</h3>
      <ul>
        {helps.map(({ way, place, gainDays }) => (
          <li key={`${way} ${place?.id}`}>
            {`${way === 'move' ? words.moveTo(place?.name ?? '') : words.ways[way]}: +${words.time(gainDays)}`}
          </li>
        ))}
      </ul>
    </>
  );
}

/** Where it stood, and what each stay used up of its life. */
function Stays({ stays }: Pick<KeepingSheet, 'stays'>) {
  const words = useKeepingText();
  const { format } = useHouse();
  return (
    <Ledger
      caption={words.stays}
      columns={[
        { name: words.place },
        { name: words.days, isNumber: true },
        { name: words.used, isNumber: true },
      ]}
      rows={stays.map((stay) => ({
        key: `${stay.fromOn} ${stay.place?.id}`,
        cells: [
          <span key="place">
            {stay.place?.name ?? words.unknownPlace}
            <span className="soft block">
              {words.since(
                format.day(stay.fromOn),
                sayDegrees(stay.steadyTenths, format),
                words.known[stay.known] ?? '',
              )}
            </span>
          </span>,
          format.count(stay.days),
          format.count(stay.usedDays),
        ],
      }))}
    />
  );
}
