import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { Check, Field, problemsOf } from '../../ui/field.tsx';
import { useOwnHousehold } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';

const plans = api.storehouses[':storehouse'].households[':household'].plan;
type Plan = InferResponseType<typeof plans.$get, 200>;
type PlanEdit = InferRequestType<typeof plans.$put>['json'];
type Group = PlanEdit['targetGroups'][number];
const GROUPS: readonly Group[] = ['grains', 'legumes', 'dried-milk', 'fats', 'sugars', 'salt'];

/** How many days the household wants to last, and of which foods. */
export function PlanForm({ plan }: { plan: Plan }) {
  const t = useText();
  const param = useOwnHousehold();
  const queries = useQueryClient();
  const [days, setDays] = useState(String(plan.targetDays));
  const [groups, setGroups] = useState(plan.targetGroups as readonly Group[]);
  const saving = useMutation({
    mutationFn: () => {
      const json = {
        version: plan.version,
        needBasis: plan.needBasis as PlanEdit['needBasis'],
        targetDays: Number(days),
        targetGroups: GROUPS.filter((group) => groups.includes(group)),
        addYear: plan.addYear,
        guidelines: plan.guidelines as PlanEdit['guidelines'],
      };
      return ask(plans.$put({ param, json }));
    },
    onSuccess: () =>
      Promise.all(['plan', 'coverage'].map((key) => queries.invalidateQueries({ queryKey: [key] }))),
  });
  const problems = problemsOf(saving.error);
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        saving.mutate();
      }}
    >
      <h2>{t.plan}</h2>
      <Field
        label={t.targetDays}
        inputMode="numeric"
        value={days}
        onChange={(event) => setDays(event.target.value)}
        problem={problems.targetDays && t.daysProblem}
      />
      <fieldset>
        <legend className="legend">{t.targetGroups}</legend>
        <div className="pair">
          {GROUPS.map((group) => (
            <Check
              key={group}
              label={t.groups[group]}
              isOn={groups.includes(group)}
              onChange={(isOn) =>
                setGroups(isOn ? [...groups, group] : groups.filter((known) => known !== group))
              }
            />
          ))}
        </div>
        {problems.targetGroups ? <p className="wrong">{t.oneGroup}</p> : null}
      </fieldset>
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={saving.error} />}
      <div className="actions">
        <button type="submit" className="btn" disabled={saving.isPending}>
          {t.save}
        </button>
        <span role="status">{saving.isSuccess ? t.saved : ''}</span>
      </div>
    </form>
  );
}
