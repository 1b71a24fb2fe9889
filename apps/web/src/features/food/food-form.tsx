import { FOOD_GROUPS, KEEPING_CLASSES } from '@sheafbook/foods';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { Check, Choice, Field, type Problems, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { AllergenFields } from './allergen-fields.tsx';
import { draftOfFood, type FieldsProps, type FoodDraft, figuresOf, NO_FOOD } from './food-draft.ts';
import { type Food, foodsOf } from './queries.ts';
import { useFoodText } from './words.ts';

/** A food of the group's own. Its allergens must be answered: "none" is stated, never left out. */
export function FoodForm({ food, onSaved }: { food?: Food; onSaved: (id: string) => void }) {
  const t = useText();
  const words = useFoodText();
  const queries = useQueryClient();
  const save = useSendFood(food);
  const { draft, change, forget } = useDraft<FoodDraft>(
    `food.${food?.id ?? 'new'}`,
    food ? draftOfFood(food) : NO_FOOD,
    { version: food?.version ?? 0 },
  );
  const [isAsked, setIsAsked] = useState(false);
  const saving = useMutation({
    mutationFn: () => save(draft),
    onSuccess: async ({ id }) => {
      forget();
      await queries.invalidateQueries({ queryKey: ['foods'] });
      onSaved(id);
    },
  });
  const problems: Problems = { ...problemsOf(saving.error), ...(isAsked ? ownProblems(draft, words) : {}) };
  return (
    <Form
      label={food ? words.changeIt : words.add}
      onSend={() => {
        setIsAsked(true);
        if (Object.keys(ownProblems(draft, words)).length === 0) saving.mutate();
      }}
    >
      <NameFields draft={draft} change={change} problems={problems} isNew={food === undefined} />
      <AllergenFields draft={draft} change={change} problems={problems} />
      <FigureFields draft={draft} change={change} problems={problems} />
      <Check
        label={words.moisture}
        isOn={draft.needsMoistureTest}
        onChange={(needsMoistureTest) => change({ needsMoistureTest })}
      />
      <Field
        label={words.sourceName}
        hint={words.sourceHint}
        value={draft.source}
        onChange={(event) => change({ source: event.target.value })}
        problem={problems.source}
      />
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={saving.error} />}
      <button type="submit" className="btn go" disabled={saving.isPending}>
        {food ? t.save : words.addIt}
      </button>
    </Form>
  );
}

function useSendFood(food: Food | undefined) {
  const { storehouse } = useHouse();
  return (draft: FoodDraft) => {
    const { nameEn, nameEs, foodGroup, keepingClass, needsMoistureTest, source } = draft;
    const figures = figuresOf(draft) as { [Name in keyof ReturnType<typeof figuresOf>]: number | null };
    const gluten = draft.gluten === '' ? 'no' : draft.gluten; // answered by now
    const allergens = [...draft.allergens];
    const facts = { nameEn, foodGroup, ...figures, allergens, gluten, needsMoistureTest, source };
    if (food) {
      const json = { ...facts, version: food.version, nameEs: nameEs.trim() === '' ? nameEn : nameEs };
      return ask(foodsOf[':food'].$put({ param: { storehouse, food: food.id }, json }));
    }
    const own = nameEs.trim() === '' ? {} : { nameEs };
    const json = { ...facts, ...own, keepingClass: keepingClass === '' ? null : keepingClass };
    return ask(foodsOf.$post({ param: { storehouse }, json }));
  };
}

/** What can be said before the server is asked. */
function ownProblems(draft: FoodDraft, words: ReturnType<typeof useFoodText>): Problems {
  const noNumber = Object.entries(figuresOf(draft)).filter(([, value]) => value === undefined);
  return {
    ...Object.fromEntries(noNumber.map(([name]) => [name, words.numberProblem])),
    ...(draft.nameEn.trim() === '' ? { nameEn: words.nameProblem } : {}),
    ...(draft.hasNone || draft.allergens.length > 0 ? {} : { allergens: words.allergensProblem }),
    ...(draft.gluten === '' ? { gluten: words.glutenProblem } : {}),
    ...(draft.source.trim() === '' ? { source: words.sourceProblem } : {}),
  };
}

function NameFields({ draft, change, problems, isNew }: FieldsProps & { isNew: boolean }) {
  const t = useText();
  const words = useFoodText();
  return (
    <div className="pair roomy">
      <Field
        label={words.nameEn}
        value={draft.nameEn}
        onChange={(event) => change({ nameEn: event.target.value })}
        problem={problems.nameEn}
      />
      <Field
        label={words.nameEs}
        value={draft.nameEs}
        onChange={(event) => change({ nameEs: event.target.value })}
        problem={problems.nameEs}
      />
      <Choice
        label={t.foodGroup}
        value={draft.foodGroup}
        options={FOOD_GROUPS.map((value) => ({ value, name: t.groups[value] ?? value }))}
        onChange={(value) => change({ foodGroup: value as FoodDraft['foodGroup'] })}
      />
      {isNew ? (
        <Choice
          label={words.keepsAs}
          value={draft.keepingClass}
          options={[
            { value: '', name: words.unknown },
            ...KEEPING_CLASSES.map((value) => ({ value, name: words.keepingClasses[value] ?? value })),
          ]}
          onChange={(value) => change({ keepingClass: value as FoodDraft['keepingClass'] })}
        />
      ) : null}
    </div>
  );
}

function FigureFields({ draft, change, problems }: FieldsProps) {
  const words = useFoodText();
  const figure = (
    key: 'kilocalories' | 'protein' | 'fat' | 'carbohydrate' | 'fibre' | 'bulk',
    label: string,
    problem: string | undefined,
  ) => (
    <Field
      label={label}
      inputMode="decimal"
      value={draft[key]}
      onChange={(event) => change({ [key]: event.target.value })}
      problem={problem}
    />
  );
  return (
    <fieldset className="stack">
      <legend className="legend">{words.composition}</legend>
      <p className="soft">{words.compositionHint}</p>
      <div className="pair">
        {figure('kilocalories', `${words.energyName} (kcal)`, problems.kilocaloriesPer100Grams)}
        {figure('protein', `${words.protein} (g)`, problems.proteinMilligramsPer100Grams)}
        {figure('fat', `${words.fat} (g)`, problems.fatMilligramsPer100Grams)}
        {figure('carbohydrate', `${words.carbohydrate} (g)`, problems.carbohydrateMilligramsPer100Grams)}
        {figure('fibre', `${words.fibre} (g)`, problems.fibreMilligramsPer100Grams)}
        {figure('bulk', `${words.bulk} (g/mL)`, problems.bulkMicrogramsPerMillilitre)}
      </div>
    </fieldset>
  );
}
