import type { TreatmentCode } from '@sheafbook/keeping';
import { spellCode } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import type { InferRequestType } from 'hono/client';
import { askOnce } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useNamed } from '../../ui/use-named.ts';
import { useTitle } from '../../ui/use-title.ts';
import { PrintSheet } from '../label/print-sheet.tsx';
import { type Kind, kindsQuery } from '../shelf/queries.ts';
import { type Treatment, treatmentsQuery } from '../treatment/queries.ts';
import { type Bringable, blankLabelsQuery, bringableQuery, type OfSession, sessionApi } from './queries.ts';
import { usePackingText } from './words.ts';

/** Labels for a packing day before it runs, so that each stands on its can when the can is filled. */
export function LabelsAhead() {
  const t = usePackingText();
  const { session } = useParams({ from: '/s/$storehouse/packing/$session/labels' });
  const { storehouse } = useHouse();
  const param = { storehouse, session };
  useTitle(t.labelsAhead);
  const blank = useQuery(blankLabelsQuery(param));
  const bags = useQuery(bringableQuery(param));
  const kinds = useQuery(kindsQuery({ storehouse }));
  const book = useQuery(treatmentsQuery({ storehouse }));
  const nameOf = useNamed();
  return (
    <>
      <Link className="who" to="/s/$storehouse/packing/$session" params={param}>
        <BackIcon />
        {t.toDay}
      </Link>
      <Loaded isPage reading={joined(blank, joined(bags, joined(kinds, book)))}>
        {([{ labels, spent }, [{ bags: own }, [{ containerKinds }, { treatments }]]]) => (
          <>
            <h1>{t.labelsWait(labels.length)}</h1>
            <p>{t.labelsAheadSays}</p>
            {own.length === 0 ? (
              <p>{t.nothingWished}</p>
            ) : (
              <MakeLabels {...{ param, bags: own, kinds: containerKinds, treatments }} />
            )}
            {labels.length === 0 ? null : (
              <>
                <PrintSheet count={labels.length} path={`packing-sessions/${session}/labels/paper`} />
                <Ledger
                  caption={t.labelsUnused}
                  columns={[{ name: t.code }, { name: t.what }]}
                  rows={labels.map(({ containerId, code, food, kind, household }) => ({
                    key: containerId,
                    cells: [spellCode(code), [nameOf(food), nameOf(kind), household].join(', ')],
                  }))}
                />
              </>
            )}
            {spent.length === 0 ? null : (
              <>
                <p>{t.labelsSpentSays}</p>
                <Ledger
                  caption={t.labelsSpent(spent.length)}
                  columns={[{ name: t.code }, { name: t.whose }]}
                  rows={spent.map(({ containerId, spelled, household }) => ({
                    key: containerId,
                    cells: [spelled, household],
                  }))}
                />
              </>
            )}
          </>
        )}
      </Loaded>
    </>
  );
}

type MakeProps = {
  param: OfSession;
  bags: readonly Bringable[];
  kinds: readonly Kind[];
  treatments: readonly Treatment[];
};
type Making = InferRequestType<typeof sessionApi.labels.$post>['json'];

function MakeLabels({ param, bags, kinds, treatments }: MakeProps) {
  const t = usePackingText();
  const { format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { chosen, kindId, treatment, typed },
    change,
    reset,
  } = useDraft(`labels-ahead.${param.session}`, {
    chosen: '',
    kindId: kinds.find(({ kindCode }) => kindCode === 'can-no-10')?.id ?? '',
    treatment: 'oxygen-absorber' as TreatmentCode,
    typed: '',
  });
  const nameOf = useNamed();
  const keyOf = ({ bagId, householdId }: Bringable) => `${bagId} ${householdId}`;
  const bag = bags.find((one) => keyOf(one) === chosen) ?? bags[0];
  const count = /^[1-9]\d{0,2}$/.test(typed.trim()) ? Number(typed) : undefined;
  const making = useMutation({
    mutationFn: (json: Making) =>
      askOnce(`labels.${param.session}`, json, (headers) =>
        sessionApi.labels.$post({ param, json }, { headers }),
      ),
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: blankLabelsQuery(param).queryKey });
    },
  });
  const problems = problemsOf(making.error);
  return (
    <Form
      onSend={() => {
        if (!bag || count === undefined) return;
        const { bagId, householdId } = bag;
        making.mutate({
          bagId,
          householdId,
          containerKindId: kindId || (kinds[0]?.id ?? ''),
          treatment,
          count,
        });
      }}
    >
      <Choice
        label={t.whose}
        value={bag ? keyOf(bag) : ''}
        options={bags.map((one) => ({
          value: keyOf(one),
          name: t.bringOption(nameOf(one.food), one.household, one.bagNo, format.mass(one.grams)),
        }))}
        onChange={(chosen) => change({ chosen })}
        problem={problems.bagId}
      />
      <div className="pair">
        <Choice
          label={t.kind}
          value={kindId}
          options={kinds.map((one) => ({ value: one.id, name: nameOf(one) }))}
          onChange={(kindId) => change({ kindId })}
        />
        <Choice
          label={t.treatment}
          value={treatment}
          options={treatments.map(({ code, names }) => ({ value: code, name: names[format.language] }))}
          onChange={(code) => change({ treatment: code as TreatmentCode })}
        />
      </div>
      <Field
        label={t.labelsCount}
        inputMode="numeric"
        value={typed}
        onChange={(event) => change({ typed: event.target.value })}
        problem={typed !== '' && count === undefined ? t.countProblem : problems.count}
      />
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={making.error} />}
      <button type="submit" className="btn" disabled={count === undefined || making.isPending}>
        {t.makeLabels}
      </button>
    </Form>
  );
}
