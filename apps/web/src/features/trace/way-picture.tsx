import { spellCode } from '@sheafbook/units';
import { Fragment } from 'react';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import type { Way } from './queries.ts';
import { useOwnerName } from './say.ts';
import './trace.css';
import { type Block, drawWay, type Stop, stopsOf } from './way-layout.ts';
import { useTraceText } from './words.ts';

/** Picture 6: bands as wide as their grams, from the supplier to where each gram is; the numbered list says the same. */
export function WayPicture({ way, what }: { way: Way; what: string }) {
  const words = useTraceText();
  const stops = stopsOf(way);
  const drawing = drawWay(stops);
  const numberOf = new Map(drawing.blocks.map(({ stop }, at) => [stop.key, at + 1]));
  return (
    <section>
      <h2>{words.wayTitle}</h2>
      <div className="way">
        <svg
          className="way-picture"
          viewBox={`-2 -2 ${drawing.width + 4} ${drawing.height + 4}`}
          role="img"
          aria-label={words.picture(what)}
        >
          {drawing.ribbons.map(({ key, path, isHeld }) => (
            <path key={key} d={path} className={isHeld ? 'band held' : 'band'} />
          ))}
          {drawing.blocks.map((block, at) => (
            <Hem key={block.stop.key} block={block} no={at + 1} />
          ))}
        </svg>
        <div>
          {drawing.columns.map(({ column }) => (
            <Fragment key={column}>
              <h3>{words.columns[column]}</h3>
              <ol className="list stops">
                {drawing.blocks
                  .filter(({ stop }) => stop.column === column)
                  .map(({ stop }) => (
                    <StopItem
                      key={stop.key}
                      stop={stop}
                      way={way}
                      no={numberOf.get(stop.key) ?? 0}
                      to={stops.bands.flatMap((band) =>
                        band.from === stop.key ? (numberOf.get(band.to) ?? []) : [],
                      )}
                    />
                  ))}
              </ol>
            </Fragment>
          ))}
        </div>
      </div>
    </section>
  );
}

/** A hem where a band is held, tied with a cord where it is on hold, and its number. */
function Hem({ block: { x, y, height, stop }, no }: { block: Block; no: number }) {
  return (
    <g>
      <rect className={stop.isHeld ? 'hem held' : 'hem'} x={x} y={y} width="22" height={height} />
      <text x={x + 11} y={y + height / 2} textAnchor="middle" dominantBaseline="central">
        {no}
      </text>
    </g>
  );
}

function StopItem({ stop, way, no, to }: { stop: Stop; way: Way; no: number; to: readonly number[] }) {
  const words = useTraceText();
  const { format } = useHouse();
  const codes = stop.kind === 'container' ? stop.things.flatMap(({ vessel }) => vessel?.code ?? []) : [];
  return (
    <li value={no}>
      <b>
        {no} · <StopName stop={stop} way={way} />
      </b>{' '}
      {stop.isHeld ? <State kind="wrong" word={words.onHold} /> : null}
      <span className="block">
        {format.count(stop.grams)} g ({format.mass(stop.grams)})
        {to.length === 0 ? '' : ` · ${words.goesTo(to.map(words.stop).join(', '))}`}
      </span>
      {codes.length === 0 ? null : (
        <details>
          <summary>{words.codes}</summary>
          <p className="code-list">{codes.map(spellCode).join(', ')}</p>
        </details>
      )}
    </li>
  );
}

function StopName({ stop, way }: { stop: Stop; way: Way }) {
  const words = useTraceText();
  const ownerName = useOwnerName();
  const { kind, things, lotId } = stop;
  const [only] = things;
  if (kind === 'supplier' || kind === 'share') {
    const lot = way.lots.find(({ id }) => id === lotId);
    return kind === 'supplier' && lot?.supplier ? lot.supplier.name : words.stops[kind];
  }
  if (kind === 'bag')
    return things.length === 1 && only?.vessel
      ? words.bag(only.vessel.bagNo, spellCode(only.vessel.code))
      : words.bags(things.length);
  const owner = ownerName(stop);
  if (kind === 'container') return `${words.containers(things.length)}, ${owner}`;
  if (stop.pantry !== '') return `${words.givenTo(stop.pantry)}, ${owner}`;
  return `${words.stops[kind] ?? kind}, ${owner}`;
}
