import { FOOD_GROUPS } from '@sheafbook/foods';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useText } from '../../text/taste.ts';
import { Check, Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { State } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { mayEditFoods } from './may-edit.ts';
import { allFoodsQuery, type Food } from './queries.ts';
import { sayAllergens } from './say-food.ts';
import { useFoodText } from './words.ts';

/** What the storehouse knows of each food: its group, what is in it, and who says so. */
export function Foods() {
  const words = useFoodText();
  const { storehouse, duties } = useHouse();
  useTitle(words.title);
  const foods = useQuery(allFoodsQuery({ storehouse }));
  return (
    <Loaded isPage reading={foods}>
      {(all) => (
        <>
          <h1>{words.stands(all.filter(({ isRetired }) => !isRetired).length)}</h1>
          <div className="actions">
            {mayEditFoods(duties) ? (
              <Link className="btn go" to="/s/$storehouse/foods/new" params={{ storehouse }}>
                {words.add}
              </Link>
            ) : null}
            <Link className="btn" to="/s/$storehouse/containers" params={{ storehouse }}>
              {words.toContainers}
            </Link>
          </div>
          <FoodList foods={all} />
        </>
      )}
    </Loaded>
  );
}

function FoodList({ foods }: { foods: readonly Food[] }) {
  const t = useText();
  const words = useFoodText();
  const [wanted, setWanted] = useState('');
  const [group, setGroup] = useState('');
  const [isAll, setIsAll] = useState(false);
  const searched = wanted.trim().toLowerCase();
  const shown = foods
    .filter(({ isRetired }) => isAll || !isRetired)
    .filter(({ foodGroup }) => group === '' || foodGroup === group)
    .filter(({ nameEn, nameEs }) => `${nameEn} ${nameEs}`.toLowerCase().includes(searched));
  return (
    <>
      <div className="pair roomy">
        <Field
          label={words.find}
          type="search"
          value={wanted}
          onChange={(event) => setWanted(event.target.value)}
        />
        <Choice
          label={t.foodGroup}
          value={group}
          options={[
            { value: '', name: words.everyGroup },
            ...FOOD_GROUPS.map((value) => ({ value, name: t.groups[value] ?? value })),
          ]}
          onChange={setGroup}
        />
      </div>
      {foods.some(({ isRetired }) => isRetired) ? (
        <Check label={words.retiredToo} isOn={isAll} onChange={setIsAll} />
      ) : null}
      <p role="status">{shown.length === 0 ? words.nothingFound : words.found(shown.length)}</p>
      <ul className="list">
        {shown.map((food) => (
          <FoodRow key={food.id} food={food} />
        ))}
      </ul>
    </>
  );
}

function FoodRow({ food }: { food: Food }) {
  const t = useText();
  const words = useFoodText();
  const { storehouse, format } = useHouse();
  const energy = food.kilocaloriesPer100Grams;
  return (
    <li>
      <Link to="/s/$storehouse/foods/$food" params={{ storehouse, food: food.id }}>
        <span>
          <b>{nameIn(format.language, food)}</b>
          <br />
          <span className="soft">
            {t.groups[food.foodGroup] ?? food.foodGroup}; {sayAllergens(t, words, food)};{' '}
            {energy === null ? words.energyUnknown : words.energy(energy)}
          </span>
        </span>
        {food.isRetired ? (
          <State kind="watch" word={words.retired} />
        ) : food.isOwn ? (
          <span className="soft">{words.own}</span>
        ) : null}
      </Link>
    </li>
  );
}
