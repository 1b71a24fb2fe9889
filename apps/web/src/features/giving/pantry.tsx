import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { useTitle } from '../../ui/use-title.ts';
import { foodsQuery } from '../buy/run-queries.ts';
import { useFoodText } from '../food/words.ts';
import { kindsQuery } from '../shelf/queries.ts';
import { AskedState } from './pantries.tsx';
import { EditPantry, RenewCard } from './pantry-form.tsx';
import { gives, type PantryWithCards, pantryQuery } from './queries.ts';
import { useGivingText } from './words.ts';

/** A pantry: its door, what it takes, and the cards that it had. */
export function PantryPage() {
  const words = useGivingText();
  const param = useParams({ from: '/s/$storehouse/giving/pantries/$pantry' });
  return (
    <>
      <Link className="who" to="/s/$storehouse/giving/pantries" params={param}>
        <BackIcon />
        {words.pantries}
      </Link>
      <Loaded isPage reading={useQuery(pantryQuery(param))}>
        {(pantry) => <Sheet pantry={pantry} />}
      </Loaded>
    </>
  );
}

function Sheet({ pantry }: { pantry: PantryWithCards }) {
  const words = useGivingText();
  const house = useHouse();
  useTitle(pantry.name);
  return (
    <>
      <div className="row">
        <h1>{pantry.name}</h1>
        <AskedState pantry={pantry} />
      </div>
      <p>
        {pantry.address}
        <br />
        <span className="soft">
          {pantry.contactDuty}
          {pantry.contact === '' ? '' : `, ${pantry.contact}`}
        </span>
      </p>
      <CardSays card={pantry.card} />
      {gives(house) ? (
        <>
          <details>
            <summary>{words.newCard}</summary>
            <RenewCard key={pantry.card.version} pantry={pantry} />
          </details>
          <details>
            <summary>{words.changePantry}</summary>
            <EditPantry key={pantry.version} pantry={pantry} />
          </details>
        </>
      ) : null}
      {pantry.cards.length < 2 ? null : (
        <section className="stack">
          <h2>{words.olderCards}</h2>
          {pantry.cards.slice(1).map((card) => (
            <details key={card.version}>
              <summary>{words.cardVersion(card.version)}</summary>
              <CardSays card={card} />
            </details>
          ))}
        </section>
      )}
    </>
  );
}

type Card = PantryWithCards['card'];

/** A card as sentences; what nobody has said is left out, and counts as a no. */
function CardSays({ card }: { card: Card }) {
  const words = useGivingText();
  const t = useText();
  const foodWords = useFoodText();
  const { storehouse, format } = useHouse();
  const kinds = useQuery(kindsQuery({ storehouse })).data?.containerKinds ?? [];
  const foods = useQuery(foodsQuery({ storehouse })).data ?? [];
  const kindOf = (code: string) =>
    named(
      kinds.find(({ kindCode }) => kindCode === code),
      code,
    );
  const foodOf = (code: string) =>
    named(
      foods.find(({ foodCode }) => foodCode === code),
      code,
    );
  const named = (thing: { nameEn: string; nameEs: string } | undefined, code: string) =>
    thing === undefined ? code : nameIn(format.language, thing);
  const pastClasses =
    card.pastBestClasses === null
      ? null
      : card.pastBestClasses.map((name) => foodWords.keepingClasses[name] ?? name).join(', ');
  const says = (key: 'wantsAllergensApart' | 'takesCold' | 'givesReceipt', sentence: string) =>
    card[key] === true ? [sentence] : [];
  const seals = (Object.keys(words.sealTakes) as (keyof Card)[]).filter((key) => card[key] === true);
  const listed = (title: string, list: readonly string[] | null, nameOf = (code: string) => code) =>
    list === null || list.length === 0 ? [] : [`${title}: ${list.map(nameOf).join(', ')}`];
  const most = (label: string, grams: number | null) =>
    grams === null ? [] : [`${label.replace(/ \(.*/, '')}: ${format.mass(grams)}`];
  const lines = [
    words.takes(seals.map((key) => words.sealTakes[key] ?? key).join(', ')),
    ...(card.acceptsHomePacked === true
      ? [card.acceptsReducedOxygen === true ? words.reducedOxygenTaken : words.reducedOxygenNot]
      : []),
    words.leastLifeSays(card.leastLifeDays),
    ...(card.mostDaysPastBest === null || pastClasses === ''
      ? []
      : [words.pastBestSays(card.mostDaysPastBest, pastClasses)]),
    ...listed(words.kinds, card.containerKindCodes, kindOf),
    ...listed(words.foods, card.foodCodesWanted, foodOf),
    ...listed(words.foodsNot, card.foodCodesNotWanted, foodOf),
    ...listed(words.allergensNot, card.allergensNotTaken, (code) => t.allergens[code] ?? code),
    ...listed(words.labelMust, card.labelFacts, (fact) => words.labelFacts[fact] ?? fact),
    ...most(words.perVisit(''), card.mostGramsPerVisit),
    ...most(words.perWeek(''), card.mostGramsPerWeek),
    ...says('wantsAllergensApart', words.allergensApart),
    ...says('takesCold', words.coldTaken),
    ...says('givesReceipt', words.receiptGiven),
    ...(card.note === '' ? [] : [card.note]),
  ];
  return (
    <section className="stack">
      <h2>{words.cardTitle}</h2>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <p>
        {card.openings
          .map(({ weekday, opensAt, closesAt }) =>
            words.open(words.weekdays[weekday] ?? '', opensAt, closesAt),
          )
          .join('; ')}
      </p>
      <p className="soft">
        {words.cardVersion(card.version)}, {words.confirmed(format.day(card.confirmedOn))}, {card.confirmedBy}
        ; {words.writtenBy(card.writtenBy)}
      </p>
    </section>
  );
}
