import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useNavigate, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { sessionQuery } from '../../api/queries.ts';
import { useText } from '../../text/taste.ts';
import { Door } from '../../ui/door.tsx';
import { Field, NameField, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';

const link = api.invitations[':storehouse'][':token'];

/** What somebody finds who opens the link that a neighbour gave them. */
export function Invitation() {
  const t = useText();
  const param = useParams({ from: '/invitations/$storehouse/$token' });
  const look = useQuery({ queryKey: ['invitation', param], queryFn: () => ask(link.$get({ param })) });
  const name = look.data?.storehouseName;
  return (
    <Door title={name === undefined ? t.invitationTitle : t.invitationFrom(name)}>
      <Loaded reading={look}>{(found) => <Joining param={param} look={found} />}</Loaded>
    </Door>
  );
}

type Look = { isNewHousehold: boolean; householdName: string | null };

function Joining({ param, look }: { param: { storehouse: string; token: string }; look: Look }) {
  const t = useText();
  const navigate = useNavigate();
  const queries = useQueryClient();
  const session = useQuery({ ...sessionQuery, retry: false });
  const { draft, change, forget } = useDraft(`join.${param.storehouse}`, {
    personName: '',
    householdName: look.householdName ?? '',
    email: '',
  });
  const [password, setPassword] = useState('');
  const isKnown = session.isSuccess; // a login of another storehouse joins as it is
  const joining = useMutation({
    mutationFn: () => {
      const { personName, householdName, email } = draft;
      const json = {
        personName,
        ...(look.isNewHousehold ? { householdName } : {}),
        ...(isKnown ? {} : { login: { email, password } }),
      };
      return ask(link.$post({ param, json }));
    },
    onSuccess: async () => {
      forget();
      queries.clear();
      await navigate({ to: '/s/$storehouse/welcome', params: { storehouse: param.storehouse } });
    },
  });
  const problems = problemsOf(joining.error);
  return (
    <Form onSend={() => joining.mutate()}>
      <p>{look.isNewHousehold ? t.invitationNew : t.invitationInto(look.householdName ?? '')}</p>
      {look.isNewHousehold ? (
        <NameField
          label={t.householdName}
          hint={t.householdNameHint}
          value={draft.householdName}
          onChange={(event) => change({ householdName: event.target.value })}
          problem={problems.householdName && t.nameNeeded}
        />
      ) : null}
      <NameField
        label={t.yourName}
        autoComplete="name"
        value={draft.personName}
        onChange={(event) => change({ personName: event.target.value })}
        problem={problems.personName && t.nameNeeded}
      />
      {isKnown ? null : (
        <>
          <Field
            label={t.email}
            type="email"
            autoComplete="username"
            value={draft.email}
            onChange={(event) => change({ email: event.target.value })}
            problem={problems['login.email'] && t.emailProblem}
          />
          <Field
            label={t.newPassword}
            type="password"
            autoComplete="new-password"
            hint={t.passwordHint}
            value={password}
            onChange={(event) => setPassword(event.target.value)}
            problem={problems['login.password'] && t.passwordHint}
          />
        </>
      )}
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={joining.error} />}
      <button type="submit" className="btn go" disabled={joining.isPending || session.isPending}>
        {t.join}
      </button>
    </Form>
  );
}
