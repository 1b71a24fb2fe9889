import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import type { BuyLineBody, BuyPage, FillLine } from './buy-body.ts';
import { foodNameOf } from './food-name.ts';
import { unitsOf } from './line-facts.ts';
import {
  type Household,
  type HouseholdPledge,
  householdPledgesQuery,
  householdsQuery,
} from './run-queries.ts';
import { useRunText } from './words.ts';
import './run.css';

type PledgesProps = { buy: BuyPage; line: BuyLineBody; fill: FillLine | undefined };

/** Who wants how much of one food, and what the bags as they fill would give. */
export function RunPledges({ buy, line, fill }: PledgesProps) {
  const { storehouse } = useHouse();
  const pledges = useQuery(householdPledgesQuery({ storehouse, buy: buy.id }));
  const households = useQuery(householdsQuery({ storehouse }));
  return (
    <Loaded reading={joined(pledges, households)}>
      {([all, known]) => (
        <PledgeTable
          line={line}
          fill={fill}
          pledges={all.filter(({ buyLineId }) => buyLineId === line.id)}
          households={known.filter(({ leftOn }) => leftOn === null)}
        />
      )}
    </Loaded>
  );
}

function PledgeTable(at: {
  line: BuyLineBody;
  fill: FillLine | undefined;
  pledges: readonly HouseholdPledge[];
  households: readonly Household[];
}) {
  const words = useRunText();
  const { format } = useHouse();
  const { line, fill, pledges, households } = at;
  const unit = line.massUnit === 'kg' ? 'kg' : 'lb';
  const rows = pledges
    .map((pledge) => ({
      pledge,
      least: unitsOf(pledge.leastGrams, unit),
      wanted: unitsOf(pledge.wantedGrams, unit),
      most: unitsOf(pledge.mostGrams, unit),
      gets: fill?.pledges?.find(({ pledgeId }) => pledgeId === pledge.id)?.units ?? 0,
    }))
    .toSorted((a, b) => a.pledge.seat - b.pledge.seat);
  const sum = (of: (row: (typeof rows)[number]) => number) => rows.reduce((total, row) => total + of(row), 0);
  const most = Math.max(...rows.map((row) => row.most), 1);
  const title = `${words.pledges}: ${foodNameOf(line, format.language)}`;
  return (
    <section className="stack">
      <div className="row">
        <h2>{title}</h2>
        {rows.length > 0 ? (
          <span className="soft">
            {words.pledgesInAll(
              format.count(sum((row) => row.least)),
              `${format.count(sum((row) => row.most))} ${unit}`,
            )}
          </span>
        ) : null}
      </div>
      {rows.length === 0 ? (
        <p>{words.noPledges}</p>
      ) : (
        <Searched
          items={rows}
          wordsOf={({ pledge }) => pledge.householdName}
          find={words.findHousehold}
          none={words.nothingFound}
        >
          {(shown) => (
            <div className="household-pledges">
              <Ledger
                caption={title}
                columns={[
                  { name: words.household },
                  { name: words.threeColumn },
                  { name: words.wantedColumn, isNumber: true },
                  { name: `${words.fillColumn}, ${unit}`, isNumber: true },
                ]}
                rows={[
                  ...shown.map((row) => ({
                    key: row.pledge.id,
                    cells: [
                      row.pledge.householdName,
                      <Reach key="reach" row={row} most={most} unit={unit} />,
                      format.count(row.wanted),
                      <Gets key="gets" gets={row.gets} wanted={row.wanted} />,
                    ],
                  })),
                  {
                    key: 'sum',
                    isSum: true,
                    cells: [
                      words.inOf(rows.length, households.length),
                      '',
                      format.count(sum((row) => row.wanted)),
                      format.count(sum((row) => row.gets)),
                    ],
                  },
                ]}
              />
            </div>
          )}
        </Searched>
      )}
    </section>
  );
}

/** Least to most as a bar, what is wanted as a stroke across it. */
function Reach(at: { row: { least: number; wanted: number; most: number }; most: number; unit: string }) {
  const { row, most, unit } = at;
  const x = (units: number) => 2 + (units / most) * 154;
  return (
    <svg viewBox="0 0 158 18" role="img" aria-label={`${row.least} – ${row.wanted} – ${row.most} ${unit}`}>
      <path d="M0 14H158" stroke="var(--hair)" />
      <rect
        x={x(row.least)}
        y="7"
        width={Math.max(x(row.most) - x(row.least), 1)}
        height="5"
        fill="var(--cloth)"
        stroke="var(--cloth-edge)"
        strokeWidth=".75"
      />
      <path d={`M${x(row.wanted)} 3v13`} stroke="var(--ink)" strokeWidth="2.5" />
    </svg>
  );
}

function Gets({ gets, wanted }: { gets: number; wanted: number }) {
  const { format } = useHouse();
  const more = gets - wanted;
  return (
    <>
      <b>{format.count(gets)}</b>
      {more === 0 ? null : <span className="u">{` ${more > 0 ? '+' : '−'}${Math.abs(more)}`}</span>}
    </>
  );
}
