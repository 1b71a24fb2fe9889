import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { askOnce } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { wholeTyped } from '../equipment/typed.ts';
import { inside, type Scale, scaleChecksQuery, scalesQuery } from './queries.ts';
import { Standing } from './standing.tsx';
import { useScaleText } from './words.ts';

const CHECKS = ['equipment_keeper', 'packing_lead', 'coordinator'] as const;

/** A thing that is a scale: how each piece stands, a form for its next check, and all checks so far. */
export function ChecksOfItem({ item }: { item: string }) {
  const t = useScaleText();
  const { storehouse, format, duties } = useHouse();
  const mayCheck = CHECKS.some((duty) => duties.includes(duty));
  const reading = joined(
    useQuery(scalesQuery({ storehouse })),
    useQuery(scaleChecksQuery({ storehouse, item })),
  );
  return (
    <section className="stack">
      <h2>{t.title}</h2>
      <Loaded reading={reading}>
        {([{ scales }, { checks }]) => (
          <>
            {scales
              .filter(({ itemId }) => itemId === item)
              .map((scale) => (
                <div key={scale.unitId} className="stack">
                  <p>
                    <b>{t.name(scale.itemName, scale.unitNo)}</b> <Standing scale={scale} isNamed={false} />
                  </p>
                  {mayCheck ? <CheckForm scale={scale} /> : null}
                </div>
              ))}
            <h3>{t.checks}</h3>
            {checks.length === 0 ? <p className="soft">{t.noChecks}</p> : null}
            <ul>
              {checks.map((check) => (
                <li key={check.id}>
                  {t.check(format.day(check.checkedOn), check.checkedBy, check.unitNo)}
                  <span className="soft block">
                    {t.reading(
                      format.count(check.laidGrams),
                      format.count(check.shownGrams),
                      format.count(check.limitGrams),
                    )}
                  </span>
                </li>
              ))}
            </ul>
          </>
        )}
      </Loaded>
    </section>
  );
}

const asText = (grams: number | null) => (grams === null ? '' : String(grams));

function CheckForm({ scale }: { scale: Scale }) {
  const t = useScaleText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const { draft, change, reset } = useDraft(`scale-check.${scale.unitId}`, {
    ...{ laid: asText(scale.laidGrams), shown: '', limit: asText(scale.limitGrams), day: format.today() },
  });
  const [isAsked, setIsAsked] = useState(false);
  const json = {
    laidGrams: wholeTyped(draft.laid) ?? undefined,
    shownGrams: wholeTyped(draft.shown) ?? undefined,
    limitGrams: wholeTyped(draft.limit) ?? undefined,
    checkedOn: draft.day,
  };
  const saving = useMutation({
    mutationFn: async () => {
      const { laidGrams, shownGrams, limitGrams, checkedOn } = json;
      if (laidGrams === undefined || shownGrams === undefined || limitGrams === undefined) return null;
      const whole = { laidGrams, shownGrams, limitGrams, checkedOn };
      return askOnce(`scale-check.${scale.unitId}`, whole, (headers) =>
        inside['equipment-units'][':unit']['scale-checks'].$post(
          { param: { storehouse, unit: scale.unitId }, json: whole },
          { headers },
        ),
      );
    },
    onSuccess: async (saved) => {
      if (!saved) return;
      setIsAsked(false);
      reset();
      await queries.invalidateQueries({ queryKey: ['equipment'] });
      await queries.invalidateQueries({ queryKey: ['packing'] });
    },
  });
  const refused = problemsOf(saving.error);
  const problemOf = (key: 'laidGrams' | 'shownGrams' | 'limitGrams') =>
    refused[key] ?? (isAsked && json[key] === undefined ? t.gramsProblem : undefined);
  const gramsField = (key: 'laid' | 'shown' | 'limit', label: string) => (
    <Field
      label={label}
      inputMode="numeric"
      value={draft[key]}
      onChange={(event) => change({ [key]: event.target.value })}
      problem={problemOf(`${key}Grams`)}
    />
  );
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        saving.mutate();
      }}
    >
      <p className="soft">{t.words}</p>
      {gramsField('laid', t.laid)}
      {gramsField('shown', t.shown)}
      {gramsField('limit', t.limit)}
      <Field
        label={t.day}
        type="date"
        value={draft.day}
        onChange={(event) => change({ day: event.target.value })}
        problem={refused.checkedOn}
      />
      <ProblemSaid error={saving.error} />
      {saving.data ? (
        <p className="said well-said" role="status">
          {t.saved}
        </p>
      ) : null}
      <div>
        <button type="submit" className="btn" disabled={saving.isPending}>
          {t.save}
        </button>
      </div>
    </Form>
  );
}
