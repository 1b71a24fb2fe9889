import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { askOnce } from '../../api/client.ts';
import { Choice, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { ofSession } from '../packing/queries.ts';
import type { LogQueue } from '../packing/use-log.ts';
import { kindsQuery } from '../shelf/queries.ts';
import { treatmentsQuery } from '../treatment/queries.ts';
import { inside, isToReCan, type ReCanning, type Suspect, type Watch } from './queries.ts';
import { useSeamText } from './words.ts';

type Props = { suspects: readonly Suspect[]; watch: Watch; log: LogQueue };

/** What did not pass goes into new cans under the same owner; each old code ends with it and leads to the new one. */
export function ReCan({ suspects, watch, log }: Props) {
  const written = log.waiting.flatMap(({ act, refusal }) =>
    act.kind === 're-can' && refusal === null
      ? act.json.containers.map(({ containerId }) => containerId)
      : [],
  );
  const waiting = suspects.filter((one) => isToReCan(one) && !written.includes(one.containerId));
  const moved = suspects.filter(({ movedTo }) => movedTo !== null);
  return (
    <>
      {waiting.length > 0 ? <IntoNew {...{ waiting, watch, log }} /> : null}
      {moved.length > 0 ? <Moved {...{ moved, watch }} /> : null}
    </>
  );
}

function useSeals(watch: Watch) {
  const queries = useQueryClient();
  const { storehouse } = useHouse();
  const refresh = () =>
    queries.invalidateQueries({ queryKey: ofSession({ storehouse, session: watch.session.id }) });
  return { storehouse, refresh };
}

type IntoNewProps = { waiting: readonly Suspect[]; watch: Watch; log: LogQueue };

/** Kept on the phone first: at the line there may be no signal, and the old can is empty. */
function IntoNew({ waiting, watch, log }: IntoNewProps) {
  const t = useSeamText();
  const { storehouse, format } = useHouse();
  const kinds = useQuery(kindsQuery({ storehouse })).data?.containerKinds ?? [];
  const treatments = useQuery(treatmentsQuery({ storehouse })).data?.treatments ?? [];
  const {
    draft: { which, kindId, treatment },
    change,
    reset,
  } = useDraft(`re-can.${watch.session.id}`, {
    which: 'all',
    kindId: '',
    treatment: 'oxygen-absorber' as ReCanning['treatment'],
  });
  const chosen = waiting.filter(({ containerId }) => which === 'all' || containerId === which);
  const of = chosen.length > 0 ? chosen : waiting;
  const kind = kindId || (waiting[0]?.containerKindId ?? '');
  const move = () => {
    const containers = of.map(({ containerId }) => ({ containerId, spilledGrams: 0 }));
    const doneAt = new Date().toISOString();
    log.write({ kind: 're-can', json: { containers, containerKindId: kind, treatment, note: '', doneAt } });
    reset();
  };
  const nameOf = (one: { nameEn: string; nameEs: string }) => nameIn(format.language, one);
  return (
    <Form onSend={move}>
      <h2>{t.reCan}</h2>
      <p>{t.reCanSays}</p>
      <Choice
        label={t.which}
        value={of.length === waiting.length ? 'all' : which}
        options={[
          { value: 'all', name: t.allToReCan(waiting.length) },
          ...(waiting.length > 1 ? waiting : []).map((one) => ({
            value: one.containerId,
            name: t.oneToReCan(one.serial, one.spelled, one.household.name),
          })),
        ]}
        onChange={(which) => change({ which })}
      />
      <div className="pair roomy">
        <Choice
          label={t.newKind}
          value={kind}
          options={kinds.map((one) => ({ value: one.id, name: nameOf(one) }))}
          onChange={(kindId) => change({ kindId })}
        />
        <Choice
          label={t.newTreatment}
          value={treatment}
          options={treatments.map(({ code, names }) => ({ value: code, name: names[format.language] }))}
          onChange={(value) => change({ treatment: value as ReCanning['treatment'] })}
        />
      </div>
      <button type="submit" className="btn" disabled={kind === ''}>
        {t.reCanIt(of.length)}
      </button>
    </Form>
  );
}

function Moved({ moved, watch }: { moved: readonly Suspect[]; watch: Watch }) {
  const t = useSeamText();
  const { storehouse, refresh } = useSeals(watch);
  const {
    draft: { which, reason },
    change,
    reset,
  } = useDraft(`re-can-undo.${watch.session.id}`, { which: '', reason: '' });
  const one = moved.find(({ containerId }) => containerId === which) ?? moved[0];
  const undoing = useMutation({
    mutationFn: (reCanning: string) =>
      askOnce(`un-can.${reCanning}`, { reason }, (headers) =>
        inside['re-cannings'][':reCanning'].undoing.$post(
          { param: { storehouse, reCanning }, json: { reason } },
          { headers },
        ),
      ),
    onSuccess: () => {
      reset();
      return refresh();
    },
  });
  return (
    <>
      <Ledger
        caption={t.inNewCans}
        columns={[{ name: t.oldCode }, { name: t.newCode }, { name: t.grams, isNumber: true }]}
        rows={moved.map(({ containerId, spelled, household, movedTo }) => ({
          key: containerId,
          cells: [`${spelled}, ${household.name}`, movedTo?.spelled ?? '', String(movedTo?.grams ?? '')],
        }))}
      />
      <details>
        <summary>{t.notMoved}</summary>
        <Form
          onSend={() => {
            if (one?.movedTo) undoing.mutate(one.movedTo.reCanningId);
          }}
        >
          <Choice
            label={t.which}
            value={one?.containerId ?? ''}
            options={moved.map(({ containerId, spelled }) => ({ value: containerId, name: spelled }))}
            onChange={(which) => change({ which })}
          />
          <Field label={t.why} value={reason} onChange={(event) => change({ reason: event.target.value })} />
          <ProblemSaid error={undoing.error} />
          <button type="submit" className="btn" disabled={undoing.isPending || reason.trim() === ''}>
            {t.takeBack}
          </button>
        </Form>
      </details>
    </>
  );
}
