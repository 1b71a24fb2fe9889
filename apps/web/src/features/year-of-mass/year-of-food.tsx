import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { Figures, Ledger } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { useBooksText } from '../books/words.ts';
import { type Part, type Whose, type YearOfMass, yearOfMassQuery, yearsMovementsQuery } from './queries.ts';
import { useYearOfMassText } from './words.ts';

const KEEPERS = ['coordinator', 'packing_lead', 'treasurer', 'reviewer'];

/** The year on one page: what was there, came, was eaten, given and lost, and what is left; each number opens its movements. */
export function YearOfFood() {
  const words = useYearOfMassText();
  const { storehouse, household, duties, format } = useHouse();
  const thisYear = Number(format.today().slice(0, 4));
  const [year, setYear] = useState(thisYear);
  const seesStore = duties.some((duty) => KEEPERS.includes(duty));
  const [of, setOf] = useState<Whose>(household === null ? 'store' : 'household');
  useTitle(words.title);
  return (
    <>
      <Link className="who" to="/s/$storehouse/giving/year" params={{ storehouse }}>
        <BackIcon />
        {words.gifts}
      </Link>
      {household === null && !seesStore ? (
        <h1>{words.notYours}</h1>
      ) : (
        <>
          <Year year={year} of={of} />
          {household !== null && seesStore ? (
            <Choice
              label={words.whose}
              value={of}
              options={(['household', 'store'] as const).map((value) => ({
                value,
                name: words.owners[value],
              }))}
              onChange={(value) => setOf(value as Whose)}
            />
          ) : null}
          <div className="actions">
            <button type="button" className="btn" onClick={() => setYear(year - 1)}>
              {words.year(year - 1)}
            </button>
            {year < thisYear ? (
              <button type="button" className="btn" onClick={() => setYear(year + 1)}>
                {words.year(year + 1)}
              </button>
            ) : null}
          </div>
        </>
      )}
    </>
  );
}

function Year({ year, of }: { year: number; of: Whose }) {
  const words = useYearOfMassText();
  const { storehouse, format } = useHouse();
  const isRunning = format.today().startsWith(`${year}-`);
  const reading = useQuery(yearOfMassQuery({ storehouse }, { year, of }));
  return (
    <Loaded isPage reading={reading}>
      {(mass) => (
        <>
          <h1>{(isRunning ? words.soFar : words.stands)[of](year, format.mass(mass.closingGrams))}</h1>
          <p className="soft">{words.adds}</p>
          <Figures rows={[{ name: words.opening, value: format.mass(mass.openingGrams) }]} />
          <Numbers mass={mass} of={of} parts={['landed', 'from-others', 'changed']} title={words.came} />
          <Numbers mass={mass} of={of} parts={['eaten', 'given', 'lost', 'to-others']} title={words.went} />
          <Figures
            rows={[{ name: isRunning ? words.now : words.closing, value: format.mass(mass.closingGrams) }]}
          />
          {mass.lost.length === 0 ? null : (
            <p className="soft">
              {words.lostBy}{' '}
              {mass.lost.map(({ by, grams }) => `${words.ways[by] ?? by} ${format.mass(grams)}`).join(', ')}
            </p>
          )}
        </>
      )}
    </Loaded>
  );
}

const gramsOf = (mass: YearOfMass): Record<Part, number> => ({
  landed: mass.landedGrams,
  'from-others': mass.fromOthersGrams,
  changed: mass.changedGrams,
  eaten: mass.eatenGrams,
  given: mass.givenGrams,
  lost: mass.lostGrams,
  'to-others': mass.toOthersGrams,
});

type NumbersProps = {
  readonly mass: YearOfMass;
  readonly of: Whose;
  readonly parts: readonly Part[];
  readonly title: string;
};

/** Each number with its movements behind it. */
function Numbers({ mass, of, parts, title }: NumbersProps) {
  const words = useYearOfMassText();
  const { format } = useHouse();
  const grams = gramsOf(mass);
  return (
    <section className="stack">
      <h2>{title}</h2>
      {parts.map((part) => (
        <Opened
          key={`${mass.year} ${of} ${part}`}
          part={part}
          of={of}
          year={mass.year}
          title={`${words.parts[of][part]}: ${format.mass(grams[part])}`}
        />
      ))}
    </section>
  );
}

function Opened({ part, of, year, title }: { part: Part; of: Whose; year: number; title: string }) {
  const [isOpen, setOpen] = useState(false);
  return (
    <details onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{title}</summary>
      {isOpen ? <Movements part={part} of={of} year={year} title={title} /> : null}
    </details>
  );
}

function Movements({ part, of, year, title }: { part: Part; of: Whose; year: number; title: string }) {
  const words = useYearOfMassText();
  const books = useBooksText();
  const { storehouse, format, duties } = useHouse();
  const readsBooks = duties.includes('treasurer') || duties.includes('reviewer');
  const reading = useQuery(yearsMovementsQuery({ storehouse }, { year, of, part }));
  return (
    <Loaded reading={reading}>
      {({ movements }) =>
        movements.length === 0 ? (
          <p className="soft">{words.noMovements}</p>
        ) : (
          <Ledger
            caption={title}
            columns={[
              { name: words.day },
              { name: words.what },
              { name: words.food },
              { name: words.mass, isNumber: true },
            ]}
            rows={movements.map((row) => ({
              key: `${row.entryId} ${row.side} ${row.foodEn}`,
              cells: [
                format.day(row.onDay),
                readsBooks ? (
                  <Link
                    key="entry"
                    to="/s/$storehouse/books/entries/$entry"
                    params={{ storehouse, entry: row.entryId }}
                  >
                    {books.whats[row.what] ?? row.what}
                  </Link>
                ) : (
                  (books.whats[row.what] ?? row.what)
                ),
                format.language === 'es' ? row.foodEs : row.foodEn,
                format.mass(row.grams),
              ],
            }))}
          />
        )
      }
    </Loaded>
  );
}
