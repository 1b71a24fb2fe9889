import { Link, useNavigate } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { FoodForm } from './food-form.tsx';
import { useFoodText } from './words.ts';

/** Writes down a food of the group's own. */
export function NewFood() {
  const words = useFoodText();
  const { storehouse } = useHouse();
  const navigate = useNavigate();
  useTitle(words.add);
  return (
    <>
      <Link className="who" to="/s/$storehouse/foods" params={{ storehouse }}>
        <BackIcon />
        {words.title}
      </Link>
      <h1>{words.newTitle}</h1>
      <FoodForm
        onSaved={(food) => void navigate({ to: '/s/$storehouse/foods/$food', params: { storehouse, food } })}
      />
    </>
  );
}
