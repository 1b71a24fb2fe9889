import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';
import { storehouseQuery } from '../../api/queries.ts';
import { useText } from '../../text/taste.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { RulesForm } from './rules-form.tsx';
import { useSettingsText } from './words.ts';

const here = api.storehouses[':storehouse'];
type StorehouseBody = InferResponseType<typeof here.$get, 200>;

/** What the storehouse is called and goes by. */
export function Settings() {
  const words = useSettingsText();
  const { storehouse, duties, format } = useHouse();
  useTitle(words.title);
  const reading = useQuery(storehouseQuery({ storehouse }));
  return (
    <Loaded isPage reading={reading}>
      {(found) => (
        <>
          <h1>
            {words.stands(
              found.name,
              found.rules.rulesVersion,
              format.day(found.rules.decidedAt.slice(0, 10)),
            )}
          </h1>
          {duties.includes('coordinator') ? (
            <div className="actions">
              <Link className="btn" to="/s/$storehouse/settings/work" params={{ storehouse }}>
                {words.work}
              </Link>
            </div>
          ) : null}
          <div className="cols">
            <RulesForm key={`rules ${found.rules.rulesVersion}`} rules={found.rules} />
            {duties.includes('coordinator') ? (
              <FactsForm key={`facts ${found.version}`} found={found} />
            ) : (
              <p className="soft">{words.readOnly}</p>
            )}
          </div>
        </>
      )}
    </Loaded>
  );
}

function FactsForm({ found }: { found: StorehouseBody }) {
  const t = useText();
  const words = useSettingsText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { name, timeZone, massDisplay, yearEndMonth, language },
    change,
    forget,
  } = useDraft(
    'storehouse',
    {
      name: found.name,
      timeZone: found.timeZone,
      massDisplay: found.massDisplay,
      yearEndMonth: String(found.yearEndMonth),
      language: found.language,
    },
    { version: found.version },
  );
  const saving = useMutation({
    mutationFn: () =>
      ask(
        here.$put({
          param: { storehouse },
          json: {
            version: found.version,
            name,
            timeZone,
            massDisplay: massDisplay as 'lb' | 'kg',
            language: language as 'en' | 'es',
            yearEndMonth: Number(yearEndMonth),
          },
        }),
      ),
    onSuccess: () => {
      forget();
      return Promise.all(
        ['storehouse', 'session'].map((key) => queries.invalidateQueries({ queryKey: [key] })),
      );
    },
  });
  const problems = problemsOf(saving.error);
  return (
    <Form onSend={() => saving.mutate()}>
      <h2>{words.facts}</h2>
      <Field
        label={words.name}
        value={name}
        onChange={(event) => change({ name: event.target.value })}
        problem={problems.name && t.nameNeeded}
      />
      <Field
        label={words.timeZone}
        hint={words.timeZoneHint}
        value={timeZone}
        onChange={(event) => change({ timeZone: event.target.value })}
        problem={problems.timeZone}
      />
      <div className="pair">
        <Choice
          label={words.massDisplay}
          value={massDisplay}
          options={[
            { value: 'lb', name: t.pounds },
            { value: 'kg', name: t.kilograms },
          ]}
          onChange={(massDisplay) => change({ massDisplay })}
        />
        <Choice
          label={words.language}
          value={language}
          options={(['en', 'es'] as const).map((value) => ({ value, name: t.languages[value] }))}
          onChange={(language) => change({ language })}
        />
      </div>
      <Choice
        label={words.yearEndMonth}
        value={yearEndMonth}
        options={Array.from({ length: 12 }, (_, at) => ({
          value: String(at + 1),
          name: format.monthName(`2026-${String(at + 1).padStart(2, '0')}-01`),
        }))}
        onChange={(yearEndMonth) => change({ yearEndMonth })}
      />
      <p className="soft">{words.currency(found.currency)}</p>
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={saving.error} />}
      <div className="actions">
        <button type="submit" className="btn" disabled={saving.isPending}>
          {t.save}
        </button>
      </div>
    </Form>
  );
}
