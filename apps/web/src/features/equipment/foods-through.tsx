import { useText } from '../../text/taste.ts';
import { useNamed } from '../../ui/use-named.ts';
import { FoodFinder } from '../buy/food-finder.tsx';
import type { Food } from '../buy/run-queries.ts';
import { useEquipmentText } from './words.ts';

type Props = {
  foods: readonly Food[];
  onChange: (foods: readonly Food[]) => void;
  problem: string | undefined;
};

/** Which foods go through a thing while one has it. */
export function FoodsThrough({ foods, onChange, problem }: Props) {
  const t = useText();
  const words = useEquipmentText();
  const nameOf = useNamed();
  return (
    <fieldset className="stack">
      <legend className="legend">{words.foodsThrough}</legend>
      {foods.length === 0 ? null : (
        <ul className="list">
          {foods.map((food) => (
            <li key={food.id} className="row place">
              <span>{nameOf(food)}</span>
              <button
                type="button"
                className="btn quiet"
                onClick={() => onChange(foods.filter(({ id }) => id !== food.id))}
              >
                {t.remove} <span className="sr">{nameOf(food)}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <FoodFinder taken={foods.map(({ id }) => id)} onFound={(food) => onChange([...foods, food])} />
      {problem ? (
        <p className="said" role="alert">
          {problem}
        </p>
      ) : null}
    </fieldset>
  );
}
