import { useMutation } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { usePeopleText } from './words.ts';

/** Changes the password; whoever knew the old one is out everywhere else. */
export function Password() {
  const t = useText();
  const words = usePeopleText();
  const { storehouse } = useHouse();
  const [currentPassword, setCurrent] = useState('');
  const [newPassword, setNew] = useState('');
  useTitle(words.passwordLink);
  const changing = useMutation({
    mutationFn: () => ask(api.password.$put({ json: { currentPassword, newPassword } })),
    onSuccess: () => {
      setCurrent('');
      setNew('');
    },
  });
  const problems = problemsOf(changing.error);
  return (
    <>
      <Link className="who" to="/s/$storehouse/household" params={{ storehouse }}>
        <BackIcon />
        {t.household}
      </Link>
      <h1>{words.passwordTitle}</h1>
      <Form onSend={() => changing.mutate()}>
        <Field
          label={words.currentPassword}
          type="password"
          autoComplete="current-password"
          value={currentPassword}
          onChange={(event) => setCurrent(event.target.value)}
          problem={problems.currentPassword && words.currentWrong}
        />
        <Field
          label={words.newPassword}
          type="password"
          autoComplete="new-password"
          hint={words.newHint}
          value={newPassword}
          onChange={(event) => setNew(event.target.value)}
          problem={problems.newPassword && words.newHint}
        />
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={changing.error} />}
        <button type="submit" className="btn go" disabled={changing.isPending}>
          {words.changeIt}
        </button>
        <div role="status">
          {changing.isSuccess ? <p className="said well-said">{words.changed}</p> : null}
        </div>
      </Form>
    </>
  );
}
