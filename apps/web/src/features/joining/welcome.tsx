import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { eatersQuery } from '../../api/queries.ts';
import { useText } from '../../text/taste.ts';
import { useHouse, useOwnHousehold } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { NextStep } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { EaterForm } from '../household/eater-form.tsx';
import { EaterList } from '../household/eater-list.tsx';
import { YearOfFood } from '../household/year-of-food.tsx';

/** Right after joining: who eats, what a year of food for them weighs, and what comes next. */
export function Welcome() {
  const t = useText();
  const house = useHouse();
  const eaters = useQuery(eatersQuery(useOwnHousehold()));
  useTitle(t.welcomeTitle);
  return (
    <>
      <h1>{t.welcomeTo(house.storehouseName)}</h1>
      <p>{t.welcomeWords}</p>
      <Loaded reading={eaters}>
        {({ eaters: known }) => (
          <div className="cols">
            <div className="stack">
              {known.length > 0 ? <EaterList eaters={known} /> : null}
              <EaterForm key={known.length} isFirst={known.length === 0} />
            </div>
            <div className="stack">
              <YearOfFood eaters={known} />
              {known.length > 0 ? (
                <NextStep title={t.shelfEmpty}>
                  <p>{t.shelfEmptyWords}</p>
                  <Link className="btn go" to="/s/$storehouse" params={{ storehouse: house.storehouse }}>
                    {t.toHome}
                  </Link>
                </NextStep>
              ) : null}
            </div>
          </div>
        )}
      </Loaded>
    </>
  );
}
