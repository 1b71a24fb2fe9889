import { ALLERGENS } from '@sheafbook/foods';
import { useId } from 'react';
import { useText } from '../../text/taste.ts';
import { Check, Choice } from '../../ui/field.tsx';
import type { FieldsProps, FoodDraft } from './food-draft.ts';
import { useFoodText } from './words.ts';

/** Which of the nine are in the food, or that none is. One of the two must be said. */
export function AllergenFields({ draft, change, problems }: FieldsProps) {
  const t = useText();
  const words = useFoodText();
  const id = useId();
  return (
    <>
      <fieldset className="field" aria-describedby={id}>
        <legend className="legend">{words.allergensName}</legend>
        <div className="pair">
          {ALLERGENS.map((allergen) => (
            <Check
              key={allergen}
              label={t.allergens[allergen]}
              isOn={draft.allergens.includes(allergen)}
              onChange={(isOn) =>
                change({
                  hasNone: false,
                  allergens: ALLERGENS.filter((one) =>
                    one === allergen ? isOn : draft.allergens.includes(one),
                  ),
                })
              }
            />
          ))}
          <Check
            label={words.noneOfNineBox}
            isOn={draft.hasNone}
            onChange={(hasNone) => change({ hasNone, ...(hasNone ? { allergens: [] } : {}) })}
          />
        </div>
        <span id={id} className="problem" role="alert">
          {problems.allergens}
        </span>
      </fieldset>
      <Choice
        label={words.glutenName}
        value={draft.gluten}
        options={[
          { value: '', name: words.choose },
          ...(['yes', 'no', 'cross-contact'] as const).map((value) => ({
            value,
            name: words.glutens[value] ?? value,
          })),
        ]}
        onChange={(value) => change({ gluten: value as FoodDraft['gluten'] })}
        problem={problems.gluten}
      />
    </>
  );
}
