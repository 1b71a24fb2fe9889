import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { named, yearQuery } from './queries.ts';
import { useGivingText } from './words.ts';

/** What pantries accepted in a year, about so many meals, and one's own part of it. */
export function GiftYear() {
  const words = useGivingText();
  const { storehouse, household, format } = useHouse();
  const [year, setYear] = useState(Number(format.today().slice(0, 4)));
  useTitle(words.year);
  return (
    <>
      <Link className="who" to="/s/$storehouse/giving" params={{ storehouse }}>
        <BackIcon />
        {words.title}
      </Link>
      <h1>{words.yearTitle(year)}</h1>
      <Loaded reading={useQuery(yearQuery({ storehouse }, year))}>
        {({ gifts, all, own }) =>
          gifts.length === 0 ? (
            <p>{words.noGifts}</p>
          ) : (
            <>
              <p>{words.yearSays(format.mass(all.grams), format.count(all.meals))}</p>
              {household === null || own.grams === 0 ? null : (
                <p>{words.ownSays(format.mass(own.grams), format.count(own.meals))}</p>
              )}
              <Ledger
                caption={words.yearTitle(year)}
                columns={[{ name: words.pantry }, { name: words.food }, { name: words.mass, isNumber: true }]}
                rows={[
                  ...gifts.map((gift) => ({
                    key: `${gift.pantry} ${gift.foodEn}`,
                    cells: [gift.pantry, named(gift, format.language), format.mass(gift.grams)],
                  })),
                  { key: 'sum', isSum: true, cells: [words.total, '', format.mass(all.grams)] },
                ]}
              />
              <p className="soft">{words.mealFactor}</p>
              {all.valueMinorUnits === null ? null : (
                <p className="soft">{words.worth(format.money(all.valueMinorUnits))}</p>
              )}
            </>
          )
        }
      </Loaded>
      {household === null ? null : (
        <PaperLinks papers={[{ kind: 'gift-year', path: `gift-year/paper?year=${year}` }]} />
      )}
      <div className="actions">
        <Link className="btn" to="/s/$storehouse/year-of-food" params={{ storehouse }}>
          {words.onePage}
        </Link>
        <button type="button" className="btn" onClick={() => setYear(year - 1)}>
          {words.before(year - 1)}
        </button>
      </div>
    </>
  );
}
