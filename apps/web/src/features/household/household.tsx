import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { eatersQuery, planQuery } from '../../api/queries.ts';
import { useText } from '../../text/taste.ts';
import { useHouse, useOwnHousehold } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { Helping } from '../helping/helping.tsx';
import { PaperLinks } from '../paper/paper-links.tsx';
import { usePeopleText } from '../people/words.ts';
import type { KnownEater } from './eater.ts';
import { EaterForm } from './eater-form.tsx';
import { EaterList } from './eater-list.tsx';
import { PlanForm } from './plan-form.tsx';
import { SignOut } from './sign-out.tsx';
import { TasteForm } from './taste-form.tsx';
import { YearOfFood } from './year-of-food.tsx';

/** The household's own page: who eats, how long they want to last, and how this phone shows things. */
export function Household() {
  const t = useText();
  const house = useHouse();
  useTitle(t.household);
  if (house.household === null) return <Outsider />;
  return (
    <>
      <h1>{t.householdTitle(house.householdName)}</h1>
      <div className="cols">
        <Eaters />
        <div className="stack">
          <Plan />
          <TasteForm />
          <Helping />
          <MoreOfMine />
          <PaperLinks papers={[{ kind: 'month', path: `households/${house.household}/month/paper` }]} />
          <SignOut />
        </div>
      </div>
    </>
  );
}

function MoreOfMine() {
  const words = usePeopleText();
  const { storehouse, household } = useHouse();
  return (
    <div className="actions">
      <Link className="btn" to="/s/$storehouse/calendar" params={{ storehouse }}>
        {words.calendarLink}
      </Link>
      {household === null ? null : (
        <Link className="btn" to="/s/$storehouse/household/private" params={{ storehouse }}>
          {words.privateLink}
        </Link>
      )}
      <Link className="btn" to="/s/$storehouse/password" params={{ storehouse }}>
        {words.passwordLink}
      </Link>
    </div>
  );
}

/** A reviewer from outside has no household, but a language and a way out. */
function Outsider() {
  const t = useText();
  return (
    <>
      <h1>{t.noHousehold}</h1>
      <TasteForm />
      <Helping />
      <MoreOfMine />
      <SignOut />
    </>
  );
}

function Eaters() {
  const t = useText();
  const eaters = useQuery(eatersQuery(useOwnHousehold()));
  const [changed, setChanged] = useState<KnownEater | null>(null);
  return (
    <section className="stack">
      <h2>{t.eaters}</h2>
      <Loaded reading={eaters}>
        {({ eaters: known }) => (
          <div className="stack">
            {known.length === 0 ? <p>{t.nobodyYet}</p> : <EaterList eaters={known} onChange={setChanged} />}
            {changed ? (
              <EaterForm key={changed.id} eater={changed} onDone={() => setChanged(null)} />
            ) : (
              <EaterForm key={known.length} />
            )}
            <YearOfFood eaters={known} />
          </div>
        )}
      </Loaded>
    </section>
  );
}

function Plan() {
  const plan = useQuery(planQuery(useOwnHousehold()));
  return <Loaded reading={plan}>{(known) => <PlanForm key={known.version} plan={known} />}</Loaded>;
}
