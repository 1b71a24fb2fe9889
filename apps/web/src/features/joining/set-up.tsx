import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { useTaste, useText } from '../../text/taste.ts';
import { Door } from '../../ui/door.tsx';
import { Choice, Field, NameField, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';

const CURRENCIES = ['USD', 'CAD', 'MXN', 'EUR', 'GBP', 'AUD', 'NZD', 'CHF'] as const;

/** The first run of a server, in five questions; whoever answers becomes coordinator. */
export function SetUp() {
  const t = useText();
  const { language } = useTaste();
  const navigate = useNavigate();
  const queries = useQueryClient();
  const { draft, change, forget } = useDraft('set-up', {
    name: '',
    currency: 'USD',
    massDisplay: 'lb',
    householdName: '',
    personName: '',
    email: '',
  });
  const [password, setPassword] = useState('');
  const founding = useMutation({
    mutationFn: () => {
      const { name, currency, householdName, personName, email } = draft;
      const massDisplay = draft.massDisplay === 'kg' ? 'kg' : 'lb';
      const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
      const storehouse = { name, currency, massDisplay, timeZone, language } as const;
      const json = { email, password, personName, householdName, storehouse };
      return ask(api['set-up'].$post({ json }));
    },
    onSuccess: async ({ storehouseId }) => {
      forget();
      queries.clear();
      await navigate({ to: '/s/$storehouse/welcome', params: { storehouse: storehouseId } });
    },
  });
  const problems = problemsOf(founding.error);
  return (
    <Door title={t.setUpTitle}>
      <p>{t.setUpWords}</p>
      <Form onSend={() => founding.mutate()}>
        <NameField
          label={t.setUpStorehouse}
          value={draft.name}
          onChange={(event) => change({ name: event.target.value })}
          problem={problems['storehouse.name'] && t.nameNeeded}
        />
        <div className="pair">
          <Choice
            label={t.setUpCurrency}
            value={draft.currency}
            options={CURRENCIES.map((value) => ({ value, name: value }))}
            onChange={(currency) => change({ currency })}
            problem={problems['storehouse.currency']}
          />
          <Choice
            label={t.setUpUnits}
            value={draft.massDisplay}
            options={[
              { value: 'lb', name: t.pounds },
              { value: 'kg', name: t.kilograms },
            ]}
            onChange={(massDisplay) => change({ massDisplay })}
          />
        </div>
        <NameField
          label={t.setUpHousehold}
          value={draft.householdName}
          onChange={(event) => change({ householdName: event.target.value })}
          problem={problems.householdName && t.nameNeeded}
        />
        <NameField
          label={t.yourName}
          autoComplete="name"
          value={draft.personName}
          onChange={(event) => change({ personName: event.target.value })}
          problem={problems.personName && t.nameNeeded}
        />
        <Field
          label={t.email}
          type="email"
          autoComplete="username"
          value={draft.email}
          onChange={(event) => change({ email: event.target.value })}
          problem={problems.email && t.emailProblem}
        />
        <Field
          label={t.newPassword}
          type="password"
          autoComplete="new-password"
          hint={t.passwordHint}
          value={password}
          onChange={(event) => setPassword(event.target.value)}
          problem={problems.password && t.passwordHint}
        />
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={founding.error} />}
        <button type="submit" className="btn go" disabled={founding.isPending}>
          {t.setUpGo}
        </button>
      </Form>
      <p>
        <Link to="/sign-in" className="btn quiet">
          {t.haveLogin}
        </Link>
      </p>
    </Door>
  );
}
