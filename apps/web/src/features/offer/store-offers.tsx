import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Choice } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { Figures } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { foodNameOf } from '../buy/food-name.ts';
import { type Rotation, storeRotationQuery } from '../rotation/queries.ts';
import { OfferForm } from './offer-form.tsx';
import { Standing } from './offers.tsx';
import { type Offer, offersQuery } from './queries.ts';
import { useOfferText } from './words.ts';

/** Common stock is offered here, and what was offered of it and became of it is told. */
export function StoreOffers() {
  const words = useOfferText();
  const { storehouse, duties } = useHouse();
  useTitle(words.storeTitle);
  return (
    <>
      <Link className="who" to="/s/$storehouse/giving" params={{ storehouse }}>
        <BackIcon />
        {words.giving}
      </Link>
      {duties.includes('coordinator') ? <Book /> : <h1>{words.storeNotYours}</h1>}
    </>
  );
}

function Book() {
  const words = useOfferText();
  const { storehouse } = useHouse();
  const reading = joined(
    useQuery(offersQuery({ storehouse })),
    useQuery(storeRotationQuery({ storehouse }, 'none')),
  );
  return (
    <Loaded isPage reading={reading}>
      {([{ ofStore }, { queue }]) => {
        const offers = ofStore ?? [];
        const isOpen = ({ standing, containers }: Offer) =>
          standing !== 'over' && containers.some(({ state }) => state === 'offered');
        const open = offers.filter(isOpen);
        return (
          <>
            <h1>{words.storeStands(open.length)}</h1>
            <p>{words.storeOpening}</p>
            <BecameOfIt offers={offers} />
            <StoreList title={words.storeOpen} offers={open} />
            <StoreList title={words.storeEnded} offers={offers.filter((offer) => !isOpen(offer))} />
            <NewStoreOffer queue={queue} open={open} />
            <div className="actions">
              <Link className="btn" to="/s/$storehouse/giving/match" params={{ storehouse }}>
                {words.toPantries}
              </Link>
            </div>
          </>
        );
      }}
    </Loaded>
  );
}

const inState = (offers: readonly Offer[], state: string) =>
  offers.flatMap(({ containers }) => containers).filter((container) => container.state === state);
const gramsOf = (containers: readonly { grams: number }[]) =>
  containers.reduce((sum, { grams }) => sum + grams, 0);

/** All that was ever offered of common stock, by what became of it. */
function BecameOfIt({ offers }: { offers: readonly Offer[] }) {
  const words = useOfferText();
  const { format } = useHouse();
  if (offers.length === 0) return <p className="soft">{words.storeNever}</p>;
  const over = offers.filter(({ standing }) => standing === 'over');
  const still = offers.filter(({ standing }) => standing !== 'over');
  const kinds = [
    { name: words.isOffered, containers: inState(still, 'offered') },
    { name: words.wasTaken, containers: inState(offers, 'taken') },
    { name: words.wasTakenBack, containers: inState(offers, 'taken-back') },
    { name: words.wasLeft, containers: inState(over, 'offered') },
  ];
  return (
    <Figures
      rows={kinds.map(({ name, containers }) => ({
        name,
        value:
          containers.length === 0
            ? words.none
            : words.whole(containers.length, format.mass(gramsOf(containers))),
      }))}
    />
  );
}

function StoreList({ title, offers }: { title: string; offers: readonly Offer[] }) {
  const words = useOfferText();
  const { storehouse, format } = useHouse();
  if (offers.length === 0) return null;
  const takers = ({ containers }: Offer) => [...new Set(containers.flatMap(({ takenBy }) => takenBy ?? []))];
  return (
    <section>
      <h2>{title}</h2>
      <Searched
        items={offers}
        wordsOf={(offer) => [foodNameOf(offer, format.language), ...takers(offer)].join(' ')}
      >
        {(shown) => (
          <ul className="list">
            {shown.map((offer) => {
              const names = takers(offer);
              return (
                <li key={offer.id}>
                  <Link to="/s/$storehouse/offers/$offer" params={{ storehouse, offer: offer.id }}>
                    <span>
                      <b>{foodNameOf(offer, format.language)}</b>
                      <span className="soft block">
                        {[
                          words.whole(offer.containers.length, format.mass(gramsOf(offer.containers))),
                          words.offeredOn(format.instant(offer.offeredAt)),
                          names.length === 0 ? null : words.takenBy(names.join(', ')),
                        ]
                          .filter(Boolean)
                          .join(' · ')}
                      </span>
                    </span>
                    <Standing offer={offer} />
                  </Link>
                </li>
              );
            })}
          </ul>
        )}
      </Searched>
    </section>
  );
}

/** What is shut and full, of no open offer, food by food; what ends first stands in front. */
function NewStoreOffer({ queue, open }: { queue: Rotation['queue']; open: readonly Offer[] }) {
  const words = useOfferText();
  const { format } = useHouse();
  const [foodId, setFoodId] = useState('');
  const offered = new Set(inState(open, 'offered').map(({ id }) => id));
  const whole = queue.flatMap(({ container, food, grams, isOpen, packedOn }) =>
    container === null || packedOn === null || isOpen || grams === 0 || offered.has(container.id)
      ? []
      : [{ ...container, food, grams, packedOn }],
  );
  const foods = [...new Map(whole.map(({ food }) => [food.id, food])).values()];
  const food = foods.find(({ id }) => id === foodId) ?? foods[0];
  const ofFood = whole.filter((container) => container.food.id === food?.id);
  const [first] = ofFood;
  if (!food || !first) return <p>{words.nothingWhole}</p>;
  return (
    <details>
      <summary>{words.storeOffer}</summary>
      <div className="stack">
        <Choice
          label={words.storeFood}
          value={food.id}
          options={foods.map((one) => ({ value: one.id, name: foodNameOf({ food: one }, format.language) }))}
          onChange={setFoodId}
        />
        <OfferForm key={food.id} of="store" food={food} first={first.id} whole={ofFood} isPart />
      </div>
    </details>
  );
}
