import { useMutation, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate } from '@tanstack/react-router';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { DayFields, dayFactsOf, NEW_DAY } from './day-fields.tsx';
import { packingApi } from './queries.ts';
import { usePackingText } from './words.ts';
import './packing.css';

/** Opens a packing day; everyone is told. */
export function OpenSession() {
  const t = usePackingText();
  const { storehouse, format } = useHouse();
  useTitle(t.open);
  const navigate = useNavigate();
  const queries = useQueryClient();
  const [isAsked, setIsAsked] = useState(false);
  const { draft, change, forget } = useDraft(`packing.${storehouse}`, NEW_DAY);
  const facts = dayFactsOf(draft, format);
  const opening = useMutation({
    mutationFn: (json: NonNullable<typeof facts>) => ask(packingApi.$post({ param: { storehouse }, json })),
    onSuccess: async ({ id }) => {
      forget();
      await queries.invalidateQueries({ queryKey: ['packing'] });
      await navigate({ to: '/s/$storehouse/packing/$session', params: { storehouse, session: id } });
    },
  });
  const problems = problemsOf(opening.error);
  return (
    <>
      <Link className="who" to="/s/$storehouse/packing" params={{ storehouse }}>
        <BackIcon />
        {t.packing}
      </Link>
      <h1>{t.openTitle}</h1>
      <Form
        onSend={() => {
          setIsAsked(true);
          if (facts) opening.mutate(facts);
        }}
      >
        <DayFields {...{ draft, change, problems, isAsked }} />
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={opening.error} />}
        <div className="actions">
          <button type="submit" className="btn go" disabled={opening.isPending}>
            {t.openIt}
          </button>
        </div>
      </Form>
    </>
  );
}
