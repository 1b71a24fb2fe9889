import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { newKey } from '../../api/new-key.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { type SettlementBody, sessionApi, settlementQuery } from './queries.ts';
import { SettlementForm } from './settlement-form.tsx';
import { SharedCosts } from './shared.tsx';
import { useSettlementText } from './words.ts';

/** What a packing day used up, shown to the cent for each household before it is posted. */
export function Settlement() {
  const { session } = useParams({ from: '/s/$storehouse/packing/$session/settlement' });
  const { storehouse } = useHouse();
  const reading = useQuery(settlementQuery({ storehouse, session }));
  return (
    <Loaded isPage reading={reading}>
      {(body) => <SettlementPage body={body} />}
    </Loaded>
  );
}

function SettlementPage({ body }: { body: SettlementBody }) {
  const t = useSettlementText();
  const { storehouse, format } = useHouse();
  const containers = body.households.reduce((sum, household) => sum + household.containers, 0);
  useTitle(`${body.name}: ${t.title}`);
  const { posted } = body;
  return (
    <>
      <Link
        className="who"
        to="/s/$storehouse/packing/$session"
        params={{ storehouse, session: body.sessionId }}
      >
        <BackIcon />
        {t.back}
      </Link>
      <h1>
        {posted
          ? t.settled(body.name, format.money(posted.totalMinorUnits))
          : body.stage === 'signed'
            ? t.say(containers)
            : t.notSigned}
      </h1>
      {posted ? (
        <>
          <SharedCosts shown={posted} />
          <Undo body={body} />
        </>
      ) : null}
      {body.stage === 'signed' ? <SettlementForm body={body} /> : null}
    </>
  );
}

function Undo({ body }: { body: SettlementBody }) {
  const t = useSettlementText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { reason },
    change,
    reset,
  } = useDraft(`settlement-undo.${body.sessionId}`, { reason: '' });
  const [key] = useState(newKey);
  const undoing = useMutation({
    mutationFn: () =>
      ask(
        sessionApi.settlement.undoing.$post(
          { param: { storehouse, session: body.sessionId }, json: { reason } },
          { headers: { 'Idempotency-Key': key } },
        ),
      ),
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ['packing'] });
    },
  });
  return (
    <details>
      <summary>{t.undo}</summary>
      <Form label={t.undo} onSend={() => undoing.mutate()}>
        <p>{t.undoSays}</p>
        <Field
          label={t.why}
          value={reason}
          problem={problemsOf(undoing.error).reason}
          onChange={(event) => change({ reason: event.target.value })}
        />
        <ProblemSaid error={undoing.error} />
        <button type="submit" className="btn" disabled={undoing.isPending}>
          {t.undoIt}
        </button>
      </Form>
    </details>
  );
}
