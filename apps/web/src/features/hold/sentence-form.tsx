import type { ReactNode } from 'react';
import { Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useHoldCommand } from './queries.ts';

type Props<Answer> = {
  /** Of its draft. */
  name: string;
  label: string;
  says?: string;
  button: string;
  send: (sentence: string) => Promise<Answer>;
  done?: (answer: Answer) => string;
  /** What else is asked, above the sentence. */
  children?: ReactNode;
  /** Whether what stands above the sentence is answered. */
  isReady?: boolean;
};

/** Whatever is done about a hold stands on a sentence, a reason or a finding; without one nothing is sent. */
export function SentenceForm<Answer>({
  name,
  label,
  says,
  button,
  send,
  done,
  children,
  isReady = true,
}: Props<Answer>) {
  const { draft, change, reset } = useDraft(name, { sentence: '' });
  const sending = useHoldCommand(async (sentence: string) => {
    const answer = await send(sentence);
    reset({ sentence: '' });
    return answer;
  });
  return (
    <Form isTight onSend={() => sending.mutate(draft.sentence)}>
      {says === undefined ? null : <p>{says}</p>}
      {children}
      <Field
        label={label}
        value={draft.sentence}
        onChange={(event) => change({ sentence: event.target.value })}
      />
      <ProblemSaid error={sending.error} />
      {done && sending.data ? <p role="status">{done(sending.data)}</p> : null}
      <div className="actions">
        <button
          type="submit"
          className="btn"
          disabled={!isReady || draft.sentence.trim() === '' || sending.isPending}
        >
          {button}
        </button>
      </div>
    </Form>
  );
}
