import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import { type Bag, nameOfLine, type Sheet, spoken } from './landing-body.ts';
import type { Condition } from './queue.ts';
import { scaleText } from './scale.ts';
import { useLandingText } from './words.ts';

/** Every numbered bag, found by its code, its number, its food or its mark. */
export function BagList({ bags, sheet }: { bags: readonly Bag[]; sheet: Sheet }) {
  const t = useLandingText();
  const { format, storehouse } = useHouse();
  const [wanted, setWanted] = useState('');
  if (bags.length === 0) return null;
  const foodOf = (bagOfferId: string) => {
    const line = sheet.lines.find((candidate) => candidate.bagOfferId === bagOfferId);
    return line ? nameOfLine(line, format.language) : '';
  };
  const sought = wanted.trim().toLowerCase();
  const shown = bags
    .map((bag) => ({ bag, food: foodOf(bag.bagOfferId) }))
    .filter(({ bag, food }) =>
      `${bag.bagCode} ${spoken(bag.bagCode)} ${food} ${bag.bagNo} ${bag.supplierMark}`
        .toLowerCase()
        .includes(sought),
    )
    .toSorted((a, b) => a.food.localeCompare(b.food, format.language) || a.bag.bagNo - b.bag.bagNo);
  return (
    <section className="stack tight">
      <h2>{t.allBags}</h2>
      <Field
        label={t.findBag}
        type="search"
        value={wanted}
        onChange={(event) => setWanted(event.target.value)}
      />
      {shown.length === 0 ? <p role="status">{t.noBagFound}</p> : null}
      <ul className="list">
        {shown.map(({ bag, food }) => (
          <li key={bag.id}>
            <Link
              to="/s/$storehouse/buys/$buy/landing/bags/$bag"
              params={{ storehouse, buy: bag.buyId, bag: bag.id }}
            >
              <span>
                <b>{t.bagNamed(food, bag.bagNo)}</b> {spoken(bag.bagCode)}
                <br />
                <span className="soft">
                  {`${scaleText(bag.netGrams, format.massUnit, format.language)} ${format.massUnit}`}
                  {bag.supplierMark === '' ? '' : `, ${t.markIs(bag.supplierMark)}`}
                </span>
              </span>
              <BagState bag={bag} />
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** How a bag stands, as a mark and a word. */
export function BagState({ bag }: { bag: Bag }) {
  const t = useLandingText();
  if (bag.decision === 'refused') return <State kind="wrong" word={t.kinds.refused} />;
  if (bag.isOnHold) return <State kind="wrong" word={t.kinds.held} />;
  if (bag.weighedAt === null && !bag.isExemptFromWeighing) return <State kind="watch" word={t.notWeighed} />;
  if (bag.condition !== 'dry') return <State kind="watch" word={t.conditions[bag.condition as Condition]} />;
  return <State kind="well" word={t.kinds.kept} />;
}
