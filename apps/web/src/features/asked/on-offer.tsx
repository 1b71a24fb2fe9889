import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { Answer } from '../../ui/glance.tsx';
import { useHouse } from '../../ui/house.ts';
import { foodNameOf } from '../buy/food-name.ts';
import { Standing } from '../offer/offers.tsx';
import { offersQuery } from '../offer/queries.ts';
import { useAskedText } from './words.ts';

/** Question 10. */
export function OnOffer() {
  const words = useAskedText();
  const { storehouse, format } = useHouse();
  const { data } = useQuery(offersQuery({ storehouse }));
  if (!data) return null;
  return (
    <Answer ask={words.offers}>
      {data.toMe.length === 0 ? words.noOffers : null}
      {data.toMe.map((offer) => (
        <span key={offer.id} className="block">
          <Link to="/s/$storehouse/offers/$offer" params={{ storehouse, offer: offer.id }}>
            {foodNameOf(offer, format.language)}
          </Link>{' '}
          <Standing offer={offer} />
        </span>
      ))}
    </Answer>
  );
}
