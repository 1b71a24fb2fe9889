import { spellCode } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { ask, askOnce } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { Check } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { NextStep, State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { foodNameOf } from '../buy/food-name.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { OF_STOCK } from '../shelf/queries.ts';
import { Standing } from './offers.tsx';
import { inside, type Offer, offerQuery } from './queries.ts';
import { useOfferText } from './words.ts';
import './offer.css';

type Part = Offer['containers'][number];
const one = inside.offers[':offer'];

/** One offer: what it is, until when, and taking it, letting it pass or taking it back. */
export function OfferPage() {
  const words = useOfferText();
  const param = useParams({ from: '/s/$storehouse/offers/$offer' });
  const reading = useQuery(offerQuery(param));
  useTitle(words.title);
  return (
    <>
      <Link className="who" to="/s/$storehouse/offers" params={param}>
        <BackIcon />
        {words.title}
      </Link>
      <Loaded isPage reading={reading}>
        {(offer) => <Sheet offer={offer} />}
      </Loaded>
    </>
  );
}

function Sheet({ offer }: { offer: Offer }) {
  const words = useOfferText();
  const { format } = useHouse();
  const { isMine, isOfStore, giver, standing, containers } = offer;
  const from = isOfStore ? words.fromStore : giver === null ? words.fromMember : words.fromHousehold(giver);
  const left = containers.filter(({ state }) => state === 'offered');
  const origins = [...new Set(containers.map(({ originNote }) => originNote))].filter((note) => note !== '');
  const mayTake = !isMine && (standing === 'your-turn' || standing === 'for-all') && left.length > 0;
  return (
    <>
      <h1>{foodNameOf(offer, format.language)}</h1>
      <p className="offer-stands">
        <Standing offer={offer} />
      </p>
      {isMine && !isOfStore ? null : <p>{from}</p>}
      {offer.note === '' ? null : <p>{offer.note}</p>}
      {origins.map((note) => (
        <p key={note}>{words.origin(note)}</p>
      ))}
      <Caution offer={offer} />
      {mayTake ? <TakeForm key={left.length} offer={offer} left={left} /> : <Parts containers={containers} />}
      {offer.hasPassed && standing !== 'for-all' ? <p>{words.passed}</p> : null}
      {!isMine && containers.some(({ takenBy }) => takenBy !== null) ? <p>{words.youTook}</p> : null}
      {isMine && left.length > 0 ? <TakeBack offer={offer} /> : null}
      <Papers offer={offer} />
    </>
  );
}

/** The notice while something is offered, and a slip for each time that something was taken. */
function Papers({ offer: { id, standing, containers } }: { offer: Offer }) {
  const { format } = useHouse();
  const isOpen = standing !== 'over' && containers.some(({ state }) => state === 'offered');
  const entries = [...new Set(containers.flatMap(({ takenInEntry }) => takenInEntry ?? []))];
  const takenAt = (entry: string) => containers.find(({ takenInEntry }) => takenInEntry === entry)?.takenAt;
  const slips = entries.map((entry) => ({
    kind: 'transfer-slip',
    path: `offers/${id}/papers/transfer-slip?entry=${entry}`,
    of: format.instant(takenAt(entry) ?? ''),
  }));
  return (
    <PaperLinks
      papers={[...(isOpen ? [{ kind: 'offer-notice', path: `offers/${id}/papers/notice` }] : []), ...slips]}
    />
  );
}

/** Who at one's own table may not eat this; nobody else is told. */
function Caution({ offer: { mayNotEat, food } }: { offer: Offer }) {
  const words = useOfferText();
  const t = useText();
  const { format } = useHouse();
  if (mayNotEat.length === 0) return null;
  const names = new Intl.ListFormat(format.language, { type: 'conjunction' }).format(mayNotEat);
  return (
    <section className="offer-stands">
      <h2>{words.cautionTitle}</h2>
      <State kind="watch" word={words.mayNotEat(names)} />
      {food.allergens.length === 0 ? null : (
        <p>{words.contains(food.allergens.map((code) => t.allergens[code] ?? code).join(', '))}</p>
      )}
    </section>
  );
}

function usePartWords() {
  const words = useOfferText();
  const { format } = useHouse();
  return ({ kind, grams, priceMinorUnits, packedOn }: Part): string => {
    const price = priceMinorUnits === 0 ? words.gift : `${format.money(priceMinorUnits)} ${format.currency}`;
    const name = nameIn(format.language, kind);
    return [name, format.mass(grams), words.packed(format.day(packedOn)), price].join(' · ');
  };
}

function Parts({ containers }: { containers: readonly Part[] }) {
  const words = useOfferText();
  const say = usePartWords();
  return (
    <ul className="list">
      {containers.map((part) => (
        <li key={part.id}>
          <p>
            <span className="code">{spellCode(part.code)}</span>{' '}
            <span className="soft block">{say(part)}</span>
            {part.state === 'taken' ? (
              <span>{part.takenBy === null ? words.takenByOther : words.takenBy(part.takenBy)}</span>
            ) : null}
          </p>
        </li>
      ))}
    </ul>
  );
}

function TakeForm({ offer, left }: { offer: Offer; left: readonly Part[] }) {
  const words = useOfferText();
  const say = usePartWords();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const [out, setOut] = useState<readonly string[]>([]);
  const wanted = left.filter(({ id }) => !out.includes(id));
  const minorUnits = wanted.reduce((sum, part) => sum + part.priceMinorUnits, 0);
  const param = { storehouse, offer: offer.id };
  const fresh = () =>
    Promise.all(
      ['offers', 'next-steps', ...OF_STOCK].map((key) => queries.invalidateQueries({ queryKey: [key] })),
    );
  const taking = useMutation({
    mutationFn: (json: { containerIds: string[]; minorUnits: number }) =>
      askOnce(`claim.${offer.id}`, json, (header) => one.claims.$post({ param, json }, { headers: header })),
    onSuccess: fresh,
  });
  const passing = useMutation({ mutationFn: () => ask(one.pass.$post({ param })), onSuccess: fresh });
  return (
    <NextStep title={words.takeTitle}>
      <Form
        onSend={() => {
          if (wanted.length > 0) taking.mutate({ containerIds: wanted.map(({ id }) => id), minorUnits });
        }}
      >
        {left.map((part) => (
          <Check
            key={part.id}
            label={
              <>
                <span className="code">{spellCode(part.code)}</span>{' '}
                <span className="block">{say(part)}</span>
              </>
            }
            isOn={!out.includes(part.id)}
            onChange={(isOn) => setOut(isOn ? out.filter((id) => id !== part.id) : [...out, part.id])}
          />
        ))}
        <p>
          {wanted.length === 0
            ? words.pick
            : minorUnits === 0
              ? words.takeGift(wanted.length)
              : words.takeSays(wanted.length, `${format.money(minorUnits)} ${format.currency}`)}
        </p>
        <ProblemSaid error={taking.error ?? passing.error} />
        <div className="actions">
          <button type="submit" className="btn go" disabled={taking.isPending}>
            {words.take}
          </button>
          {offer.standing === 'your-turn' && !offer.hasPassed ? (
            <button
              type="button"
              className="btn"
              disabled={passing.isPending}
              onClick={() => passing.mutate()}
            >
              {words.pass}
            </button>
          ) : null}
        </div>
      </Form>
    </NextStep>
  );
}

function TakeBack({ offer }: { offer: Offer }) {
  const words = useOfferText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const isOver = offer.standing === 'over';
  const back = useMutation({
    mutationFn: () => ask(one.withdrawal.$post({ param: { storehouse, offer: offer.id } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['offers'] }),
  });
  if (isOver && !offer.goesToPantry) return <p>{words.nobody}</p>;
  return (
    <section>
      <p>{isOver ? words.toPantry : words.takeBackSays}</p>
      <ProblemSaid error={back.error} />
      <div className="actions">
        <button type="button" className="btn" disabled={back.isPending} onClick={() => back.mutate()}>
          {isOver ? words.noPantry : words.takeBack}
        </button>
      </div>
    </section>
  );
}
