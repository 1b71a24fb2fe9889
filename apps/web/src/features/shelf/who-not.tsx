import { useQuery } from '@tanstack/react-query';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { WrongMark } from '../../ui/icons.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { eatersOfQuery } from './queries.ts';
import { useShelfText } from './words.ts';

/** Who of the household may not eat what is in a container, and who should take care, before anybody opens it. */
export function WhoNot({ container, food }: { container: string; food: string }) {
  const t = useText();
  const words = useShelfText();
  const { storehouse, format } = useHouse();
  const { data } = useQuery(eatersOfQuery({ storehouse, container }));
  if (!data || data.mayNotEat.length + data.mayHaveMet.length === 0) return null;
  const allergenName = (code: string) => t.allergens[code as keyof typeof t.allergens] ?? code;
  return (
    <div className="stack">
      {data.mayNotEat.length === 0 ? null : (
        <ul className="said who-not">
          {data.mayNotEat.map(({ name, allergens, isFoodExcluded, hasGluten }) => (
            <li key={name}>
              <WrongMark />{' '}
              {words.mayNotEat(name, [
                ...allergens.map((code) => allergenName(code).toLowerCase()),
                ...(hasGluten ? [t.gluten.toLowerCase()] : []),
                ...(isFoodExcluded ? [food.toLowerCase()] : []),
              ])}
            </li>
          ))}
        </ul>
      )}
      {data.mayHaveMet.map(({ name, foods }) => (
        <p key={name} className="said watch-said">
          {words.mayHaveMet(
            name,
            foods.map((one) => nameIn(format.language, one).toLowerCase()),
          )}
        </p>
      ))}
    </div>
  );
}
