import { spellCode } from '@sheafbook/units';
import { Link } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import type { Rotation } from './queries.ts';
import { useRotationText } from './words.ts';

/** What stands in no queue because of its last look, each with the way to what was found and what is to be done. */
export function FoundUnfit({
  unfit,
  of,
}: Pick<Rotation, 'unfit'> & { of: 'home' | 'store' | 'store-unopened' }) {
  const words = useRotationText();
  const { storehouse, format } = useHouse();
  if (unfit.length === 0) return null;
  return (
    <section>
      <h2>{words.foundUnfit}</h2>
      <p>
        {[words.foundUnfitWords, of === 'store-unopened' ? null : words.foundUnfitOpen]
          .filter(Boolean)
          .join(' ')}
      </p>
      <ul className="list">
        {unfit.map(({ container, lotId, food, place, grams }) => {
          const said = (
            <span>
              <b>{nameIn(format.language, food)}</b>{' '}
              {container === null ? null : <span className="code">{spellCode(container.code)}</span>}
              <br />
              <span className="soft">
                {[
                  format.mass(grams),
                  container === null ? words.inKitchen : (place?.name ?? words.noPlace),
                ].join(' · ')}
              </span>
            </span>
          );
          return (
            <li key={container?.id ?? lotId}>
              {container === null || of === 'store-unopened' ? (
                said
              ) : (
                <Link
                  to={
                    of === 'store'
                      ? '/s/$storehouse/inspections/$container'
                      : '/s/$storehouse/shelf/$container'
                  }
                  params={{ storehouse, container: container.id }}
                >
                  {said}
                </Link>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
