import { daysBetween, sumOf } from '@sheafbook/units';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { CsvLink } from '../../ui/csv-link.tsx';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger, State } from '../../ui/pieces.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { PaperLinks } from '../paper/paper-links.tsx';
import { ageingQuery, type Balance, type Balances } from './queries.ts';
import { useAgeingText } from './words.ts';

/** Who owes, since when, and how old each part of it is. */
export function Ageing() {
  const words = useAgeingText();
  const { storehouse } = useHouse();
  const ageing = useQuery(ageingQuery({ storehouse }));
  return (
    <BooksPage title={words.ageing}>
      <Loaded isPage reading={ageing}>
        {(body) => <Sheet body={body} />}
      </Loaded>
    </BooksPage>
  );
}

const byAge = (a: Balance, b: Balance): number =>
  (a.owesSinceOn ?? '').localeCompare(b.owesSinceOn ?? '') || a.seat - b.seat;

function Sheet({ body }: { body: Balances }) {
  const words = useAgeingText();
  const { format } = useHouse();
  const [search, setSearch] = useState('');
  const owing = body.balances.filter(({ balanceMinorUnits }) => balanceMinorUnits > 0).toSorted(byAge);
  const total = sumOf(owing.map(({ balanceMinorUnits }) => balanceMinorUnits));
  const [oldest] = owing;
  const isFound = ({ household }: Balance) =>
    household.toLocaleLowerCase().includes(search.trim().toLocaleLowerCase());
  const found = body.balances.filter(isFound);
  return (
    <>
      <h1>
        {owing.length === 0 ? words.nobody : words.title(owing.length, format.money(total), body.currency)}
      </h1>
      {oldest?.owesSinceOn ? <p>{words.oldest(oldest.household, format.day(oldest.owesSinceOn))}</p> : null}
      <Field
        label={words.search}
        type="search"
        value={search}
        onChange={(event) => setSearch(event.target.value)}
      />
      {found.length === 0 ? <p className="soft">{words.noneFound}</p> : null}
      <Owing rows={owing.filter(isFound)} />
      <div className="cols">
        <Credit
          rows={found.filter(({ balanceMinorUnits }) => balanceMinorUnits < 0)}
          currency={body.currency}
        />
        <References rows={found} />
      </div>
      <p className="soft">
        {words.how} {words.seen}
      </p>
      <PaperLinks papers={[{ kind: 'who-owes', path: 'balances/paper' }]} />
      <div className="actions no-print">
        <CsvLink list="balances">{words.asCsv}</CsvLink>
      </div>
    </>
  );
}

function Owing({ rows }: { rows: readonly Balance[] }) {
  const words = useAgeingText();
  const { storehouse, format } = useHouse();
  const todayOn = format.today();
  if (rows.length === 0) return null;
  const amounts = (row: Pick<Balance, (typeof AGES)[number]>) =>
    AGES.map((age) => (row[age] === 0 ? '' : format.money(row[age])));
  const sums = Object.fromEntries(AGES.map((age) => [age, sumOf(rows.map((row) => row[age]))]));
  return (
    <Ledger
      caption={words.ageing}
      columns={[
        { name: words.household },
        { name: words.since },
        { name: words.owes, isNumber: true },
        { name: words.days0, isNumber: true },
        { name: words.days31, isNumber: true },
        { name: words.days61, isNumber: true },
        { name: words.days90, isNumber: true },
      ]}
      rows={[
        ...rows.map((row) => {
          const days = row.owesSinceOn === null ? 0 : daysBetween(row.owesSinceOn, todayOn);
          const kind = days > 90 ? 'wrong' : days > 30 ? 'watch' : null;
          return {
            key: row.householdId,
            cells: [
              <Link
                key="household"
                to="/s/$storehouse/books/entries"
                params={{ storehouse }}
                search={{ household: row.householdId }}
              >
                {row.leftOn === null ? row.household : `${row.household}, ${words.left}`}
              </Link>,
              <span key="since" className="nb">
                {row.owesSinceOn === null ? '' : format.day(row.owesSinceOn)}{' '}
                {kind === null ? null : <State kind={kind} word={words.late(days)} />}
              </span>,
              <b key="owes">{format.money(row.balanceMinorUnits)}</b>,
              ...amounts(row),
            ],
          };
        }),
        {
          key: 'sum',
          isSum: true,
          cells: [
            words.together,
            '',
            format.money(sumOf(rows.map((row) => row.balanceMinorUnits))),
            ...AGES.map((age) => format.money(sums[age] ?? 0)),
          ],
        },
      ]}
    />
  );
}

const AGES = [
  'days0To30MinorUnits',
  'days31To60MinorUnits',
  'days61To90MinorUnits',
  'over90DaysMinorUnits',
] as const;

function Credit({ rows, currency }: { rows: readonly Balance[]; currency: string }) {
  const words = useAgeingText();
  const { format } = useHouse();
  if (rows.length === 0) return null;
  const total = sumOf(rows.map(({ balanceMinorUnits }) => -balanceMinorUnits));
  return (
    <section className="stack">
      <h2>{words.credit}</h2>
      <p>{words.creditWords(format.money(total), currency)}</p>
      <Ledger
        caption={words.credit}
        columns={[{ name: words.household }, { name: words.isOwed, isNumber: true }]}
        rows={rows.map((row) => ({
          key: row.householdId,
          cells: [row.household, format.money(-row.balanceMinorUnits)],
        }))}
      />
    </section>
  );
}

function References({ rows }: { rows: readonly Balance[] }) {
  const words = useAgeingText();
  if (rows.length === 0) return null;
  return (
    <section className="stack">
      <h2>{words.references}</h2>
      <p className="soft">{words.referencesWords}</p>
      <Ledger
        caption={words.references}
        columns={[{ name: words.household }, { name: words.reference }]}
        rows={rows.map((row) => ({
          key: row.householdId,
          cells: [row.household, <b key="word">{row.reference}</b>],
        }))}
      />
    </section>
  );
}
