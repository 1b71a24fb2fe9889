import { useQuery } from '@tanstack/react-query';
import { useState } from 'react';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { type Food, foodsQuery } from './run-queries.ts';
import { usePlanText } from './words.ts';

const SHOWN = 6;

/** Finds a food by a word of its name in either language, and hands it on. */
export function FoodFinder({ taken, onFound }: { taken: readonly string[]; onFound: (food: Food) => void }) {
  const { storehouse } = useHouse();
  const foods = useQuery(foodsQuery({ storehouse }));
  return <Loaded reading={foods}>{(all) => <Finder foods={all} taken={taken} onFound={onFound} />}</Loaded>;
}

type FinderProps = { foods: readonly Food[]; taken: readonly string[]; onFound: (food: Food) => void };

function Finder({ foods, taken, onFound }: FinderProps) {
  const words = usePlanText();
  const { format } = useHouse();
  const [search, setSearch] = useState('');
  const wanted = search.trim().toLowerCase();
  const found = foods
    .filter(({ id, isRetired }) => !isRetired && !taken.includes(id))
    .filter(({ nameEn, nameEs }) => `${nameEn} ${nameEs}`.toLowerCase().includes(wanted));
  const nameOf = (food: Food) => nameIn(format.language, food);
  const add = (food: Food) => {
    setSearch('');
    onFound(food);
  };
  return (
    <div className="stack">
      <Field
        label={words.findFood}
        hint={words.findFoodHint}
        type="search"
        value={search}
        onChange={(event) => setSearch(event.target.value)}
        onKeyDown={(event) => {
          const [first] = found;
          if (event.key !== 'Enter') return;
          event.preventDefault(); // Enter takes the food that was found; it does not send the form
          if (first && wanted !== '') add(first);
        }}
      />
      {wanted === '' ? null : (
        <div className="actions" role="status">
          {found.slice(0, SHOWN).map((food) => (
            <button key={food.id} type="button" className="btn" onClick={() => add(food)}>
              {words.addFood(nameOf(food))}
            </button>
          ))}
          {found.length === 0 ? <p>{words.noSuchFood}</p> : null}
          {found.length > SHOWN ? <p className="soft">{words.moreFound(found.length - SHOWN)}</p> : null}
        </div>
      )}
    </div>
  );
}
