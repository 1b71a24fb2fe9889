import { useQuery } from '@tanstack/react-query';
import { Link, Outlet, useNavigate, useParams } from '@tanstack/react-router';
import { lazy, type ReactNode, Suspense, useEffect, useState } from 'react';
import { type Acting, actingIn, forgetActing } from '../api/acting.ts';
import { useKeptSince } from '../api/kept.ts';
import { ApiProblem } from '../api/problem.ts';
import { personsQuery, sessionQuery, storehouseQuery, unreadQuery } from '../api/queries.ts';
import { formatsOf } from '../text/format.ts';
import { useTaste, useText } from '../text/taste.ts';
import { FromOutside } from './from-outside.tsx';
import { type House, HouseContext } from './house.ts';
import { BellIcon, MoreIcon, Sheaf } from './icons.tsx';
import { joined, Loaded } from './loaded.tsx';
import { Elsewhere, placesIn } from './places-list.tsx';
import { useOnline } from './use-online.ts';

/** Everything inside a storehouse: who is here, the places, and the page. */
export function Shell() {
  const { storehouse } = useParams({ from: '/s/$storehouse' });
  const session = useQuery(sessionQuery);
  const facts = useQuery({ ...storehouseQuery({ storehouse }), enabled: session.isSuccess });
  const persons = useQuery({ ...personsQuery({ storehouse }), enabled: session.isSuccess });
  if (session.error instanceof ApiProblem && session.error.code === 'not-signed-in') return <ToSignIn />;
  const acting = actingIn(storehouse);
  if (acting && facts.error instanceof ApiProblem && facts.error.code === 'helper-grant-missing')
    return (
      <Suspense>
        <ActingEnded acting={acting} />
      </Suspense>
    );
  return (
    <Loaded isPage reading={joined(session, joined(facts, persons))}>
      {([who, [here, people]]) => {
        const personId = who.storehouses.find((known) => known.storehouseId === storehouse)?.personId;
        const person = people.find((known) => known.id === personId);
        return (
          <Inside
            here={{ ...here, storehouse }}
            elsewhere={who.storehouses.filter((known) => known.storehouseId !== storehouse)}
            acting={acting}
            person={{
              id: personId ?? '',
              duties: acting ? [] : (person?.duties ?? []),
              name: person?.name ?? who.name,
              household: acting?.household ?? person?.householdId ?? null,
              householdName: acting?.householdName ?? person?.householdName ?? '',
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
    forgetActing();
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
type Person = {
  id: string;
  duties: readonly string[];
  name: string;
  household: string | null;
  householdName: string;
};

type InsideProps = { here: Here; person: Person; acting: Acting | null; elsewhere: House['elsewhere'] };

function Inside({ here, person, acting, elsewhere }: InsideProps) {
  const massDisplay = here.massDisplay === 'kg' ? 'kg' : 'lb';
  const { language, massUnit } = useTaste();
  const house: House = {
    storehouse: here.storehouse,
    storehouseName: here.name,
    massDisplay,
    personId: person.id,
    personName: person.name,
    duties: person.duties,
    household: person.household,
    householdName: person.householdName,
    elsewhere,
    format: formatsOf({
      language,
      massUnit: massUnit ?? massDisplay,
      currency: here.currency,
      timeZone: here.timeZone,
    }),
  };
  return (
    <HouseContext value={house}>
      <Frame house={house} acting={acting}>
        <Outlet />
      </Frame>
    </HouseContext>
  );
}

const ActingBand = lazy(async () => {
  const { ActingBand } = await import('../features/helping/acting-band.tsx');
  return { default: ActingBand };
});
const ActingEnded = lazy(async () => {
  const { ActingEnded } = await import('../features/helping/acting-band.tsx');
  return { default: ActingEnded };
});

type FrameProps = { house: House; acting: Acting | null; children: ReactNode };

function Frame({ house, acting, children }: FrameProps) {
  const t = useText();
  const isOnline = useOnline();
  const keptSince = useKeptSince();
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
        <span className="row">
          {house.household === null ? null : (
            <Link className="who" to="/s/$storehouse/household" params={params}>
              {house.householdName}
            </Link>
          )}
          <Link className="who bell" to="/s/$storehouse/notices" params={params}>
            <BellIcon />
            <span className="sr">{t.notices}</span>
            <Unread house={house} />
          </Link>
        </span>
      </header>
      <aside className="rail">
        <div className="weave" />
        <Link className="brand" to="/s/$storehouse" params={params}>
          <Sheaf />
          {house.storehouseName}
        </Link>
        <nav aria-label={t.places}>
          <PlaceLinks house={house} places={placesIn(house)} />
        </nav>
        <div className="foot">
          <p>
            {house.personName}
            <br />
            {house.householdName}
          </p>
          <Elsewhere house={house} />
        </div>
      </aside>
      <main className="body" id="page" tabIndex={-1}>
        {acting ? (
          <Suspense>
            <ActingBand acting={acting} helper={house.personName} />
          </Suspense>
        ) : null}
        {isOnline && keptSince === null ? null : (
          <p className="said watch-said" role="status">
            {keptSince === null ? t.offline : t.keptSince(house.format.instant(keptSince))}
          </p>
        )}
        <FromOutside house={house}>{children}</FromOutside>
      </main>
      <Bar house={house} />
    </div>
  );
}

/** The number at the bell; nothing when everything is read. */
function Unread({ house: { storehouse } }: { house: House }) {
  const t = useText();
  const { data } = useQuery(unreadQuery({ storehouse }));
  if (!data?.unread) return null;
  return (
    <b className="count">
      {data.unread}
      <span className="sr"> {t.unread}</span>
    </b>
  );
}

const IN_BAR = 4;
const Drawer = lazy(() => import('./drawer.tsx'));

/** The first four places stand in the bar of a phone, the rest in a drawer behind it; a desk's rail has them all. */
function Bar({ house }: { house: House }) {
  const t = useText();
  const [isOpen, setIsOpen] = useState(false);
  const places = placesIn(house);
  return (
    <nav className="tabs" aria-label={t.places}>
      <PlaceLinks house={house} places={places.slice(0, IN_BAR)} />
      <button type="button" aria-haspopup="dialog" aria-expanded={isOpen} onClick={() => setIsOpen(true)}>
        <MoreIcon />
        {t.more}
      </button>
      {isOpen ? (
        <Suspense>
          <Drawer house={house} onClose={() => setIsOpen(false)}>
            <PlaceLinks house={house} places={places.slice(IN_BAR)} />
          </Drawer>
        </Suspense>
      ) : null}
    </nav>
  );
}

function PlaceLinks({ house, places }: { house: House; places: ReturnType<typeof placesIn> }) {
  const t = useText();
  return places.map(({ to, name, icon: Icon }) => (
    <Link
      key={to}
      to={to}
      params={{ storehouse: house.storehouse }}
      activeOptions={{ exact: to === '/s/$storehouse' }}
    >
      <Icon />
      {t[name]}
      {name === 'notices' ? <Unread house={house} /> : null}
    </Link>
  ));
}
