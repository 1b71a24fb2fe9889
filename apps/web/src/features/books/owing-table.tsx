import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Ledger, State } from '../../ui/pieces.tsx';
import { useBooksText } from './words.ts';

export type HouseholdBalance = {
  readonly seat: number;
  readonly householdId: string;
  readonly household: string;
  readonly balanceMinorUnits: number;
  readonly days0To30MinorUnits: number;
  readonly days31To60MinorUnits: number;
  readonly days61To90MinorUnits: number;
  readonly over90DaysMinorUnits: number;
  readonly creditMinorUnits: number;
};

const sumOf = (rows: readonly HouseholdBalance[], of: (row: HouseholdBalance) => number) =>
  rows.reduce((sum, row) => sum + of(row), 0);

/** Every household that is not at 0.00, by the age of what is unpaid; each opens the entries behind its balance. */
export function Owing({ households }: { households: readonly HouseholdBalance[] }) {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const rows = households.filter(({ balanceMinorUnits }) => balanceMinorUnits !== 0);
  const settled = households.length - rows.length;
  const amount = (minorUnits: number) => (minorUnits === 0 ? '' : format.money(minorUnits));
  if (rows.length === 0) return <p>{t.nobodyOwes}</p>;
  return (
    <Ledger
      caption={t.whoOwes}
      columns={[
        { name: t.household },
        { name: t.sinceDays.d30, isNumber: true },
        { name: t.sinceDays.d60, isNumber: true },
        { name: t.sinceDays.d90, isNumber: true },
        { name: t.sinceDays.more, isNumber: true },
        { name: t.inCredit, isNumber: true },
        { name: t.owes, isNumber: true },
      ]}
      rows={[
        ...rows.map((row) => ({
          key: row.householdId,
          cells: [
            <Link
              key="household"
              to="/s/$storehouse/books/entries"
              params={{ storehouse }}
              search={{ household: row.householdId }}
            >
              {row.household}
            </Link>,
            amount(row.days0To30MinorUnits),
            amount(row.days31To60MinorUnits),
            amount(row.days61To90MinorUnits),
            amount(row.over90DaysMinorUnits),
            amount(row.creditMinorUnits),
            <b key="owes">{format.money(Math.max(0, row.balanceMinorUnits))}</b>,
          ],
        })),
        ...(settled > 0
          ? [
              {
                key: 'settled',
                cells: [
                  <State key="settled" kind="well" word={t.settledCount(settled)} />,
                  ...['', '', '', ''],
                  '',
                  format.money(0),
                ],
              },
            ]
          : []),
        {
          key: 'sum',
          isSum: true,
          cells: [
            t.all,
            format.money(sumOf(rows, (row) => row.days0To30MinorUnits)),
            format.money(sumOf(rows, (row) => row.days31To60MinorUnits)),
            format.money(sumOf(rows, (row) => row.days61To90MinorUnits)),
            format.money(sumOf(rows, (row) => row.over90DaysMinorUnits)),
            format.money(sumOf(rows, (row) => row.creditMinorUnits)),
            format.money(sumOf(rows, (row) => Math.max(0, row.balanceMinorUnits))),
          ],
        },
      ]}
    />
  );
}
