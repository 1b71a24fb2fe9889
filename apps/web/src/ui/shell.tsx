import { useQuery } from '@tanstack/react-query';
import { Link, Outlet, useNavigate, useParams } from '@tanstack/react-router';
import { type ReactNode, useEffect } from 'react';
import { ApiProblem } from '../api/problem.ts';
import { personsQuery, sessionQuery, storehouseQuery } from '../api/queries.ts';
import { formatsOf } from '../text/format.ts';
import { useTaste, useText } from '../text/taste.ts';
import { type House, HouseContext } from './house.ts';
import { BuysIcon, HomeIcon, HouseholdIcon, Sheaf, StatementIcon } from './icons.tsx';
import { joined, Loaded } from './loaded.tsx';
import { useOnline } from './use-online.ts';

/** Everything inside a storehouse: who is here, the places, and the page. */
export function Shell() {
  const { storehouse } = useParams({ from: '/s/$storehouse' });
  const session = useQuery(sessionQuery);
  const facts = useQuery({ ...storehouseQuery({ storehouse }), enabled: session.isSuccess });
  const persons = useQuery({ ...personsQuery({ storehouse }), enabled: session.isSuccess });
  if (session.error instanceof ApiProblem && session.error.code === 'not-signed-in') return <ToSignIn />;
  return (
    <Loaded reading={joined(session, joined(facts, persons))}>
      {([who, [here, people]]) => {
        const personId = who.storehouses.find((known) => known.storehouseId === storehouse)?.personId;
        const person = people.find((known) => known.id === personId);
        return (
          <Inside
            here={{ ...here, storehouse }}
            person={{
              name: person?.name ?? who.name,
              household: person?.householdId ?? null,
              householdName: person?.householdName ?? '',
            }}
          />
        );
      }}
    </Loaded>
  );
}

/** Once, with the address as it was: on the way the address changes already. */
function ToSignIn() {
  const navigate = useNavigate();
  useEffect(() => {
    const to = location.pathname + location.search;
    if (to.startsWith('/s/')) void navigate({ to: '/sign-in', search: { to }, replace: true });
  }, [navigate]);
  return null;
}

type Here = {
  storehouse: string;
  name: string;
  currency: string;
  timeZone: string;
  massDisplay: string;
};
type Person = { name: string; household: string | null; householdName: string };

function Inside({ here, person }: { here: Here; person: Person }) {
  const massDisplay = here.massDisplay === 'kg' ? 'kg' : 'lb';
  const { language, massUnit } = useTaste();
  const house: House = {
    storehouse: here.storehouse,
    storehouseName: here.name,
    massDisplay,
    personName: person.name,
    household: person.household,
    householdName: person.householdName,
    format: formatsOf({
      language,
      massUnit: massUnit ?? massDisplay,
      currency: here.currency,
      timeZone: here.timeZone,
    }),
  };
  return (
    <HouseContext value={house}>
      <Frame house={house}>
        <Outlet />
      </Frame>
    </HouseContext>
  );
}

function Frame({ house, children }: { house: House; children: ReactNode }) {
  const t = useText();
  const isOnline = useOnline();
  const params = { storehouse: house.storehouse };
  return (
    <div className="shell">
      <a className="skip btn" href="#page">
        {t.skip}
      </a>
      <div className="weave" />
      <header className="head">
        <Link className="who" to="/s/$storehouse" params={params}>
          <Sheaf />
          {house.storehouseName}
        </Link>
        {house.household === null ? null : (
          <Link className="who" to="/s/$storehouse/household" params={params}>
            {house.householdName}
          </Link>
        )}
      </header>
      <aside className="rail">
        <div className="weave" />
        <Link className="brand" to="/s/$storehouse" params={params}>
          <Sheaf />
          {house.storehouseName}
        </Link>
        <Places house={house} />
        <p className="foot">
          {house.personName}
          <br />
          {house.householdName}
        </p>
      </aside>
      <main className="body" id="page" tabIndex={-1}>
        {isOnline ? null : <p className="said watch-said">{t.offline}</p>}
        {children}
      </main>
      <Places house={house} isBar />
    </div>
  );
}

/** Only places that exist are shown: four in the bar of a phone, the same in the rail of a desk. */
function Places({ house, isBar = false }: { house: House; isBar?: boolean }) {
  const t = useText();
  const params = { storehouse: house.storehouse };
  const isMember = house.household !== null;
  return (
    <nav className={isBar ? 'tabs' : undefined} aria-label={t.places}>
      <Link to="/s/$storehouse" params={params} activeOptions={{ exact: true }}>
        <HomeIcon />
        {t.home}
      </Link>
      <Link to="/s/$storehouse/buys" params={params}>
        <BuysIcon />
        {t.buys}
      </Link>
      {isMember ? (
        <Link to="/s/$storehouse/statement" params={params}>
          <StatementIcon />
          {t.statement}
        </Link>
      ) : null}
      {isMember ? (
        <Link to="/s/$storehouse/household" params={params}>
          <HouseholdIcon />
          {t.household}
        </Link>
      ) : null}
    </nav>
  );
}
