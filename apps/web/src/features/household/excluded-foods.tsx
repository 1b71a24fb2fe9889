import { useQuery } from '@tanstack/react-query';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { FoodFinder } from '../buy/food-finder.tsx';
import { foodsQuery } from '../buy/run-queries.ts';
import { useFoodNames } from '../coverage/other-stock.tsx';
import { useCoverageText } from '../home/words.ts';

type Props = { codes: readonly string[]; onChange: (codes: readonly string[]) => void };

/** Single foods that an eater leaves out, beside whole allergens. */
export function ExcludedFoods({ codes, onChange }: Props) {
  const t = useText();
  const words = useCoverageText();
  const { storehouse } = useHouse();
  const { data } = useQuery(foodsQuery({ storehouse }));
  const nameOf = useFoodNames();
  const taken = (data ?? []).filter(({ foodCode }) => codes.includes(foodCode)).map(({ id }) => id);
  return (
    <fieldset className="stack">
      <legend className="legend">{words.leavesOut}</legend>
      {codes.length === 0 ? null : (
        <ul className="list">
          {codes.map((code) => (
            <li key={code} className="row place">
              <span>{nameOf(code)}</span>
              <button
                type="button"
                className="btn quiet"
                onClick={() => onChange(codes.filter((other) => other !== code))}
              >
                {t.remove} <span className="sr">{nameOf(code)}</span>
              </button>
            </li>
          ))}
        </ul>
      )}
      <FoodFinder taken={taken} onFound={({ foodCode }) => onChange([...codes, foodCode])} />
    </fieldset>
  );
}
