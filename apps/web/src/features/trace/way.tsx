import { isCode, spellCode } from '@sheafbook/units';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Ledger, State } from '../../ui/pieces.tsx';
import { useNamed } from '../../ui/use-named.ts';
import { BeginHold } from '../hold/begin-form.tsx';
import type { Way } from './queries.ts';
import { useAllergenNames, useOwnerName } from './say.ts';
import { WayPicture } from './way-picture.tsx';
import { useTraceText } from './words.ts';

/** Everything about one thing's way: how it stands, where it came from, the picture, the sums, and what may have met it. */
export function WayPage({ way }: { way: Way }) {
  const words = useTraceText();
  const { format } = useHouse();
  const { of, balance } = way;
  const label = isCode(of.label) ? spellCode(of.label) : of.label;
  const what = words.named(words.kinds[of.kind], label, '');
  const isAll = balance.knownPermille === 1000;
  const mass = format.mass(balance.inGrams);
  return (
    <>
      <h1>
        {balance.inGrams === 0
          ? words.noneYours(what)
          : isAll
            ? words.allFound(what, mass)
            : words.notAll(
                what,
                mass,
                new Intl.NumberFormat(format.language, { minimumFractionDigits: 1 }).format(
                  balance.knownPermille / 10,
                ),
              )}
      </h1>
      {balance.addsUp ? null : <p className="said">{words.wrong}</p>}
      <Depth way={way} />
      <Origin way={way} />
      {way.things.length === 0 ? null : <WayPicture way={way} what={what} />}
      {balance.lines.length === 0 ? null : <Balance way={way} />}
      <CarryOvers way={way} />
      <BeginHold way={way} />
    </>
  );
}

/** What the reader sees, and for those who handle holds the way to see more, which is written down. */
function Depth({ way: { depth, mayRecall, of } }: { way: Way }) {
  const words = useTraceText();
  const { storehouse } = useHouse();
  const says = { own: words.ownOnly, shares: words.sharesOnly, recall: words.recallSeen }[depth];
  const one = { kind: of.kind, id: of.id };
  return (
    <section className="stack tight">
      <p>{says}</p>
      {mayRecall && depth !== 'recall' ? (
        <>
          <p className="soft">{words.openRecallSays}</p>
          <p>
            <Link
              className="btn"
              to="/s/$storehouse/trace"
              params={{ storehouse }}
              search={{ ...one, task: 'recall' }}
            >
              {words.openRecall}
            </Link>
          </p>
        </>
      ) : null}
      {depth === 'recall' ? (
        <p>
          <Link to="/s/$storehouse/trace" params={{ storehouse }} search={one}>
            {words.closeRecall}
          </Link>
        </p>
      ) : null}
    </section>
  );
}

function Origin({ way }: { way: Way }) {
  const words = useTraceText();
  const { format } = useHouse();
  const named = useNamed();
  const allergens = useAllergenNames();
  return (
    <section>
      <h2>{words.cameFrom}</h2>
      <ul className="list">
        {way.lots.map((lot) => (
          <li key={lot.id}>
            <b>{words.lotOf(named(lot.food), lot.supplier?.name ?? null, lot.mark)}</b>
            <span className="soft block">
              {[
                lot.harvestYear === null ? '' : words.harvest(lot.harvestYear),
                lot.buy === null ? '' : words.forBuy(lot.buy.name, lot.orderNos.join(', ')),
                ...lot.deliveries.map(({ arrivedOn, bags }) => words.arrived(format.day(arrivedOn), bags)),
              ]
                .filter((text) => text !== '')
                .join('; ')}
            </span>
            {lot.food.allergens.length === 0 ? null : (
              <span className="block">{words.contains(allergens(lot.food.allergens))}</span>
            )}
          </li>
        ))}
      </ul>
      {way.before.length === 0 ? null : (
        <p>
          {words.before}:{' '}
          <span className="code-list">{way.before.map(({ code }) => spellCode(code)).join(', ')}</span>
        </p>
      )}
    </section>
  );
}

function Balance({ way }: { way: Way }) {
  const words = useTraceText();
  const ownerName = useOwnerName();
  const { format } = useHouse();
  const { lines, inGrams, outGrams, leftGrams } = way.balance;
  const isHandOver = (place: string) => ['share', 'member', 'common', 'supplier'].includes(place);
  const placeOf = ({ place, pantry }: (typeof lines)[number]) => {
    if (pantry !== '') return words.givenTo(pantry);
    return (
      (isHandOver(place) ? undefined : words.stops[place === 'bag' ? '' : place]) ??
      words.places[place] ??
      place
    );
  };
  return (
    <section>
      <h2>{words.balance}</h2>
      <Ledger
        caption={words.balance}
        columns={[
          { name: words.way },
          { name: words.place },
          { name: words.whose },
          { name: words.grams, isNumber: true },
        ]}
        rows={[
          ...lines.map((line, at) => ({
            key: `${at}`,
            cells: [words.ways[line.way], placeOf(line), ownerName(line), format.count(line.grams)],
          })),
          {
            key: 'sum',
            isSum: true,
            cells: [
              words.sum(format.count(inGrams), format.count(outGrams), format.count(leftGrams)),
              ...['', '', format.count(inGrams)],
            ],
          },
        ]}
      />
    </section>
  );
}

/** A warning and no hold: what ran after it on the line. */
function CarryOvers({ way: { carryOvers, carryOversOfOthers } }: { way: Way }) {
  const words = useTraceText();
  const named = useNamed();
  const allergens = useAllergenNames();
  const others = carryOversOfOthers ?? 0;
  if (carryOvers.length === 0 && others === 0) return null;
  return (
    <section>
      <h2>{words.carryTitle}</h2>
      <p>{words.carrySays}</p>
      <ul className="list">
        {carryOvers.map(({ id, code, food, line, serial, newAllergens }) => (
          <li key={id}>
            {words.carry(spellCode(code), named(food), line, serial)}{' '}
            {newAllergens.length === 0 ? null : (
              <State kind="watch" word={words.carryNew(allergens(newAllergens))} />
            )}
          </li>
        ))}
      </ul>
      {others === 0 ? null : <p className="soft">{words.carryOthers(others)}</p>}
    </section>
  );
}
