import { formatMass, parseMass } from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { Check, Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse, useOwnHousehold } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useCoverageText } from '../home/words.ts';

const plans = api.storehouses[':storehouse'].households[':household'].plan;
type Plan = InferResponseType<typeof plans.$get, 200>;
type PlanEdit = InferRequestType<typeof plans.$put>['json'];
type Group = PlanEdit['targetGroups'][number];
const GROUPS: readonly Group[] = ['grains', 'legumes', 'dried-milk', 'fats', 'sugars', 'salt'];
type Unit = 'lb' | 'kg';

/** A typed mass in grams, 0 for none at all; null for an empty field, undefined for what is no mass. */
function gramsOf(text: string, unit: Unit): number | null | undefined {
  if (text.trim() === '') return null;
  const mass = parseMass(text, { defaultUnit: unit });
  if (!('problem' in mass)) return mass.grams;
  return mass.problem === 'zero' ? 0 : undefined;
}

/** How many days the household wants to last, of which foods, and by which need. */
export function PlanForm({ plan }: { plan: Plan }) {
  const t = useText();
  const words = useCoverageText();
  const param = useOwnHousehold();
  const { format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { days, groups, needBasis, addYear, own },
    change,
    forget,
  } = useDraft(
    'plan',
    {
      days: String(plan.targetDays),
      groups: plan.targetGroups as readonly Group[],
      needBasis: plan.needBasis as PlanEdit['needBasis'],
      addYear: plan.addYear,
      own: Object.fromEntries(
        plan.guidelines.map(({ foodGroup, gramsPerAdultYear }) => [
          foodGroup,
          formatMass(gramsPerAdultYear, { unit: format.massUnit, locale: format.language }),
        ]),
      ) as Readonly<Record<string, string>>,
    },
    { version: plan.version },
  );
  const typed = GROUPS.map((foodGroup) => ({
    foodGroup,
    grams: gramsOf(own[foodGroup] ?? '', format.massUnit),
  }));
  const saving = useMutation({
    mutationFn: () => {
      const guidelines = typed.flatMap(({ foodGroup, grams }) =>
        typeof grams === 'number'
          ? [
              {
                foodGroup,
                gramsPerAdultYear: kept(plan, { foodGroup, text: own[foodGroup], format }) ?? grams,
              },
            ]
          : [],
      );
      const targetGroups = GROUPS.filter((group) => groups.includes(group));
      const json = {
        version: plan.version,
        needBasis,
        targetDays: Number(days),
        targetGroups,
        addYear,
        guidelines,
      };
      return ask(plans.$put({ param, json }));
    },
    onSuccess: () => {
      forget();
      return Promise.all(['plan', 'coverage'].map((key) => queries.invalidateQueries({ queryKey: [key] })));
    },
  });
  const problems = problemsOf(saving.error);
  return (
    <Form
      onSend={() => {
        if (typed.every(({ grams }) => grams !== undefined)) saving.mutate();
      }}
    >
      <h2>{t.plan}</h2>
      <Field
        label={t.targetDays}
        inputMode="numeric"
        value={days}
        onChange={(event) => change({ days: event.target.value })}
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
                change({ groups: isOn ? [...groups, group] : groups.filter((known) => known !== group) })
              }
            />
          ))}
        </div>
        {problems.targetGroups ? <p className="wrong">{t.oneGroup}</p> : null}
      </fieldset>
      <Choice
        label={words.planBasis}
        value={needBasis}
        options={(['guideline', 'energy'] as const).map((value) => ({
          value,
          name: words.bases[value] ?? value,
        }))}
        onChange={(basis) => change({ needBasis: basis as PlanEdit['needBasis'] })}
      />
      <Check label={words.addYear} isOn={addYear} onChange={(addYear) => change({ addYear })} />
      <OwnFigures typed={typed} own={own} onChange={(own) => change({ own })} />
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={saving.error} />}
      <div className="actions">
        <button type="submit" className="btn" disabled={saving.isPending}>
          {t.save}
        </button>
        <span role="status">{saving.isSuccess ? t.saved : ''}</span>
      </div>
    </Form>
  );
}

type Shown = {
  foodGroup: Group;
  text: string | undefined;
  format: { massUnit: Unit; language: 'en' | 'es' };
};

/** The grams as the book has them while the text still shows them rounded, so that saving moves nothing unasked. */
function kept(plan: Plan, { foodGroup, text, format }: Shown): number | undefined {
  const known = plan.guidelines.find((row) => row.foodGroup === foodGroup)?.gramsPerAdultYear;
  if (known === undefined) return undefined;
  return text === formatMass(known, { unit: format.massUnit, locale: format.language }) ? known : undefined;
}

type OwnFiguresProps = {
  typed: readonly { foodGroup: Group; grams: number | null | undefined }[];
  own: Readonly<Record<string, string>>;
  onChange: (own: Readonly<Record<string, string>>) => void;
};

/** A year's food of one adult, where the household departs from the guideline. */
function OwnFigures({ typed, own, onChange }: OwnFiguresProps) {
  const t = useText();
  const words = useCoverageText();
  return (
    <details>
      <summary>{words.ownFigures}</summary>
      <p>{words.ownFiguresWords}</p>
      <div className="pair">
        {typed.map(({ foodGroup, grams }) => (
          <Field
            key={foodGroup}
            label={t.groups[foodGroup] ?? foodGroup}
            inputMode="decimal"
            value={own[foodGroup] ?? ''}
            onChange={(event) => onChange({ ...own, [foodGroup]: event.target.value })}
            problem={grams === undefined ? words.massProblem : undefined}
          />
        ))}
      </div>
    </details>
  );
}
