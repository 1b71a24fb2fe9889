import { useQuery } from '@tanstack/react-query';
import { personsQuery } from '../../api/queries.ts';
import { CsvLink } from '../../ui/csv-link.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import { BooksPage } from '../books/books-page.tsx';
import { CountForm } from './count-form.tsx';
import { countsQuery, tinQuery } from './queries.ts';
import { useTinText } from './words.ts';
import './tin.css';

/** The cash tin: what the book says is in it, counting it, and the counts before. */
export function Tin() {
  const words = useTinText();
  const { storehouse, format, duties, personId } = useHouse();
  const tin = useQuery(tinQuery({ storehouse }));
  const persons = useQuery(personsQuery({ storehouse }));
  return (
    <BooksPage title={words.tin}>
      <Loaded isPage reading={joined(tin, persons)}>
        {([body, people]) => (
          <>
            <h1>{words.holds(format.money(body.expectedMinorUnits), body.currency)}</h1>
            <p className="soft">
              {body.lastCountedOn === null
                ? words.neverCounted
                : words.lastCounted(format.day(body.lastCountedOn))}
            </p>
            <div className="stack">
              {duties.includes('treasurer') ? (
                <CountForm
                  tin={body}
                  people={people
                    .filter(({ id }) => id !== personId)
                    .map(({ id, name }) => ({ value: id, name }))}
                />
              ) : (
                <p className="soft">{words.onlyTreasurer}</p>
              )}
              <History />
            </div>
          </>
        )}
      </Loaded>
    </BooksPage>
  );
}

function History() {
  const words = useTinText();
  const { storehouse, format } = useHouse();
  const counts = useQuery(countsQuery({ storehouse }));
  return (
    <section className="stack">
      <h2>{words.history}</h2>
      <Loaded reading={counts}>
        {({ counts: rows }) =>
          rows.length === 0 ? (
            <p className="soft">{words.noHistory}</p>
          ) : (
            <>
              <Searched
                items={rows}
                wordsOf={({ onDay, countedBy, countedWith, reason }) =>
                  `${format.day(onDay)} ${countedBy} ${countedWith ?? ''} ${reason}`
                }
              >
                {(shown) => (
                  <Ledger
                    caption={words.history}
                    columns={[
                      { name: words.day },
                      { name: words.expected, isNumber: true },
                      { name: words.counted, isNumber: true },
                      { name: words.difference, isNumber: true },
                      { name: words.by },
                      { name: words.reason },
                    ]}
                    rows={shown.map((count) => ({
                      key: count.id,
                      cells: [
                        format.day(count.onDay),
                        format.money(count.expectedMinorUnits),
                        format.money(count.countedMinorUnits),
                        format.money(count.differenceMinorUnits),
                        count.countedWith === null
                          ? count.countedBy
                          : words.and(count.countedBy, count.countedWith),
                        count.reason,
                      ],
                    }))}
                  />
                )}
              </Searched>
              <div>
                <CsvLink list="tin/counts">{words.asCsv}</CsvLink>
              </div>
            </>
          )
        }
      </Loaded>
    </section>
  );
}
