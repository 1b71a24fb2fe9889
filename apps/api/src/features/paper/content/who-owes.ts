import { sumOf } from '@sheafbook/units';
import { presentBalanceRow } from '../../statement/present.ts';
import { readBalances } from '../../statement/use-cases.ts';
import { figures, table, text } from '../content.ts';
import { type Desk, type MadePaper, subject } from './making.ts';

type Row = ReturnType<typeof presentBalanceRow>;

const AT_ONCE = 200;

/** The treasurer's list: with a household's own statement the only paper that names a debt (job map section 14). */
export async function makeWhoOwes({ context, formats }: Desk): Promise<MadePaper> {
  const rows: Row[] = [];
  for (let after: number | undefined = 0; after !== undefined; ) {
    const page = await readBalances(context, { after, limit: AT_ONCE, owing: false, format: 'json' });
    rows.push(...page.balances.map(presentBalanceRow));
    after = page.next === null ? undefined : Number(page.next);
  }
  const listed = rows.filter((row) => row.balanceMinorUnits !== 0);
  const { words } = formats;
  const columns = [
    (row: Row) => row.days0To30MinorUnits,
    (row: Row) => row.days31To60MinorUnits,
    (row: Row) => row.days61To90MinorUnits,
    (row: Row) => row.over90DaysMinorUnits,
    (row: Row) => row.creditMinorUnits,
    (row: Row) => row.balanceMinorUnits,
  ];
  const owed = sumOf(listed.map((row) => Math.max(0, row.balanceMinorUnits)));
  const { whoOwes } = words;
  const content = {
    about: [],
    blocks: [
      { kind: 'lead', before: whoOwes.lead, strong: formats.money(owed), after: formats.currency } as const,
      text(whoOwes.privately),
      table(
        [
          { name: words.household, isKey: true },
          ...figures(
            whoOwes.days0To30,
            whoOwes.days31To60,
            whoOwes.days61To90,
            whoOwes.over90,
            whoOwes.credit,
            whoOwes.balance,
          ),
        ],
        [
          ...listed.map((row) => ({
            cells: [
              words.seatName(row.household, row.seat),
              ...columns.map((amountOf) => formats.money(amountOf(row))),
            ],
          })),
          {
            kind: 'sum' as const,
            cells: [words.total, ...columns.map((amountOf) => formats.money(sumOf(listed.map(amountOf))))],
          },
        ],
      ),
    ],
  };
  return { subject: subject('who-owes', {}), contentWith: () => content };
}
