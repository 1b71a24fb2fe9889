import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { InferRequestType } from 'hono/client';
import { ask } from '../../api/client.ts';
import { buysQuery } from '../../api/queries.ts';
import { Check, Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { LongField } from '../buy/long-field.tsx';
import { householdsQuery } from '../buy/run-queries.ts';
import { noticesOf } from './queries.ts';
import { useNoticeText } from './words.ts';

type Wish = InferRequestType<typeof noticesOf.$post>['json'];
type To = Wish['audience']['to'];
/** Whom it is for is part of what is kept: a note to one household must not come back as one to everyone. */
const EMPTY = { to: 'everyone' as To, chosen: '', about: '', says: '', dueOn: '', isSafety: false };

export function WriteForm() {
  const words = useNoticeText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const households = useQuery(householdsQuery({ storehouse }));
  const buys = useQuery(buysQuery({ storehouse }));
  const { draft, change, reset } = useDraft('notice', EMPTY);
  const { to, chosen, ...typed } = draft;
  const named = {
    everyone: [],
    duty: Object.entries(words.duties).map(([value, name]) => ({ value, name })),
    household: (households.data ?? [])
      .filter(({ leftOn }) => leftOn === null)
      .map(({ id, name }) => ({ value: id, name })),
    buy: (buys.data?.buys ?? []).map(({ id, name }) => ({ value: id, name })),
  }[to];
  const whom = chosen === '' ? (named[0]?.value ?? '') : chosen;
  const telling = useMutation({
    mutationFn: () => {
      const { dueOn, ...rest } = typed;
      const json = { ...rest, audience: audienceOf(to, whom), dueOn: dueOn === '' ? null : dueOn };
      return ask(noticesOf.$post({ param: { storehouse }, json }));
    },
    onSuccess: () => {
      reset({ ...draft, about: '', says: '', dueOn: '', isSafety: false });
      return queries.invalidateQueries({ queryKey: ['notices'] });
    },
  });
  const problems = problemsOf(telling.error);
  return (
    <NextStep>
      <Form onSend={() => telling.mutate()}>
        <p>{words.writeWords}</p>
        <Choice
          label={words.to}
          value={to}
          options={Object.entries(words.audiences).map(([value, name]) => ({ value, name }))}
          onChange={(value) => {
            change({ to: value as To, chosen: '' });
          }}
        />
        {to === 'everyone' ? null : (
          <Choice
            label={words[to]}
            value={whom}
            options={named}
            onChange={(value) => change({ chosen: value })}
            problem={problems['audience.householdId'] ?? problems['audience.buyId']}
          />
        )}
        <Field
          label={words.about}
          maxLength={120}
          value={typed.about}
          onChange={(event) => change({ about: event.target.value })}
          problem={problems.about && words.aboutProblem}
        />
        <LongField
          label={words.says}
          value={typed.says}
          onChange={(says) => change({ says })}
          problem={problems.says && words.saysProblem}
        />
        <Field
          label={words.dueOn}
          type="date"
          value={typed.dueOn}
          onChange={(event) => change({ dueOn: event.target.value })}
          problem={problems.dueOn}
        />
        <Check label={words.isSafety} isOn={typed.isSafety} onChange={(isSafety) => change({ isSafety })} />
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={telling.error} />}
        <button type="submit" className="btn go" disabled={telling.isPending}>
          {words.send}
        </button>
        <p role="status">{telling.isSuccess ? words.sent : ''}</p>
      </Form>
    </NextStep>
  );
}

function audienceOf(to: To, whom: string): Wish['audience'] {
  if (to === 'duty') return { to, duty: whom as 'coordinator' };
  if (to === 'household') return { to, householdId: whom };
  return to === 'buy' ? { to, buyId: whom } : { to };
}
