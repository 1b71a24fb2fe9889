import { Link } from '@tanstack/react-router';
import { useText } from '../text/taste.ts';
import type { House } from './house.ts';
import { PLACES } from './places.ts';

/** The places of the list that are theirs, in its order. */
export const placesIn = (house: House) => PLACES.filter(({ isFor }) => isFor(house));

/** The way into one's other storehouses, for whoever belongs to several. */
export function Elsewhere({ house }: { house: House }) {
  const t = useText();
  if (house.elsewhere.length === 0) return null;
  return (
    <div className="elsewhere">
      <p>{t.elsewhere}</p>
      {house.elsewhere.map(({ storehouseId, name }) => (
        <Link key={storehouseId} to="/s/$storehouse" params={{ storehouse: storehouseId }}>
          {name}
        </Link>
      ))}
    </div>
  );
}
