import { sacksOf } from './line-facts.ts';

const SACK =
  'M2.4 3.9Q9.5 2.2 16.6 3.9l1.5 -1Q17.5 9.5 18.1 16l-1.5 -1Q9.5 16.8 2.4 15.1l-1.5 1Q1.5 9.5 .9 3Z';
const MOST = 8;

/** A line's sacks in a row, the last one filled by its share; beyond eight, a figure says how many stand before them. */
export function MiniSacks({ units, bagUnits }: { units: number; bagUnits: number }) {
  const { full, partUnits } = sacksOf(units, bagUnits);
  const count = full + (partUnits > 0 ? 1 : 0);
  const drawn = Math.min(count, MOST);
  const hidden = count - drawn;
  const lead = hidden > 0 ? 34 : 0;
  return (
    <svg viewBox={`0 0 ${lead + drawn * 20} 20`} width={lead + drawn * 20} height="20" aria-hidden="true">
      {hidden > 0 ? (
        <text x="0" y="15" className="s">
          {`${hidden} +`}
        </text>
      ) : null}
      {Array.from({ length: drawn }, (_, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a sack is its place in the row
        <g key={at} transform={`translate(${lead + at * 20} 0)`}>
          <path
            d={SACK}
            fill={at < drawn - 1 || partUnits === 0 ? 'var(--cloth)' : 'none'}
            stroke={at < drawn - 1 || partUnits === 0 ? 'var(--cloth-edge)' : 'var(--ink)'}
          />
          {at === drawn - 1 && partUnits > 0 ? (
            <rect x="2" y="4.5" width={(15 * partUnits) / bagUnits} height="10" fill="var(--cloth)" />
          ) : (
            <path d="M6.1 4v11M9.6 4v11" stroke="var(--stripe)" strokeWidth="1.5" opacity=".8" />
          )}
        </g>
      ))}
    </svg>
  );
}
