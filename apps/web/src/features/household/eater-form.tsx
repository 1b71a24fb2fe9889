import { isPartialDay } from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { Check, Choice, Field, NameField, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useOwnHousehold } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useCoverageText } from '../home/words.ts';
import { ALLERGENS, type Allergen, type KnownEater } from './eater.ts';
import { ExcludedFoods } from './excluded-foods.tsx';

const eaters = api.storehouses[':storehouse'].households[':household'].eaters;

type Draft = {
  name: string;
  birthOn: string;
  sex: 'female' | 'male' | 'unstated';
  activity: 'sedentary' | 'moderate' | 'active';
  presentPercent: string;
  heightCentimetres: string;
  massKilograms: string;
  typedKilocalories: string;
  excludedAllergens: readonly Allergen[];
  excludedFoodCodes: readonly string[];
  avoidsGluten: boolean;
};
const NOBODY: Draft = {
  name: '',
  birthOn: '',
  sex: 'unstated',
  activity: 'moderate',
  presentPercent: '100',
  heightCentimetres: '',
  massKilograms: '',
  typedKilocalories: '',
  excludedAllergens: [],
  excludedFoodCodes: [],
  avoidsGluten: false,
};

const draftOf = (eater: KnownEater): Draft => ({
  name: eater.name,
  birthOn: eater.birthOn,
  sex: eater.sex as Draft['sex'],
  activity: eater.activity as Draft['activity'],
  presentPercent: String(eater.presentPercent),
  heightCentimetres: String(eater.heightCentimetres ?? ''),
  massKilograms: String(eater.massKilograms ?? ''),
  typedKilocalories: String(eater.typedKilocalories ?? ''),
  excludedAllergens: eater.excludedAllergens as Allergen[],
  excludedFoodCodes: eater.excludedFoodCodes,
  avoidsGluten: eater.avoidsGluten,
});

/** Nothing typed is nothing known; what is no number is left for the server to refuse at its field. */
const numberOf = (text: string): number | null => (text.trim() === '' ? null : Number(text));

/** One eater in plain words: name and birth year are enough, the rest is there for whoever wants it. */
export function EaterForm({
  eater,
  isFirst = false,
  onDone,
}: {
  eater?: KnownEater;
  isFirst?: boolean;
  onDone?: () => void;
}) {
  const t = useText();
  const words = useCoverageText();
  const param = useOwnHousehold();
  const queries = useQueryClient();
  const { draft, change, reset } = useDraft(`eater.${eater?.id ?? 'new'}`, eater ? draftOf(eater) : NOBODY, {
    version: eater?.version ?? 0,
  });
  const [isAsked, setIsAsked] = useState(false);
  const saving = useMutation({
    mutationFn: () => {
      const presentPercent = Number(draft.presentPercent);
      const facts = {
        ...draft,
        excludedAllergens: [...draft.excludedAllergens],
        excludedFoodCodes: [...draft.excludedFoodCodes],
        presentPercent,
        heightCentimetres: numberOf(draft.heightCentimetres),
        massKilograms: numberOf(draft.massKilograms),
        typedKilocalories: numberOf(draft.typedKilocalories),
      };
      if (!eater) return ask(eaters.$post({ param, json: facts }));
      const json = { ...facts, version: eater.version };
      return ask(eaters[':eater'].$put({ param: { ...param, eater: eater.id }, json }));
    },
    onSuccess: async () => {
      reset();
      setIsAsked(false);
      await Promise.all(['eaters', 'coverage'].map((key) => queries.invalidateQueries({ queryKey: [key] })));
      onDone?.();
    },
  });
  const problems = problemsOf(saving.error);
  const isNameMissing = isAsked && draft.name.trim() === '';
  const isBirthWrong = isAsked && !isPartialDay(draft.birthOn.trim());
  const id = eater?.id ?? 'new';
  return (
    <Form
      label={eater ? t.changeEater(eater.name) : t.addEater}
      onSend={() => {
        setIsAsked(true);
        if (draft.name.trim() !== '' && isPartialDay(draft.birthOn.trim())) saving.mutate();
      }}
    >
      <h2>{eater ? t.changeEater(eater.name) : isFirst ? t.firstEater : t.addEater}</h2>
      <div className="pair">
        <NameField
          label={t.eaterName}
          value={draft.name}
          onChange={(event) => change({ name: event.target.value })}
          problem={isNameMissing || problems.name ? t.nameNeeded : undefined}
        />
        <Field
          label={t.birth}
          hint={t.birthHint}
          inputMode="numeric"
          value={draft.birthOn}
          onChange={(event) => change({ birthOn: event.target.value })}
          problem={isBirthWrong || problems.birthOn ? t.birthProblem : undefined}
        />
      </div>
      <details open={eater !== undefined}>
        <summary>{t.moreAboutEater}</summary>
        <div className="stack">
          <div className="pair">
            <Choice
              label={t.sex}
              value={draft.sex}
              options={(['unstated', 'female', 'male'] as const).map((value) => ({
                value,
                name: t.sexes[value] ?? value,
              }))}
              onChange={(sex) => change({ sex: sex as Draft['sex'] })}
            />
            <Choice
              label={t.activity}
              value={draft.activity}
              options={(['sedentary', 'moderate', 'active'] as const).map((value) => ({
                value,
                name: t.activities[value] ?? value,
              }))}
              onChange={(activity) => change({ activity: activity as Draft['activity'] })}
            />
            <Field
              label={t.present}
              inputMode="numeric"
              value={draft.presentPercent}
              onChange={(event) => change({ presentPercent: event.target.value })}
              problem={problems.presentPercent && t.percentProblem}
            />
            <Field
              label={words.height}
              inputMode="numeric"
              value={draft.heightCentimetres}
              onChange={(event) => change({ heightCentimetres: event.target.value })}
              problem={problems.heightCentimetres && words.wholeProblem}
            />
            <Field
              label={words.bodyMass}
              inputMode="numeric"
              value={draft.massKilograms}
              onChange={(event) => change({ massKilograms: event.target.value })}
              problem={problems.massKilograms && words.wholeProblem}
            />
          </div>
          <Field
            label={words.typedEnergy}
            hint={words.typedEnergyHint}
            inputMode="numeric"
            value={draft.typedKilocalories}
            onChange={(event) => change({ typedKilocalories: event.target.value })}
            problem={problems.typedKilocalories && words.wholeProblem}
          />
          <fieldset>
            <legend className="legend">{t.mayNotEat}</legend>
            <div className="pair">
              <Check
                label={t.gluten}
                isOn={draft.avoidsGluten}
                onChange={(avoidsGluten) => change({ avoidsGluten })}
              />
              {ALLERGENS.map((allergen) => (
                <Check
                  key={`${id}-${allergen}`}
                  label={t.allergens[allergen]}
                  isOn={draft.excludedAllergens.includes(allergen)}
                  onChange={(isOn) =>
                    change({
                      excludedAllergens: isOn
                        ? [...draft.excludedAllergens, allergen]
                        : draft.excludedAllergens.filter((known) => known !== allergen),
                    })
                  }
                />
              ))}
            </div>
          </fieldset>
          <ExcludedFoods
            codes={draft.excludedFoodCodes}
            onChange={(excludedFoodCodes) => change({ excludedFoodCodes })}
          />
        </div>
      </details>
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={saving.error} />}
      <div className="actions">
        <button type="submit" className={isFirst ? 'btn go' : 'btn'} disabled={saving.isPending}>
          {eater ? t.save : t.addThisEater}
        </button>
        {onDone ? (
          <button type="button" className="btn quiet" onClick={onDone}>
            {t.leaveIt}
          </button>
        ) : null}
      </div>
    </Form>
  );
}
