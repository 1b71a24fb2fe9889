import { addDays } from '../../text/format.ts';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { AsTable, Ledger } from '../../ui/pieces.tsx';
import { type Coverage, type CoveredGroup, inOrderOfEnd } from './coverage.ts';

const LEFT = 92;
const WIDTH = 252;
const THREADS = ['var(--life-5)', 'var(--life-4)', 'var(--life-3)', 'var(--life-2)'] as const;
const MOST_THREADS = 4; // beyond four eaters a band shows the household's own days as one thread

type Thread = { id: string; days: number | null };

const xOf = (days: number): number => LEFT + (Math.min(days, 365) / 365) * WIDTH;

/** Twelve months from today, one band a food group, one thread an eater that ends on the last day they are fed. */
export function YearRibbon({ coverage, targetDays }: { coverage: Coverage; targetDays: number }) {
  const t = useText();
  const { format } = useHouse();
  const today = format.today();
  const groups = inOrderOfEnd(coverage.groups);
  const isThreaded = coverage.eaters.length <= MOST_THREADS;
  const threads = isThreaded ? coverage.eaters.length : 1;
  const bandHeight = Math.max(threads * 6 + 16, 34);
  const bottom = 26 + groups.length * bandHeight;
  return (
    <figure className="stack">
      <h2>{t.yearAhead}</h2>
      <svg viewBox={`0 0 350 ${bottom + 22}`} role="img" aria-label={t.ribbonLabel}>
        <Months today={today} bottom={bottom} />
        {targetDays < 365 ? (
          <path d={`M${xOf(targetDays)} 20V${bottom}`} stroke="var(--ink)" strokeDasharray="1 3" />
        ) : null}
        {groups.map((group, at) => (
          <Band
            key={group.group}
            group={group}
            threads={
              isThreaded
                ? group.endsByEater.map(({ id, wholeDays }) => ({ id, days: wholeDays }))
                : [{ id: 'all', days: group.wholeDays }]
            }
            top={26 + at * bandHeight}
            isFirst={at === 0}
          />
        ))}
        <path d={`M${LEFT} 20V${bottom}`} stroke="var(--thread)" strokeWidth="1.5" />
        <text x={LEFT} y={bottom + 16} textAnchor="middle" className="b" style={{ fill: 'var(--thread)' }}>
          {t.today}
        </text>
        <text
          x={Math.min(Math.max(xOf(targetDays), 190), 270)}
          y={bottom + 16}
          textAnchor="middle"
          className="s"
        >
          {t.targetOf(targetDays)}
        </text>
      </svg>
      {isThreaded ? (
        <figcaption className="key mark soft">
          {coverage.eaters.map((eater, at) => (
            <span key={eater.id}>
              <i style={{ background: THREADS[at] }} />
              {eater.name}
            </span>
          ))}
        </figcaption>
      ) : null}
      <AsTable>
        <Ledger
          caption={t.yearAhead}
          columns={[
            { name: t.foodGroup },
            { name: t.stock, isNumber: true },
            { name: t.lasts, isNumber: true },
            { name: t.until, isNumber: true },
          ]}
          rows={groups.map((group) => ({
            key: group.group,
            cells: [
              t.groups[group.group] ?? group.group,
              format.mass(group.stockGrams),
              group.wholeDays === null ? t.noEnd : t.nDays(group.wholeDays),
              group.wholeDays === null ? '' : format.shortDay(addDays(today, group.wholeDays)),
            ],
          }))}
        />
      </AsTable>
    </figure>
  );
}

function Months({ today, bottom }: { today: string; bottom: number }) {
  const { format } = useHouse();
  const firsts = Array.from({ length: 365 }, (_, days) => ({ days, iso: addDays(today, days) })).filter(
    ({ iso, days }) => iso.endsWith('-01') && days > 0,
  );
  return (
    <>
      {firsts.map(({ days, iso }, at) => {
        const next = firsts[at + 1]?.days ?? 365;
        return (
          <g key={iso}>
            <path d={`M${xOf(days)} 22V${bottom}`} stroke="var(--hair)" />
            {next - days > 12 ? (
              <text x={xOf((days + next) / 2)} y="14" textAnchor="middle" className="s">
                {format.month(iso)}
              </text>
            ) : null}
          </g>
        );
      })}
    </>
  );
}

type BandProps = { group: CoveredGroup; threads: readonly Thread[]; top: number; isFirst: boolean };

function Band({ group, threads, top, isFirst }: BandProps) {
  const t = useText();
  const { format } = useHouse();
  const { wholeDays } = group;
  const end = wholeDays === null || wholeDays > 365 ? null : wholeDays;
  // The word stands behind the longest thread; near the edge there is no room, and the table says it.
  const longest = Math.max(...threads.map(({ days }) => days ?? 366));
  const labelX = xOf(longest) + 6;
  return (
    <g>
      <text x="0" y={top + threads.length * 3 + 4} className={isFirst ? 't16 b' : 't16'}>
        {t.groupsShort[group.group] ?? group.group}
      </text>
      {threads.map(({ id, days }, at) => {
        const y = top + at * 6;
        const isLong = days === null || days > 365;
        return (
          <g key={id} fill={THREADS[at]}>
            <rect x={LEFT} y={y} width={xOf(days ?? 365) - LEFT} height="5" />
            {isLong ? <path d={`M344 ${y}l5 2.5-5 2.5z`} /> : null}
          </g>
        );
      })}
      {end !== null && labelX < 296 ? (
        <text x={labelX} y={top + threads.length * 3 + 4} className={isFirst ? 'halo b' : 'halo'}>
          {end === 0 ? t.none : format.shortDay(addDays(format.today(), end))}
        </text>
      ) : null}
    </g>
  );
}
