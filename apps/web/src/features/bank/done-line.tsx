import { Link } from '@tanstack/react-router';
import { Check, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { Line } from './queries.ts';
import { useLine } from './use-line.ts';
import { useBankText } from './words.ts';

type Match = NonNullable<Line['match']>;

/** A line that has its place: which, by whom, and the way back. */
export function DoneLine({ line, match }: { line: Line; match: Match }) {
  const words = useBankText();
  const { storehouse, format, duties } = useHouse();
  const isAside = match.how === 'set-aside';
  const what = words.what[match.what ?? ''] ?? match.what ?? '';
  return (
    <>
      <p>
        <State kind={isAside ? 'watch' : 'well'} word={words.doneHow[match.how]} />{' '}
        {match.entryId === null ? (
          match.reason
        ) : (
          <Link to="/s/$storehouse/books/entries/$entry" params={{ storehouse, entry: match.entryId }}>
            {words.doneAs(what, match.party ?? '', match.entryNo ?? 0)}
          </Link>
        )}{' '}
        <span className="soft">{words.doneBy(match.by, format.instant(match.at))}</span>
      </p>
      {!isAside && match.reason !== '' ? <p className="soft">{words.answered(match.reason)}</p> : null}
      {duties.includes('treasurer') ? (
        <details className="bank-more">
          <summary>{words.letGo}</summary>
          <LetGo line={line} how={match.how} />
        </details>
      ) : null}
    </>
  );
}

function LetGo({ line, how }: { line: Line; how: Match['how'] }) {
  const words = useBankText();
  const { undoing } = useLine(line.id);
  const { draft, change, forget } = useDraft(`bank-undo.${line.id}`, {
    reason: '',
    takesBack: how === 'posted',
  });
  const problems = problemsOf(undoing.error);
  return (
    <Form
      onSend={() =>
        undoing.mutate(
          { reason: draft.reason, takesBack: how === 'posted' && draft.takesBack },
          { onSuccess: forget },
        )
      }
    >
      <p className="soft">{how === 'set-aside' ? words.letGoAsideWords : words.letGoWords}</p>
      <Field
        label={words.letGoWhy}
        value={draft.reason}
        maxLength={500}
        onChange={(event) => change({ reason: event.target.value })}
        problem={problems.reason}
      />
      {how === 'posted' ? (
        <Check
          label={words.takeBack}
          isOn={draft.takesBack}
          onChange={(takesBack) => change({ takesBack })}
        />
      ) : null}
      {undoing.error && !problems.reason ? <ProblemSaid error={undoing.error} /> : null}
      <div>
        <button type="submit" className="btn" disabled={undoing.isPending}>
          {words.letGoNow}
        </button>
      </div>
    </Form>
  );
}
