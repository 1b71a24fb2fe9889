import {
  formatMass,
  fraction,
  multiplyFractions,
  parseMass,
  parseMoney,
  readDecimal,
  roundFraction,
} from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { Fragment, useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useSettingsText } from './words.ts';

const rulesOf = api.storehouses[':storehouse'].rules;
type Rules = InferResponseType<(typeof api.storehouses)[':storehouse']['$get'], 200>['rules'];
type Change = InferRequestType<typeof rulesOf.$post>['json'];

const whole = (text: string): number | undefined =>
  /^\d{1,9}$/.test(text.trim()) ? Number(text) : undefined;

/** The days of the three dates of a container, in the order in which they pass. */
const DATES = ['offerDays', 'offerDaysWithoutPantry', 'giftWindowDays', 'eatFirstMarginDays'] as const;
type Dates<Value> = Record<(typeof DATES)[number], Value>;

const daysTyped = (rules: Rules) =>
  Object.fromEntries(DATES.map((name) => [name, String(rules[name])])) as Dates<string>;
const daysRead = (typed: Dates<string>) =>
  Object.fromEntries(DATES.map((name) => [name, whole(typed[name])])) as Dates<number | undefined>;

/** The rules in force; putting others in force makes a new version of them. */
export function RulesForm({ rules }: { rules: Rules }) {
  const words = useSettingsText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const shownCap = formatMass(rules.commonCapGrams, { unit: format.massUnit, locale: format.language });
  const {
    draft: { typed, freightBasis, splitRule },
    change,
    forget,
  } = useDraft(
    'rules',
    {
      typed: {
        depositPercent: String(rules.depositPercent),
        priceRisePercent: String(rules.priceRisePercent),
        claimWindowHours: String(rules.claimWindowHours),
        uncollectedDays: String(rules.uncollectedDays),
        ...daysTyped(rules),
        levy: String(rules.levyHundredthsOfPercent / 100),
        cap: shownCap,
        writeOff: format.money(rules.writeOffLimitMinorUnits),
      },
      freightBasis: rules.freightBasis as Change['freightBasis'],
      splitRule: rules.splitRule as Change['splitRule'],
    },
    { version: JSON.stringify(rules) },
  );
  const [isAsked, setIsAsked] = useState(false);
  const read = {
    depositPercent: whole(typed.depositPercent),
    priceRisePercent: whole(typed.priceRisePercent),
    claimWindowHours: whole(typed.claimWindowHours),
    uncollectedDays: whole(typed.uncollectedDays),
    ...daysRead(typed),
    levyHundredthsOfPercent: hundredths(typed.levy),
    // Unchanged it means every gram, not the rounded text.
    commonCapGrams: typed.cap === shownCap ? rules.commonCapGrams : gramsOf(typed.cap, format.massUnit),
    writeOffLimitMinorUnits: minorUnitsOf(typed.writeOff, format.currency),
  };
  const deciding = useMutation({
    mutationFn: (json: Change) => ask(rulesOf.$post({ param: { storehouse }, json })),
    onSuccess: () => {
      forget();
      return queries.invalidateQueries({ queryKey: ['storehouse'] });
    },
  });
  const problems = problemsOf(deciding.error);
  const field = (key: keyof typeof typed, name: keyof typeof read, label: string, problem: string) => (
    <Field
      label={label}
      inputMode="decimal"
      value={typed[key]}
      onChange={(event) => change({ typed: { ...typed, [key]: event.target.value } })}
      problem={isAsked && read[name] === undefined ? problem : problems[name]}
    />
  );
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        const { rulesVersion, blendNumerator, blendDenominator } = rules;
        if (Object.values(read).some((value) => value === undefined)) return;
        const figures = read as { [Name in keyof typeof read]: number };
        deciding.mutate({
          rulesVersion,
          blendNumerator,
          blendDenominator,
          freightBasis,
          splitRule,
          ...figures,
        });
      }}
    >
      <h2>{words.rules}</h2>
      <p>{words.rulesWords}</p>
      <Choice
        label={words.splitRule}
        value={splitRule}
        options={Object.entries(words.splitRules).map(([value, name]) => ({ value, name }))}
        onChange={(value) => change({ splitRule: value as Change['splitRule'] })}
      />
      <Choice
        label={words.freightBasis}
        value={freightBasis}
        options={Object.entries(words.freightBases).map(([value, name]) => ({ value, name }))}
        onChange={(value) => change({ freightBasis: value as Change['freightBasis'] })}
      />
      {field('depositPercent', 'depositPercent', words.depositPercent, words.wholeProblem)}
      {field('levy', 'levyHundredthsOfPercent', words.levy, words.percentProblem)}
      {field('priceRisePercent', 'priceRisePercent', words.priceRise, words.wholeProblem)}
      {field('cap', 'commonCapGrams', words.commonCap, words.massProblem)}
      {field(
        'writeOff',
        'writeOffLimitMinorUnits',
        `${words.writeOffLimit} (${format.currency})`,
        words.moneyProblem,
      )}
      {field('claimWindowHours', 'claimWindowHours', words.claimHours, words.wholeProblem)}
      {field('uncollectedDays', 'uncollectedDays', words.uncollectedDays, words.wholeProblem)}
      <h3>{words.dates}</h3>
      <p>{words.datesWords}</p>
      {DATES.map((name) => (
        <Fragment key={name}>{field(name, name, words.dateDays[name], words.wholeProblem)}</Fragment>
      ))}
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={deciding.error} />}
      <button type="submit" className="btn go" disabled={deciding.isPending}>
        {words.decide}
      </button>
    </Form>
  );
}

function hundredths(text: string): number | undefined {
  const value = readDecimal(text.trim());
  return value === undefined ? undefined : Number(roundFraction(multiplyFractions(value, fraction(100))));
}

function gramsOf(text: string, unit: 'lb' | 'kg'): number | undefined {
  const mass = parseMass(text, { defaultUnit: unit });
  if (!('problem' in mass)) return mass.grams;
  return mass.problem === 'zero' ? 0 : undefined;
}

function minorUnitsOf(text: string, currency: string): number | undefined {
  const money = parseMoney(text, currency);
  return 'minorUnits' in money ? money.minorUnits : undefined;
}
