import { addDays } from '../../text/format.ts';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { Ledger } from '../../ui/pieces.tsx';
import type { Coverage } from '../home/coverage.ts';
import { useCoverageText } from '../home/words.ts';
import { useFoodNames } from './other-stock.tsx';

/** Beside the groups: how far each food alone goes for those who may eat it, and who may not. */
export function ByFood({ coverage }: { coverage: Coverage }) {
  const t = useText();
  const words = useCoverageText();
  const { format } = useHouse();
  const nameOf = useFoodNames();
  const foods = coverage.byFood.toSorted(
    (a, b) => (a.wholeDays ?? Number.MAX_SAFE_INTEGER) - (b.wholeDays ?? Number.MAX_SAFE_INTEGER),
  );
  if (foods.length === 0) return null;
  const until = ({ wholeDays, mayEat }: Coverage['byFood'][number]) => {
    if (mayEat.length === 0) return words.nobody;
    if (wholeDays === null) return t.noEnd;
    return `${format.day(addDays(format.today(), wholeDays))} (${format.count(wholeDays)})`;
  };
  return (
    <section className="stack">
      <h2>{words.byFood}</h2>
      <p className="soft">{words.byFoodWords}</p>
      <Ledger
        caption={words.byFood}
        columns={[
          { name: words.food },
          { name: t.stock, isNumber: true },
          { name: words.aloneUntil, isNumber: true },
        ]}
        rows={foods.map((food) => ({
          key: food.foodCode,
          cells: [nameOf(food.foodCode), format.mass(food.grams), until(food)],
        }))}
      />
      {foods
        .filter(({ mayEat, mayNotEat }) => mayEat.length > 0 && mayNotEat.length > 0)
        .map(({ foodCode, mayNotEat }) => (
          <p key={foodCode}>
            {words.mayNot(
              mayNotEat.map(({ name }) => name),
              nameOf(foodCode),
            )}
          </p>
        ))}
    </section>
  );
}
