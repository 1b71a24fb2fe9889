import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { foodNameOf } from '../buy/food-name.ts';
import { type Offer, offersQuery } from './queries.ts';
import { useOfferText } from './words.ts';

/** What is offered to one's household and until when, what it offers, and what it took. */
export function Offers() {
  const words = useOfferText();
  const { storehouse, household } = useHouse();
  const reading = useQuery(offersQuery({ storehouse }));
  useTitle(words.title);
  return (
    <>
      {household === null ? null : (
        <Link className="who" to="/s/$storehouse/shelf" params={{ storehouse }}>
          <BackIcon />
          {words.shelf}
        </Link>
      )}
      <Loaded isPage reading={reading}>
        {({ toMe, mine, ofStore, taken }) => (
          <>
            <h1>{household === null ? words.title : words.toMe(toMe.length)}</h1>
            <p>{words.opening}</p>
            <OfferList offers={toMe} />
            <OfferList title={words.mine} offers={mine} />
            <OfferList title={words.ofStore} offers={ofStore ?? []} />
            {ofStore === null ? null : (
              <div className="actions">
                <Link className="btn" to="/s/$storehouse/giving/offers" params={{ storehouse }}>
                  {words.storeAll}
                </Link>
              </div>
            )}
            <OfferList title={words.taken} offers={taken} />
            {household === null ? null : <p className="soft">{words.howToOffer}</p>}
          </>
        )}
      </Loaded>
    </>
  );
}

function OfferList({ title, offers }: { title?: string; offers: readonly Offer[] }) {
  const { storehouse, format } = useHouse();
  if (offers.length === 0) return null;
  return (
    <section>
      {title === undefined ? null : <h2>{title}</h2>}
      <Searched items={offers} wordsOf={(offer) => foodNameOf(offer, format.language)}>
        {(shown) => (
          <ul className="list">
            {shown.map((offer) => (
              <li key={offer.id}>
                <Link to="/s/$storehouse/offers/$offer" params={{ storehouse, offer: offer.id }}>
                  <OfferRow offer={offer} />
                </Link>
              </li>
            ))}
          </ul>
        )}
      </Searched>
    </section>
  );
}

function OfferRow({ offer }: { offer: Offer }) {
  const words = useOfferText();
  const { format } = useHouse();
  const left = offer.containers.filter(({ state }) => state === 'offered');
  const shown = left.length === 0 ? offer.containers : left;
  const grams = shown.reduce((sum, container) => sum + container.grams, 0);
  return (
    <>
      <span>
        <b>{foodNameOf(offer, format.language)}</b>{' '}
        <span className="soft block">{words.whole(shown.length, format.mass(grams))}</span>
      </span>
      <Standing offer={offer} />
    </>
  );
}

/** How an offer stands to whoever looks: its turn, everybody's, or what became of one's own. */
export function Standing({ offer }: { offer: Offer }) {
  const words = useOfferText();
  const { format } = useHouse();
  const { standing, isMine, containers } = offer;
  const until = format.instant(offer.untilAt);
  const left = containers.filter(({ state }) => state === 'offered').length;
  if (left === 0)
    return containers.every(({ state }) => state === 'taken-back') ? (
      <State kind="watch" word={words.takenBack} />
    ) : (
      <State kind="well" word={words.allTaken} />
    );
  if (standing === 'over') return <State kind="watch" word={words.over} />;
  if (isMine) return <State kind="well" word={words.open(left, until)} />;
  if (standing === 'with-others')
    return <span className="state">{words.withOthers(format.instant(offer.openAt))}</span>;
  return standing === 'your-turn' ? (
    <State kind="watch" word={words.yourTurn(until)} />
  ) : (
    <State kind="well" word={words.forAll(until)} />
  );
}
