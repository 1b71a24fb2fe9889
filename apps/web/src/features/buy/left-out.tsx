import { mayEat } from '@sheafbook/coverage';
import { useQuery } from '@tanstack/react-query';
import { eatersQuery } from '../../api/queries.ts';
import type { Catalogue } from '../../text/en/core.ts';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import type { KnownEater } from '../household/eater.ts';
import type { BuyLineBody } from './buy-body.ts';
import { foodNameOf } from './food-name.ts';
import { foodsQuery } from './run-queries.ts';
import { usePledgeText } from './words.ts';

type KnownFood = {
  readonly foodCode: string;
  readonly allergens: readonly string[];
  readonly gluten: string;
};

/** Who of the own household does not eat a food, said before it is pledged: nobody else is told, nothing is forbidden. */
export function LeftOut({ line, household }: { line: BuyLineBody; household: string }) {
  const t = useText();
  const words = usePledgeText();
  const { storehouse, format } = useHouse();
  const eaters = useQuery(eatersQuery({ storehouse, household }));
  const foods = useQuery(foodsQuery({ storehouse }));
  const food = foods.data?.find(({ id }) => id === line.food.id);
  const without = food ? (eaters.data?.eaters ?? []).filter((eater) => !mayEat(eater, eatable(food))) : [];
  if (!food || without.length === 0) return null;
  const name = foodNameOf(line, format.language);
  return (
    <section className="next" aria-label={words.leftOutTitle}>
      {without.map((eater) => (
        <p key={eater.id}>{words.leftOut(eater.name, name, reasonsOf(t, eater, food, name).join(', '))}</p>
      ))}
      <p className="soft">{words.leftOutWords(without.length, eaters.data?.eaters.length ?? 0)}</p>
    </section>
  );
}

/** What is not said to be free of gluten is taken as not free of it. */
const eatable = ({ foodCode, allergens, gluten }: KnownFood) => ({
  foodCode,
  allergens,
  gluten: gluten === 'no' ? ('no' as const) : ('yes' as const),
});

/** What the household itself wrote down of an eater, as far as it meets this food. */
function reasonsOf(t: Catalogue, eater: KnownEater, food: KnownFood, name: string): string[] {
  return [
    ...eater.excludedAllergens
      .filter((allergen) => food.allergens.includes(allergen))
      .map((allergen) => t.without(t.allergens[allergen] ?? allergen)),
    ...(eater.excludedFoodCodes.includes(food.foodCode) ? [t.without(name)] : []),
    ...(eater.avoidsGluten && food.gluten !== 'no' ? [t.withoutGluten] : []),
  ];
}
