import { useQuery } from '@tanstack/react-query';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { foodsQuery } from '../buy/run-queries.ts';
import type { Coverage } from '../home/coverage.ts';
import { useCoverageText } from '../home/words.ts';

/** What counts for no day yet: food that waits, and food on hold; and what a day of each food cost. */
export function OtherStock({ coverage }: { coverage: Coverage }) {
  const t = useText();
  const words = useCoverageText();
  const { format } = useHouse();
  const nameOf = useFoodNames();
  const costs = coverage.groups.filter(({ costPerDayMinorUnits }) => costPerDayMinorUnits !== null);
  return (
    <>
      {coverage.coming.length + coverage.onHold.length === 0 ? null : (
        <section>
          <h2>{words.otherStock}</h2>
          <ul>
            {coverage.coming.map(({ foodCode, grams }) => (
              <li key={`coming ${foodCode}`}>{words.comingOne(format.mass(grams), nameOf(foodCode))}</li>
            ))}
            {coverage.onHold.map(({ foodCode, grams }) => (
              <li key={`held ${foodCode}`}>{words.heldOne(format.mass(grams), nameOf(foodCode))}</li>
            ))}
          </ul>
        </section>
      )}
      {costs.length === 0 ? null : (
        <section>
          <h2>{words.costTitle}</h2>
          <Ledger
            caption={words.costTitle}
            columns={[{ name: t.foodGroup }, { name: format.currency, isNumber: true }]}
            rows={costs.map(({ group, costPerDayMinorUnits }) => ({
              key: group,
              cells: [t.groups[group] ?? group, format.money(Math.round(costPerDayMinorUnits ?? 0))],
            }))}
          />
        </section>
      )}
    </>
  );
}

/** A food's name by its code, in the reader's language; the code itself until the list is there. */
export function useFoodNames(): (code: string) => string {
  const { storehouse, format } = useHouse();
  const { data } = useQuery(foodsQuery({ storehouse }));
  const known = new Map(data?.map((food) => [food.foodCode, food]));
  return (code) => {
    const food = known.get(code);
    return food ? nameIn(format.language, food) : code;
  };
}
