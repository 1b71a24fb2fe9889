import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { containersQuery } from '../shelf/queries.ts';
import { OfferForm } from './offer-form.tsx';
import { useOfferText } from './words.ts';

/** Offering a container to other members, with others of the same food beside it. */
export function NewOffer() {
  const words = useOfferText();
  const param = useParams({ from: '/s/$storehouse/shelf/$container/offer' });
  const reading = useQuery(containersQuery({ storehouse: param.storehouse }));
  useTitle(words.title);
  return (
    <>
      <Link className="who" to="/s/$storehouse/shelf/$container" params={param}>
        <BackIcon />
        {words.shelf}
      </Link>
      <Loaded isPage reading={reading}>
        {(all) => {
          const first = all.find(({ id }) => id === param.container);
          const whole = all.filter(
            ({ food, grams, openedOn }) => food.id === first?.food.id && grams > 0 && openedOn === null,
          );
          return first === undefined || whole.length === 0 ? (
            <h1>{words.nothingWhole}</h1>
          ) : (
            <OfferForm of="household" food={first.food} first={first.id} whole={whole} />
          );
        }}
      </Loaded>
    </>
  );
}
