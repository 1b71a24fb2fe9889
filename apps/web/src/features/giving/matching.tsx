import { spellCode } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate, useParams } from '@tanstack/react-router';
import type { ReactNode } from 'react';
import { askOnce } from '../../api/client.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { Ledger, State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { MatchingGrid } from './matching-grid.tsx';
import { gives, inside, kindNamed, type Matching, manifestsQuery, matchingQuery, named } from './queries.ts';
import { useGivingText } from './words.ts';

/** What goes where, what the nearest door first would have lost, why not, and in which order the van is loaded. */
export function MatchingPage() {
  const words = useGivingText();
  const param = useParams({ from: '/s/$storehouse/giving/matchings/$matching' });
  useTitle(words.matchTitle);
  return (
    <>
      <Link className="who" to="/s/$storehouse/giving" params={param}>
        <BackIcon />
        {words.title}
      </Link>
      <Loaded isPage reading={useQuery(matchingQuery(param))}>
        {(matching) => <Matched matching={matching} />}
      </Loaded>
    </>
  );
}

function Matched({ matching }: { matching: Matching }) {
  const words = useGivingText();
  const house = useHouse();
  const { format } = house;
  const used = matching.trips.filter(({ grams }) => grams > 0).length;
  const lost = matching.givenGrams - matching.nearest.givenGrams;
  return (
    <>
      <h1>{words.matched(format.mass(matching.givenGrams), used)}</h1>
      <p>{lost > 0 ? words.lost(format.mass(lost)) : words.nothingLost}</p>
      <p className="soft">{words.proved}</p>
      <MatchingGrid matching={matching} />
      {matching.trips.map((trip, at) => (
        <section className="stack" key={`${trip.pantryId} ${trip.onDay}`}>
          <h2>{words.load(trip.pantry, format.day(trip.onDay))}</h2>
          {trip.loads.length === 0 ? (
            <p className="soft">{words.nothingHere}</p>
          ) : (
            <>
              <Loads
                rows={trip.loads}
                grams={trip.grams}
                title={words.load(trip.pantry, format.day(trip.onDay))}
              />
              <SignedOut matching={matching.id} trip={trip}>
                {gives(house) ? <SignOut matching={matching.id} trip={at} pantry={trip.pantry} /> : null}
              </SignedOut>
            </>
          )}
        </section>
      ))}
      <VanOrder matching={matching} />
    </>
  );
}

const codesOf = ({ containers }: { containers: readonly { code: string }[] }) =>
  containers.map(({ code }) => spellCode(code)).join(', ');

type Load = Matching['trips'][number]['loads'][number];

function Loads({ rows, grams, title }: { rows: readonly Load[]; grams: number; title: string }) {
  const words = useGivingText();
  const { format } = useHouse();
  return (
    <Ledger
      caption={title}
      columns={[
        { name: words.food },
        { name: words.container, isNumber: true },
        { name: words.mass, isNumber: true },
        { name: words.closes },
      ]}
      rows={[
        ...rows.map((row) => ({
          key: String(row.lot),
          cells: [
            <span key="what">
              {named(row, format.language)}
              <span className="soft block">{codesOf(row)}</span>
            </span>,
            `${row.containers.length} × ${kindNamed(row, format.language)}`,
            format.mass(row.containers.length * row.containerGrams),
            row.giftClosesOn === null ? '' : format.day(row.giftClosesOn),
          ],
        })),
        { key: 'sum', isSum: true, cells: [words.total, '', format.mass(grams), ''] },
      ]}
    />
  );
}

type SignedOutProps = { matching: string; trip: Matching['trips'][number]; children: ReactNode };

/** The manifest that a trip went out with; while there is none, what is here to sign it out with. */
function SignedOut({ matching, trip, children }: SignedOutProps) {
  const words = useGivingText();
  const { storehouse } = useHouse();
  const { data } = useQuery(manifestsQuery({ storehouse }));
  const manifest = data?.manifests.find(
    (one) =>
      one.matchingId === matching &&
      one.pantryId === trip.pantryId &&
      one.onDay === trip.onDay &&
      one.stage !== 'called-off',
  );
  if (!manifest) return children;
  return (
    <p>
      <Link to="/s/$storehouse/giving/manifests/$manifest" params={{ storehouse, manifest: manifest.id }}>
        {words.manifest(manifest.number)}
      </Link>{' '}
      <State
        kind={manifest.stage === 'received' ? 'well' : 'watch'}
        word={words.stages[manifest.stage] ?? manifest.stage}
      />
    </p>
  );
}

function SignOut({ matching, trip, pantry }: { matching: string; trip: number; pantry: string }) {
  const words = useGivingText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const navigate = useNavigate();
  const {
    draft: { driver },
    change,
    forget,
  } = useDraft(`sign-out.${matching}.${trip}`, { driver: '' });
  const signing = useMutation({
    mutationFn: (json: { matchingId: string; trip: number; driver: string }) =>
      askOnce(`sign-out.${matching}.${trip}`, json, (header) =>
        inside['gift-manifests'].$post({ param: { storehouse }, json }, { headers: header }),
      ),
    onSuccess: async (manifest) => {
      forget();
      await queries.invalidateQueries({ queryKey: ['giving'] });
      await navigate({
        to: '/s/$storehouse/giving/manifests/$manifest',
        params: { storehouse, manifest: manifest.id },
      });
    },
  });
  const problems = problemsOf(signing.error);
  return (
    <Form
      label={`${words.signOut}: ${pantry}`}
      onSend={() => signing.mutate({ matchingId: matching, trip, driver })}
    >
      <Field
        label={words.driver}
        value={driver}
        problem={problems.driver}
        onChange={(event) => change({ driver: event.target.value })}
      />
      {problems.driver ? null : <ProblemSaid error={signing.error} />}
      <button type="submit" className="btn go" disabled={signing.isPending}>
        {words.signOut}
      </button>
    </Form>
  );
}

/** Day by day what goes into the van, first in first. */
function VanOrder({ matching }: { matching: Matching }) {
  const words = useGivingText();
  const { format } = useHouse();
  const days = matching.loading.filter(({ loads }) => loads.length > 0);
  if (days.length === 0) return null;
  return (
    <section className="stack">
      <h2>{words.loadVan}</h2>
      <p className="soft">{words.loadVanWords}</p>
      {days.map(({ onDay, loads }) => (
        <section key={onDay}>
          <h3>{format.day(onDay)}</h3>
          <ol>
            {loads.map((load) => (
              <li key={`${load.lot} ${load.pantry}`}>
                <b>{codesOf(load)}</b>, {named(load, format.language)}
                <span className="soft block">
                  {load.pantry}; {words.closes}: {format.day(load.giftClosesOn)}
                </span>
              </li>
            ))}
          </ol>
        </section>
      ))}
    </section>
  );
}
