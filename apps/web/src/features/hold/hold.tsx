import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { personsQuery } from '../../api/queries.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { Figures } from '../../ui/pieces.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { OwnPartOf } from './own-part.tsx';
import { aboutOf, type Hold, holdQuery, ownPartQuery } from './queries.ts';
import { ReleaseForm } from './release.tsx';
import { StandingOf } from './standing.tsx';
import { useHoldText } from './words.ts';

/** One hold: what it is on and why, one's own part in it, and for those who handle it who was reached. */
export function HoldPage() {
  const words = useHoldText();
  const { storehouse, household, duties, format } = useHouse();
  const { hold } = useParams({ from: '/s/$storehouse/holds/$hold' });
  const reading = useQuery(holdQuery({ storehouse, hold }));
  const mayHold = duties.includes('coordinator') || duties.includes('packing_lead');
  useTitle(words.title);
  return (
    <>
      <Link className="who" to="/s/$storehouse/holds" params={{ storehouse }}>
        <BackIcon />
        {words.title}
      </Link>
      <Loaded isPage reading={reading}>
        {(seen) => (
          <>
            <h1>
              {words.holdTitle(words.scopes[seen.scope] ?? '', aboutOf(seen, format), seen.endedAt === null)}
            </h1>
            <Facts hold={seen} />
            {household === null ? null : <OwnPartOf hold={seen} />}
            {mayHold ? <StandingOf hold={seen} /> : null}
            {mayHold && seen.endedAt === null ? <ReleaseForm hold={seen} /> : null}
            <p className="caution">{words.caution}</p>
            <HoldPapers hold={seen} />
          </>
        )}
      </Loaded>
    </>
  );
}

/** The tag for what is held, and one's own notice where one has or had some. */
function HoldPapers({ hold }: { hold: Hold }) {
  const { storehouse, household } = useHouse();
  const own = useQuery({ ...ownPartQuery({ storehouse, hold: hold.id }), enabled: household !== null });
  const path = `holds/${hold.id}/papers/recall-notice`;
  const isOwn = own.data?.isConcerned === true && hold.ended !== 'released';
  return (
    <PaperLinks
      papers={[
        { kind: 'quarantine-tag', path: `holds/${hold.id}/tag` },
        ...(isOwn ? [{ kind: 'recall-notice', path }] : []),
      ]}
    />
  );
}

function Facts({ hold }: { hold: Hold }) {
  const words = useHoldText();
  const { storehouse, format } = useHouse();
  const persons = useQuery(personsQuery({ storehouse }));
  const nameOf = (id: string | null) => persons.data?.find((person) => person.id === id)?.name ?? '';
  const traced = tracedBy(hold);
  return (
    <>
      <p className="said">{hold.sentence}</p>
      <Figures
        rows={[
          {
            name: hold.heldBy === null ? words.from : words.by,
            value: words.heldBy(nameOf(hold.heldBy), format.instant(hold.heldAt)),
          },
          ...(hold.line === null
            ? []
            : [
                {
                  name: words.scopes.session ?? '',
                  value: words.serials(hold.line, hold.fromSerial, hold.toSerial),
                },
              ]),
          ...(hold.vessels === null || hold.grams === null
            ? []
            : [{ name: words.reaches, value: words.vessels(hold.vessels, format.mass(hold.grams)) }]),
        ]}
      />
      {hold.finding === '' ? null : <p>{words.found(nameOf(hold.releaseAskedBy), hold.finding)}</p>}
      {traced === null ? null : (
        <p>
          <Link to="/s/$storehouse/trace" params={{ storehouse }} search={traced}>
            {words.wayOf}
          </Link>
        </p>
      )}
    </>
  );
}

/** The address of its way, where a scope has one thing that its way begins at. */
function tracedBy({ bagId, lotId, session, place, mark }: Hold) {
  if (bagId !== null) return { kind: 'bag', id: bagId };
  if (lotId !== null) return { kind: 'lot', id: lotId };
  if (session !== null) return { kind: 'session', id: session.id };
  if (place !== null) return { kind: 'place', id: place.id, task: 'recall' };
  return mark === null ? null : { code: mark };
}
