import { useQuery } from '@tanstack/react-query';
import { Link, useSearch } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { useTitle } from '../../ui/use-title.ts';
import { PaperLinks } from '../paper/paper-links.tsx';
import { OfWhose } from '../place/of-whose.tsx';
import type { Whose } from '../place/queries.ts';
import { type ToInspect, toInspectQuery } from './queries.ts';
import { useInspectionText } from './words.ts';

/** What is to be looked at by today, and what is on watch because of something beside it. */
export function DuePage() {
  const words = useInspectionText();
  const { of: first } = useSearch({ from: '/s/$storehouse/inspections' });
  useTitle(words.title);
  return (
    <OfWhose
      back={{ to: '/s/$storehouse/shelf', name: words.shelf }}
      label={words.whose}
      owners={words.owners}
      first={first}
    >
      {(of) => <ToLookAt of={of} />}
    </OfWhose>
  );
}

function ToLookAt({ of }: { of: Whose }) {
  const words = useInspectionText();
  const { storehouse } = useHouse();
  const reading = useQuery(toInspectQuery({ storehouse }, of));
  return (
    <Loaded isPage reading={reading}>
      {({ due, watches }) => (
        <>
          <h1>{words.waiting(due.length + watches.length)}</h1>
          <p>{words.outsideFirst}</p>
          {watches.length === 0 ? null : <Watched watches={watches} />}
          {due.length === 0 ? null : <Due due={due} />}
          <p className="soft">{words.howOften}</p>
          <PaperLinks papers={[{ kind: 'inspection-sheet', path: `inspections/papers/sheet?of=${of}` }]} />
        </>
      )}
    </Loaded>
  );
}

function Watched({ watches }: Pick<ToInspect, 'watches'>) {
  const words = useInspectionText();
  const { format } = useHouse();
  return (
    <section>
      <h2>{words.onWatch}</h2>
      <p>{words.onWatchSays}</p>
      <ul className="list">
        {watches.map(({ container, finding, since, isSameWindow }) => (
          <Row key={`${container.id} ${since}`} container={container}>
            {words.because(finding.name[format.language], format.day(since.slice(0, 10)))}
            {isSameWindow ? ` ${words.sameWindow}` : ''}
          </Row>
        ))}
      </ul>
    </section>
  );
}

function Due({ due }: Pick<ToInspect, 'due'>) {
  const words = useInspectionText();
  const { format } = useHouse();
  return (
    <section>
      <h2>{words.due}</h2>
      <ul className="list">
        {due.map(({ container, why, dueOn }) => (
          <Row key={container.id} container={container}>
            {words.dueSince(words.whys[why], format.day(dueOn))}
          </Row>
        ))}
      </ul>
    </section>
  );
}

function Row({
  container,
  children,
}: {
  container: ToInspect['due'][number]['container'];
  children: React.ReactNode;
}) {
  const { storehouse, format } = useHouse();
  const name = nameIn(format.language, container.food);
  return (
    <li>
      <Link to="/s/$storehouse/inspections/$container" params={{ storehouse, container: container.id }}>
        <span>
          <b>{name}</b> <span className="code">{container.spelled}</span>
          <span className="soft block">{children}</span>
        </span>
      </Link>
    </li>
  );
}
