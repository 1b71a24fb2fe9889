import { parseMass } from '@sheafbook/units';
import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { usePlanText } from './words.ts';

/** What a food's line goes by, as it is typed; an empty rule or cap is the group's own. */
export type LineDraft = {
  readonly massUnit: 'lb' | 'kg';
  readonly step: string;
  readonly splitRule: string;
  readonly cap: string;
};
export type GroupRules = { readonly splitRule: string; readonly commonCapGrams: number };

const RULES = [
  'proportional',
  'equal-awards',
  'equal-losses',
  'first-come',
  'need-first',
  'rotation-of-loss',
] as const;
export type RuleName = (typeof RULES)[number];

/** The typed line as it is sent; undefined while something in it is no figure. */
export function lineTermsOf({ step, splitRule, cap, massUnit }: LineDraft) {
  const stepUnits = /^[1-9]\d{0,3}$/.test(step.trim()) ? Number(step) : undefined;
  const grams = capGramsOf(cap, massUnit);
  if (stepUnits === undefined || grams === undefined) return undefined;
  return { stepUnits, splitRule: RULES.find((rule) => rule === splitRule) ?? null, commonCapGrams: grams };
}

function capGramsOf(cap: string, massUnit: 'lb' | 'kg'): number | null | undefined {
  if (cap.trim() === '') return null;
  const mass = parseMass(cap, { defaultUnit: massUnit });
  if (!('problem' in mass)) return mass.grams;
  return mass.problem === 'zero' ? 0 : undefined;
}

export function LineFields({
  draft,
  change,
  rules,
  isUnitOpen,
  problem,
}: {
  draft: LineDraft;
  change: (part: Partial<LineDraft>) => void;
  rules: GroupRules;
  /** The unit of a line is settled when it is planned. */
  isUnitOpen: boolean;
  problem?: string | undefined;
}) {
  const words = usePlanText();
  const { format } = useHouse();
  const nameOf = (rule: string) => words.rules[rule] ?? rule;
  const isStepWrong = !/^[1-9]\d{0,3}$/.test(draft.step.trim());
  return (
    <div className="pair roomy">
      {isUnitOpen ? (
        <Choice
          label={words.massUnit}
          value={draft.massUnit}
          options={[
            { value: 'lb', name: words.pounds },
            { value: 'kg', name: words.kilograms },
          ]}
          onChange={(unit) => change({ massUnit: unit === 'kg' ? 'kg' : 'lb' })}
        />
      ) : null}
      <Field
        label={`${words.step} (${draft.massUnit})`}
        inputMode="numeric"
        value={draft.step}
        onChange={(event) => change({ step: event.target.value })}
        problem={isStepWrong ? words.numberProblem : problem}
      />
      <Choice
        label={words.splitRule}
        value={draft.splitRule}
        options={[
          { value: '', name: words.ruleOfGroup(nameOf(rules.splitRule)) },
          ...RULES.map((rule) => ({ value: rule, name: nameOf(rule) })),
        ]}
        onChange={(splitRule) => change({ splitRule })}
      />
      <Field
        label={words.commonCap}
        hint={words.commonCapHint(format.massIn(rules.commonCapGrams, draft.massUnit))}
        value={draft.cap}
        onChange={(event) => change({ cap: event.target.value })}
        problem={capGramsOf(draft.cap, draft.massUnit) === undefined ? words.massProblem : undefined}
      />
    </div>
  );
}
