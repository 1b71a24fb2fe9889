import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { partsTyped } from '../../ui/parts-typed.ts';
import { useTitle } from '../../ui/use-title.ts';
import { FoodFinder } from '../buy/food-finder.tsx';
import { gramsTyped } from '../shelf/mass-typed.ts';
import { type OwnBag, ownBagsQuery } from '../shelf/queries.ts';
import { WaysFound } from './found.tsx';
import { waysQuery } from './queries.ts';
import { useWaysText } from './words.ts';

type Food = { readonly id: string; readonly nameEn: string; readonly nameEs: string };

/** What a food can be kept in, how long, and what that costs for each year. */
export function WaysToKeep() {
  const words = useWaysText();
  const { storehouse, format } = useHouse();
  useTitle(words.title);
  const [food, setFood] = useState<Food | null>(null);
  const [mass, setMass] = useState('');
  const [moisture, setMoisture] = useState('');
  const grams = gramsTyped(mass, format.massUnit);
  const moistureTenths = partsTyped(moisture, 10);
  const isMoistureWrong =
    moistureTenths === undefined ||
    (moistureTenths !== null && (moistureTenths < 0 || moistureTenths > 1000));
  const isAsked = food !== null && grams !== undefined && !isMoistureWrong;
  return (
    <>
      <Link className="who" to="/s/$storehouse/shelf" params={{ storehouse }}>
        <BackIcon />
        {words.toShelf}
      </Link>
      <h1>{words.title}</h1>
      <p>{words.opening}</p>
      <OwnFoods
        onChosen={(bag) => {
          setFood(bag.food);
          setMass(format.mass(bag.grams));
        }}
      />
      {food ? (
        <p className="row place">
          <b>{words.food(nameIn(format.language, food))}</b>
          <button type="button" className="btn quiet" onClick={() => setFood(null)}>
            {words.otherFood}
          </button>
        </p>
      ) : (
        <FoodFinder taken={[]} onFound={({ id, nameEn, nameEs }) => setFood({ id, nameEn, nameEs })} />
      )}
      <div className="pair">
        <Field
          label={words.mass}
          inputMode="decimal"
          value={mass}
          onChange={(event) => setMass(event.target.value)}
          problem={mass !== '' && grams === undefined ? words.massProblem : undefined}
        />
        <Field
          label={words.moisture}
          hint={words.moistureHint}
          inputMode="decimal"
          value={moisture}
          onChange={(event) => setMoisture(event.target.value)}
          problem={isMoistureWrong ? words.moistureProblem : undefined}
        />
      </div>
      {isAsked ? (
        <Answer
          storehouse={storehouse}
          food={food.id}
          grams={grams}
          moistureTenths={moistureTenths ?? null}
        />
      ) : (
        <p role="status">{words.ask}</p>
      )}
    </>
  );
}

function Answer(wish: { storehouse: string; food: string; grams: number; moistureTenths: number | null }) {
  const reading = useQuery(waysQuery(wish));
  return <Loaded reading={reading}>{(found) => <WaysFound found={found} />}</Loaded>;
}

/** What lies in one's own bags, to be asked about with one tap. */
function OwnFoods({ onChosen }: { onChosen: (bag: OwnBag) => void }) {
  const words = useWaysText();
  const { storehouse, household, format } = useHouse();
  const reading = useQuery({ ...ownBagsQuery({ storehouse }), enabled: household !== null });
  const bags = reading.data?.bags ?? [];
  const together = new Map<string, OwnBag>();
  for (const bag of bags) {
    const before = together.get(bag.food.id);
    together.set(bag.food.id, before ? { ...before, grams: before.grams + bag.grams } : bag);
  }
  if (together.size === 0) return null;
  return (
    <section className="stack">
      <h2>{words.yours}</h2>
      <div className="actions">
        {[...together.values()].map((bag) => (
          <button key={bag.food.id} type="button" className="btn" onClick={() => onChosen(bag)}>
            {words.ofYours(nameIn(format.language, bag.food), format.mass(bag.grams))}
          </button>
        ))}
      </div>
    </section>
  );
}
