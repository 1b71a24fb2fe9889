import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate, useSearch } from '@tanstack/react-router';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { ApiProblem } from '../../api/problem.ts';
import { useText } from '../../text/taste.ts';
import { Door } from '../../ui/door.tsx';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { ProblemSaid, sayProblem } from '../../ui/problem-said.tsx';

export function SignIn() {
  const t = useText();
  const { to } = useSearch({ from: '/sign-in' });
  const navigate = useNavigate();
  const queries = useQueryClient();
  const [form, setForm] = useState({ email: '', password: '' });
  const entering = useMutation({
    mutationFn: () => ask(api.session.$post({ json: form })),
    onSuccess: async () => {
      queries.clear();
      await navigate({ to: to ?? '/' });
    },
  });
  const { error } = entering;
  // Which of the two is wrong is not told to a stranger, so the refusal stands at the field that is typed anew.
  const isRefused = error instanceof ApiProblem && error.code === 'sign-in-failed';
  const problems = problemsOf(error);
  return (
    <Door title={t.signInTitle}>
      <Form onSend={() => entering.mutate()}>
        <Field
          label={t.email}
          type="email"
          name="email"
          autoComplete="username"
          value={form.email}
          onChange={(event) => setForm({ ...form, email: event.target.value })}
          problem={problems.email ? t.emailProblem : undefined}
        />
        <Field
          label={t.password}
          type="password"
          name="password"
          autoComplete="current-password"
          value={form.password}
          onChange={(event) => setForm({ ...form, password: event.target.value })}
          problem={isRefused ? sayProblem(t, error) : problems.password ? t.passwordNeeded : undefined}
        />
        {isRefused || Object.keys(problems).length > 0 ? null : <ProblemSaid error={error} />}
        <button type="submit" className="btn go" disabled={entering.isPending}>
          {t.signIn}
        </button>
      </Form>
      <p className="soft">{t.signInHelp}</p>
    </Door>
  );
}
