import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { Mine } from './mine.tsx';
import { type Item, itemsQuery } from './queries.ts';
import { UnitState } from './unit-state.tsx';
import { useEquipmentText } from './words.ts';

/** The group's own things: what is here, what is out, and what of it is one's own to bring back. */
export function Equipment() {
  const words = useEquipmentText();
  const { storehouse, household, duties } = useHouse();
  const reading = useQuery(itemsQuery({ storehouse }));
  useTitle(words.title);
  const keeps = duties.includes('equipment_keeper') || duties.includes('coordinator');
  return (
    <Loaded isPage reading={reading}>
      {({ items }) => (
        <>
          <h1>{items.length === 0 ? words.none : words.owns(items.length)}</h1>
          <div className="actions">
            {keeps || duties.includes('reviewer') ? (
              <Link className="btn" to="/s/$storehouse/equipment/desk" params={{ storehouse }}>
                {words.desk}
              </Link>
            ) : null}
            {keeps ? (
              <Link className="btn" to="/s/$storehouse/equipment/new" params={{ storehouse }}>
                {words.add}
              </Link>
            ) : null}
          </div>
          {household === null ? null : <Mine />}
          <Searched items={items} wordsOf={({ name }) => name} find={words.find}>
            {(shown) => (
              <ul className="list">
                {shown.map((item) => (
                  <li key={item.id}>
                    <Link to="/s/$storehouse/equipment/$item" params={{ storehouse, item: item.id }}>
                      <span>
                        <b>{item.name}</b>
                        <br />
                        <span className="soft">
                          {[item.kindNote, item.keptWhere, words.pieces(item.units.length)]
                            .filter(Boolean)
                            .join(' · ')}
                        </span>
                      </span>
                      <Best item={item} />
                    </Link>
                  </li>
                ))}
              </ul>
            )}
          </Searched>
        </>
      )}
    </Loaded>
  );
}

/** The piece of a thing that somebody would get now. */
function Best({ item }: { item: Item }) {
  const words = useEquipmentText();
  const [first] = item.units.toSorted(
    (a, b) => a.blockers.length - b.blockers.length || (a.dueBackAt ?? '').localeCompare(b.dueBackAt ?? ''),
  );
  return first ? <UnitState unit={first} /> : <span className="soft">{words.notLent}</span>;
}
