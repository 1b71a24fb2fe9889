import { useId } from 'react';
import { ApiProblem } from '../../api/problem.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { Line } from './queries.ts';
import { useBankText } from './words.ts';

export const isSecondReceipt = (error: Error | null): error is ApiProblem =>
  error instanceof ApiProblem && error.code === 'second-receipt';

/** A receipt that looks like the second for one thing is asked about; a written answer posts it. */
export function Question({
  line,
  error,
  isSending,
  onAnswer,
  onMatch,
}: {
  line: Line;
  error: ApiProblem;
  isSending: boolean;
  onAnswer: (answer: string) => void;
  onMatch: (entryId: string) => void;
}) {
  const words = useBankText();
  const title = useId();
  const { draft, change } = useDraft(`bank-answer.${line.id}`, { answer: '', isTried: false });
  const { entryId, mayBeThis } = error.facts;
  const isMissing = draft.isTried && draft.answer.trim() === '';
  return (
    <form
      className="said watch-said stack"
      aria-labelledby={title}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        change({ isTried: true });
        if (draft.answer.trim() !== '') onAnswer(draft.answer.trim());
      }}
    >
      <h3 id={title}>{words.secondTitle}</h3>
      <p role="alert">{error.message}</p>
      {typeof entryId === 'string' && mayBeThis === true ? (
        <div>
          <button type="button" className="btn" disabled={isSending} onClick={() => onMatch(entryId)}>
            {words.matchInstead}
          </button>
        </div>
      ) : null}
      <Field
        label={words.answer}
        hint={words.answerHint}
        value={draft.answer}
        maxLength={500}
        onChange={(event) => change({ answer: event.target.value })}
        problem={isMissing ? problemsOf(error).answer : undefined}
      />
      <div>
        <button type="submit" className="btn" disabled={isSending}>
          {words.postAllTheSame}
        </button>
      </div>
    </form>
  );
}
