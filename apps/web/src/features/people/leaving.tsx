import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { api, ask, askOnce } from '../../api/client.ts';
import { ApiProblem } from '../../api/problem.ts';
import { Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { usePeopleText } from './words.ts';

const leavingOf = api.storehouses[':storehouse'].households[':household'].leaving;
type Leaver = { readonly id: string; readonly name: string; readonly version: number };

/** What still keeps a household, and the way out once nothing does. Whoever may not take it out is shown nothing. */
export function Leaving({ household }: { household: Leaver }) {
  const words = usePeopleText();
  const { storehouse } = useHouse();
  const param = { storehouse, household: household.id };
  const [isAsked, setIsAsked] = useState(false);
  const state = useQuery({
    queryKey: ['leaving', param],
    queryFn: () => ask(leavingOf.$get({ param })),
    enabled: isAsked, // reading it is noted as a look at the balance
    retry: false,
  });
  const isOthers = state.error instanceof ApiProblem && state.error.code === 'not-your-household';
  return (
    <details onToggle={(event) => setIsAsked(event.currentTarget.open)}>
      <summary>{words.leaving}</summary>
      <div className="stack">
        <p>{words.leavingWords}</p>
        {isOthers ? <ProblemSaid error={state.error} /> : null}
        {isAsked && !isOthers ? (
          <Loaded reading={state}>
            {({ isSettled, unsettled }) =>
              isSettled ? (
                <LeaveForm household={household} />
              ) : (
                <>
                  <p>{words.leavingOpen}</p>
                  <ul>
                    {unsettled.map(({ message }) => (
                      <li key={message}>{message}</li>
                    ))}
                  </ul>
                </>
              )
            }
          </Loaded>
        ) : null}
      </div>
    </details>
  );
}

/** The name is written out, since no undo brings a household back. */
function LeaveForm({ household }: { household: Leaver }) {
  const words = usePeopleText();
  const { storehouse, household: own } = useHouse();
  const queries = useQueryClient();
  const navigate = useNavigate();
  const [typed, setTyped] = useState('');
  const [isTried, setIsTried] = useState(false);
  const isRight = typed.trim() === household.name;
  const leaving = useMutation({
    mutationFn: () => {
      const json = { version: household.version };
      return askOnce(`leave.${household.id}`, json, (headers) =>
        leavingOf.$post({ param: { storehouse, household: household.id }, json }, { headers }),
      );
    },
    onSuccess: async () => {
      queries.clear();
      await navigate(
        own === household.id ? { to: '/' } : { to: '/s/$storehouse/people', params: { storehouse } },
      );
    },
  });
  return (
    <Form
      onSend={() => {
        setIsTried(true);
        if (isRight) leaving.mutate();
      }}
    >
      <p>{words.leavingSettled}</p>
      <Field
        label={words.leaveType(household.name)}
        value={typed}
        onChange={(event) => setTyped(event.target.value)}
        problem={isTried && !isRight ? words.nameDiffers : undefined}
      />
      <ProblemSaid error={leaving.error} />
      <button type="submit" className="btn" disabled={leaving.isPending}>
        {words.leave}
      </button>
    </Form>
  );
}
