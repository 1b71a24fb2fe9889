import { useMutation, useQueryClient } from '@tanstack/react-query';
import { api, askOnce } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { BuyPage } from '../buy/buy-body.ts';
import { ByPen } from '../paper/by-pen.tsx';
import type { Fetcher } from './fetchers.ts';
import { useHandingText } from './words.ts';

const inside = api.storehouses[':storehouse'];

type AtTheDoorProps = { page: BuyPage; fetcher: Fetcher; isOpen: boolean };

/** One household: its pieces to carry out, bag by bag, then its name under them. */
export function HouseholdAtTheDoor({ page, fetcher, isOpen }: AtTheDoorProps) {
  const t = useHandingText();
  const { format, duties } = useHouse();
  const { name, waiting, open, fetched, until } = fetcher;
  const grams = waiting.reduce((sum, piece) => sum + piece.grams, 0);
  const isPast = until !== null && until < format.today();
  const foodOf = (lineId: string) => {
    const food = page.lines.find(({ id }) => id === lineId)?.food;
    return nameIn(format.language, food);
  };
  return (
    <details name="door" className="door-of">
      <summary className="row">
        <b>{name}</b>
        {waiting.length === 0 ? (
          <State kind="well" word={t.hasFetched} />
        ) : (
          <State kind={isPast ? 'wrong' : 'watch'} word={t.waits(format.mass(grams))} />
        )}
        {open?.startsAt && open.endsAt ? (
          <span className="soft">{t.comes(format.instant(open.startsAt), format.instant(open.endsAt))}</span>
        ) : null}
      </summary>
      <div className="stack">
        {waiting.length === 0 ? null : (
          <ul>
            {waiting.map((piece) => (
              <li key={`${piece.bagId} ${piece.lineId}`}>
                {t.piece(foodOf(piece.lineId), piece.bagNo, piece.bagCode)} <b>{format.mass(piece.grams)}</b>{' '}
                <span className="soft">{`${format.count(piece.grams)} g`}</span>
                {piece.isOnHold ? ` ${t.onHold}` : ''}
              </li>
            ))}
          </ul>
        )}
        {fetched.map((pickUp) => (
          <div key={pickUp.id} className="stack tight">
            <p className="soft">
              {t.fetched(
                format.instant(pickUp.collectedAt ?? ''),
                pickUp.signedBy ?? '',
                format.mass(pickUp.pieces.reduce((sum, piece) => sum + piece.grams, 0)),
              )}
            </p>
            <ByPen buy={page.id} subject={pickUp.id} />
          </div>
        ))}
        {isOpen && waiting.some(({ isOnHold }) => !isOnHold) ? (
          <Sign page={page} fetcher={fetcher} grams={grams} />
        ) : null}
        {until === null ? null : <p className="soft">{t.mayFetchUntil(format.day(until))}</p>}
        {isOpen && isPast && duties.includes('coordinator') ? (
          <ToCommonStock page={page} fetcher={fetcher} />
        ) : null}
      </div>
    </details>
  );
}

/** Somebody of the household stands at the door. With an appointment or without, it is one step. */
function Sign({ page, fetcher, grams }: { page: BuyPage; fetcher: Fetcher; grams: number }) {
  const t = useHandingText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { signedBy },
    change,
    reset,
  } = useDraft(`door.${page.id}.${fetcher.householdId}`, { signedBy: '' });
  const param = { storehouse, buy: page.id };
  const signing = useMutation({
    mutationFn: () => {
      const json = { householdId: fetcher.householdId, signedBy };
      return askOnce(`sign.${page.id}.${fetcher.householdId}`, json, (headers) =>
        inside.buys[':buy'].collections.$post({ param, json }, { headers }),
      );
    },
    onSuccess: () => reset(),
    onSettled: () => queries.invalidateQueries({ queryKey: ['buy', param] }),
  });
  const problem = problemsOf(signing.error).signedBy;
  return (
    <Form onSend={() => signing.mutate()}>
      <Field
        label={t.signedBy(fetcher.name)}
        value={signedBy}
        problem={problem && t.nameNeeded}
        onChange={(event) => change({ signedBy: event.target.value })}
      />
      <p className="soft">{t.signPosts(format.mass(grams))}</p>
      {problem ? null : <ProblemSaid error={signing.error} />}
      <div>
        <button type="submit" className="btn go" disabled={signing.isPending}>
          {t.sign(format.mass(grams))}
        </button>
      </div>
    </Form>
  );
}

/** After the group's days, what nobody fetched becomes everyone's, and its goods and freight are credited. */
function ToCommonStock({ page, fetcher }: { page: BuyPage; fetcher: Fetcher }) {
  const t = useHandingText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { note },
    change,
    reset,
  } = useDraft(`uncollected.${page.id}.${fetcher.householdId}`, { note: '' });
  const param = { storehouse, buy: page.id };
  const taking = useMutation({
    mutationFn: () =>
      askOnce(`uncollected.${page.id}.${fetcher.householdId}`, { note }, (headers) =>
        inside.buys[':buy'].uncollected[':household'].$post(
          { param: { ...param, household: fetcher.householdId }, json: { note } },
          { headers },
        ),
      ),
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ['buy', param] });
    },
  });
  return (
    <Form onSend={() => taking.mutate()}>
      <Field label={t.note} value={note} onChange={(event) => change({ note: event.target.value })} />
      <p className="soft">{t.takePosts(fetcher.name)}</p>
      <ProblemSaid error={taking.error} />
      <div>
        <button type="submit" className="btn" disabled={taking.isPending}>
          {t.take}
        </button>
      </div>
    </Form>
  );
}
