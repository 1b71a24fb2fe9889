import { parseMass, spellCode } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, askOnce } from '../../api/client.ts';
import { CsvLink } from '../../ui/csv-link.tsx';
import { Field, problemsOf } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { BooksPage } from '../books/books-page.tsx';
import { PostForm } from '../books/post-form.tsx';
import { FindByLabel } from '../scan/find-by-label.tsx';
import { commonStockQuery } from './queries.ts';
import { useReviewText } from './words.ts';

const inside = api.storehouses[':storehouse'];

type Stock = {
  readonly accountId: string;
  readonly code: string;
  readonly foodEn: string;
  readonly foodEs: string;
  readonly bookGrams: number;
  readonly lastCountId: string | null;
  readonly countedGrams: number | null;
  readonly differenceGrams: number | null;
  readonly differenceMinorUnits: number | null;
  readonly countedAt: string | null;
  readonly isBooked: boolean;
};

/** Common stock counted against the book, bag by bag; a difference is booked by treasurer or coordinator, with a reason. */
export function Counts() {
  const t = useReviewText();
  const { storehouse } = useHouse();
  const reading = useQuery(commonStockQuery({ storehouse }));
  const [sought, setSought] = useState<string | null>(null);
  return (
    <BooksPage title={t.counts}>
      <Loaded isPage reading={reading}>
        {({ stock }) => {
          const differing = stock.filter((row) => row.differenceGrams && !row.isBooked).length;
          return (
            <>
              <h1>{stock.length === 0 ? t.noCommonStock : t.countsTitle(stock.length, differing)}</h1>
              {stock.length === 0 ? null : <FindByLabel onCode={setSought} />}
              {sought === null ? null : (
                <p role="status">
                  {stock.some(({ code }) => code === sought) ? null : `${t.notCommon(spellCode(sought))} `}
                  <button type="button" className="btn quiet" onClick={() => setSought(null)}>
                    {t.allStock}
                  </button>
                </p>
              )}
              <Searched
                items={sought === null ? stock : stock.filter(({ code }) => code === sought)}
                wordsOf={({ code, foodEn, foodEs }) => `${code} ${foodEn} ${foodEs}`}
                find={t.findStock}
              >
                {(shown) => (
                  <ul className="list">
                    {shown.map((row) => (
                      <li key={row.accountId} className="stack claim">
                        <Counted row={row} />
                      </li>
                    ))}
                  </ul>
                )}
              </Searched>
              <p>
                <CsvLink list="common-stock">{t.download}</CsvLink>
              </p>
            </>
          );
        }}
      </Loaded>
    </BooksPage>
  );
}

function Counted({ row }: { row: Stock }) {
  const t = useReviewText();
  const { storehouse, format, duties } = useHouse();
  const difference = row.differenceGrams ?? 0;
  const mayCount = ['reviewer', 'coordinator', 'packing_lead'].some((duty) => duties.includes(duty));
  const mayBook = duties.includes('treasurer') || duties.includes('coordinator');
  return (
    <>
      <div className="row">
        <span>
          <b>{row.code}</b>
          <br />
          <span className="soft">{format.language === 'es' ? row.foodEs : row.foodEn}</span>
        </span>
        <span className="num">{t.bookSays(format.mass(row.bookGrams))}</span>
        {row.countedAt === null ? (
          <State kind="watch" word={t.notCounted} />
        ) : difference === 0 ? (
          <State kind="well" word={t.meets} />
        ) : (
          <State
            kind={row.isBooked ? 'well' : 'wrong'}
            word={t.differs(
              format.mass(difference),
              format.money(row.differenceMinorUnits ?? 0),
              row.isBooked,
            )}
          />
        )}
      </div>
      {mayCount ? <Count row={row} /> : null}
      {mayBook && difference !== 0 && !row.isBooked && row.lastCountId ? (
        <PostForm
          name={`book-count.${row.lastCountId}`}
          summary={t.bookDifference}
          button={t.post}
          fields={[{ name: 'reason', label: t.reason, kind: 'text' }]}
          sentence={() =>
            t.bookSentence(format.mass(difference), format.money(row.differenceMinorUnits ?? 0))
          }
          send={({ reason }, headers) =>
            inside['stock-counts'][':count'].booking.$post(
              { param: { storehouse, count: row.lastCountId ?? '' }, json: { reason: String(reason) } },
              { headers },
            )
          }
        />
      ) : null}
    </>
  );
}

function Count({ row }: { row: Stock }) {
  const t = useReviewText();
  const client = useQueryClient();
  const { storehouse, format } = useHouse();
  const {
    draft: { typed },
    change,
    reset,
  } = useDraft(`common-count.${row.accountId}`, { typed: '' });
  const mass = parseMass(typed, { defaultUnit: format.massUnit });
  const grams = 'problem' in mass ? null : mass.grams;
  const counting = useMutation({
    mutationFn: () => {
      const json = { accountId: row.accountId, countedGrams: grams ?? 0 };
      return askOnce(`count.${row.accountId}`, json, (headers) =>
        inside['stock-counts'].$post({ param: { storehouse }, json }, { headers }),
      );
    },
    onSuccess: async () => {
      reset();
      await client.invalidateQueries({ queryKey: ['books'] });
    },
  });
  return (
    <form
      className="row"
      onSubmit={(event) => {
        event.preventDefault();
        if (grams !== null) counting.mutate();
      }}
    >
      <Field
        label={t.countOf(row.code)}
        inputMode="decimal"
        value={typed}
        onChange={(event) => change({ typed: event.target.value })}
        problem={typed !== '' && grams === null ? t.massProblem : problemsOf(counting.error).countedGrams}
      />
      <button type="submit" className="btn" disabled={grams === null || counting.isPending}>
        {t.writeDown}
      </button>
      <ProblemSaid error={counting.error} />
    </form>
  );
}
