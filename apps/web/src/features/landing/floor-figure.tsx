import { useHouse } from '../../ui/house.ts';
import { AsTable, Ledger } from '../../ui/pieces.tsx';
import { scaleText } from './scale.ts';
import type { Floor } from './use-landing.ts';
import { useLandingText } from './words.ts';

const IN_ROW = 10;
const MOST_ROWS = 3;
const [STEP, ROW] = [35, 43];
const SACK =
  'M2.4 1.5Q15.5-1.4 28.6 1.5l2.5-1.7Q30.200 11 31.100 22l-2.500-1.700Q15.500 23.400 2.400 20.500l-2.500 1.700Q.800 11-.1 0Z';

type Kind = 'kept' | 'noted' | 'held' | 'refused' | 'waiting' | 'wrong' | 'now' | 'coming';

/** What became of each sack in turn; the one on the scale is the first that nobody has written down. */
export function kindsOf({ counted, bags, waiting }: Floor): Kind[] {
  const known: Kind[] = [
    ...bags.map(({ decision, isOnHold, condition }): Kind => {
      if (decision === 'refused') return 'refused';
      if (isOnHold) return 'held';
      return condition === 'dry' && decision === 'accepted' ? 'kept' : 'noted';
    }),
    ...waiting.map(({ refusal }): Kind => (refusal === null ? 'waiting' : 'wrong')),
  ];
  const rest = Math.max(0, (counted ?? known.length) - known.length);
  return [...known, ...Array.from({ length: rest }, (_, at): Kind => (at === 0 ? 'now' : 'coming'))];
}

/** The sacks as they stand on the floor, ten in a row; of many, the rows around the one on the scale. */
export function FloorFigure({ floor }: { floor: Floor }) {
  const t = useLandingText();
  const kinds = kindsOf(floor);
  const now = kinds.indexOf('now') < 0 ? kinds.length - 1 : kinds.indexOf('now');
  const rows = Math.ceil(kinds.length / IN_ROW);
  const firstRow = Math.max(0, Math.min(Math.floor(now / IN_ROW) - 1, rows - MOST_ROWS));
  const shown = kinds.slice(firstRow * IN_ROW, (firstRow + MOST_ROWS) * IN_ROW);
  const height = Math.ceil(shown.length / IN_ROW) * ROW - 2;
  return (
    <figure>
      <svg viewBox={`-2 -4 354 ${height + 6}`} role="img" aria-label={t.floorLabel(now + 1, kinds.length)}>
        {shown.map((kind, position) => {
          const at = firstRow * IN_ROW + position;
          const x = (position % IN_ROW) * STEP;
          const y = Math.floor(position / IN_ROW) * ROW;
          return (
            <g key={at} transform={`translate(${x} ${y})`}>
              <FloorSack kind={kind} />
              <text x="15.5" y="37" textAnchor="middle" className={kind === 'now' ? 'b' : 's'}>
                {at + 1}
              </text>
            </g>
          );
        })}
      </svg>
    </figure>
  );
}

/** The same as a table, for screen readers and for reading back what was weighed. */
export function FloorTable({ floor, unit }: { floor: Floor; unit: 'lb' | 'kg' }) {
  const t = useLandingText();
  const { format } = useHouse();
  const kinds = kindsOf(floor);
  const masses = [
    ...floor.bags.map(({ netGrams }) => netGrams),
    ...floor.waiting.map(({ act: { bag } }) => (bag.grossGrams ?? 0) - (bag.tareGrams ?? 0)),
  ];
  return (
    <AsTable>
      <Ledger
        caption={t.bagsOfFloor}
        columns={[{ name: t.bag }, { name: t.standing }, { name: unit, isNumber: true }]}
        rows={kinds.map((kind, at) => ({
          key: String(at),
          cells: [
            format.count(at + 1),
            t.kinds[kind],
            masses[at] === undefined ? '' : scaleText(masses[at], unit, format.language),
          ],
        }))}
      />
    </AsTable>
  );
}

function FloorSack({ kind }: { kind: Kind }) {
  if (kind === 'coming')
    return <path d={SACK} fill="none" stroke="var(--edge)" strokeWidth="1" strokeDasharray="2 3" />;
  if (kind === 'refused')
    return (
      <>
        <path d={SACK} fill="none" stroke="var(--edge)" strokeWidth="1.2" />
        <path d="M8 5l15 12M23 5 8 17" stroke="var(--wrong)" strokeWidth="2" />
      </>
    );
  const isPale = kind === 'now' || kind === 'waiting' || kind === 'wrong';
  return (
    <>
      <path
        d={SACK}
        fill={isPale ? 'var(--raised)' : 'var(--cloth)'}
        stroke={kind === 'now' || kind === 'wrong' ? 'var(--ink)' : 'var(--cloth-edge)'}
        strokeWidth={kind === 'now' || kind === 'wrong' ? 1.5 : 1}
      />
      {kind === 'now' ? null : (
        <path d="M9.300 1v20M12.800 1v20" stroke="var(--stripe)" strokeWidth="1.5" opacity=".8" />
      )}
      {kind === 'noted' ? <path d="M20 16.500h7" stroke="var(--ink)" strokeWidth="2" /> : null}
      {kind === 'held' ? <path d="M1 11h30M16 8v6" stroke="var(--ink)" strokeWidth="2" /> : null}
      {kind === 'waiting' ? (
        <path d="M22.500 6v5l3 2" fill="none" stroke="var(--ink)" strokeWidth="1.5" />
      ) : null}
      {kind === 'wrong' ? <path d="M23 5v8M23 16v1.500" stroke="var(--wrong)" strokeWidth="2.5" /> : null}
    </>
  );
}
