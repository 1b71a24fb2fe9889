import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { api, askOnce } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Figures, Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { BooksPage } from './books-page.tsx';
import { entryQuery } from './queries.ts';
import { useBooksText } from './words.ts';

/** One entry in the accountant's terms: each movement debits its destination and credits its source. */
export function Entry() {
  const t = useBooksText();
  const { storehouse, format, duties } = useHouse();
  const { entry } = useParams({ from: '/s/$storehouse/books/entries/$entry' });
  const reading = useQuery(entryQuery({ storehouse, entry }));
  return (
    <BooksPage title={t.entry}>
      <Loaded isPage reading={reading}>
        {(body) => {
          const title = t.entryTitle(body.entryNo, t.whats[body.what] ?? body.what);
          const isDone = body.reversedByEntryNo !== null || body.reversesEntryNo !== null;
          return (
            <>
              <h1>{title}</h1>
              {body.reversesEntryNo === null ? null : <p>{t.reverses(body.reversesEntryNo)}</p>}
              {body.reversedByEntryNo === null ? null : <p>{t.reversedBy(body.reversedByEntryNo)}</p>}
              <Figures
                rows={[
                  { name: t.bookedOn, value: format.day(body.onDay) },
                  { name: t.recordedAt, value: format.instant(body.recordedAt) },
                  ...(body.enteredBy ? [{ name: t.by, value: body.enteredBy }] : []),
                  ...(body.enteredFor ? [{ name: t.enteredFor, value: body.enteredFor }] : []),
                ]}
              />
              {body.note ? <p>{body.note}</p> : null}
              <Ledger
                caption={title}
                columns={[{ name: t.debit }, { name: t.credit }, { name: t.amount, isNumber: true }]}
                rows={body.movements.map((movement) => ({
                  key: String(movement.line),
                  cells: movement.isHomeStock
                    ? [t.homeStock, '', '']
                    : [
                        <AccountLink key="to" account={movement.to} />,
                        <AccountLink key="from" account={movement.from} />,
                        movement.unit === 'currency'
                          ? format.money(movement.amount)
                          : t.grams(format.count(movement.amount)),
                      ],
                }))}
              />
              {body.buyId === null ? null : (
                <p>
                  <Link to="/s/$storehouse/books/clearing/$buy" params={{ storehouse, buy: body.buyId }}>
                    {t.clearingOf(body.buy ?? '')}
                  </Link>
                </p>
              )}
              {isDone || !duties.includes('treasurer') ? null : <Reverse entry={body.id} />}
            </>
          );
        }}
      </Loaded>
    </BooksPage>
  );
}

type Account = { readonly accountId: string; readonly name: string; readonly number: string | null };

function AccountLink({ account: { accountId, name, number } }: { account: Account }) {
  const { storehouse } = useHouse();
  if (number === null) return name;
  return (
    <Link to="/s/$storehouse/books/accounts/$account" params={{ storehouse, account: accountId }}>
      {number} {name}
    </Link>
  );
}

function Reverse({ entry }: { entry: string }) {
  const t = useBooksText();
  const client = useQueryClient();
  const { storehouse } = useHouse();
  const { draft, change, forget } = useDraft(`reverse.${entry}`, { reason: '' });
  const { reason } = draft;
  const reversing = useMutation({
    mutationFn: () =>
      askOnce(`reverse.${entry}`, { reason }, (headers) =>
        api.storehouses[':storehouse'].entries[':entry'].reversal.$post(
          { param: { storehouse, entry }, json: { reason } },
          { headers },
        ),
      ),
    onSuccess: async () => {
      forget();
      await client.invalidateQueries();
    },
  });
  return (
    <details>
      <summary>{t.reverse}</summary>
      <Form onSend={() => reversing.mutate()}>
        <p>{t.reverseWords}</p>
        <Field
          label={t.reason}
          value={reason}
          onChange={(event) => change({ reason: event.target.value })}
          problem={problemsOf(reversing.error).reason}
        />
        <ProblemSaid error={reversing.error} />
        <div className="actions">
          <button type="submit" className="btn" disabled={reversing.isPending}>
            {t.post}
          </button>
        </div>
      </Form>
    </details>
  );
}
