import { useQuery } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { joined, Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { useTitle } from '../../ui/use-title.ts';
import { Guided } from './guided.tsx';
import { type Looks, looksQuery, rulesQuery } from './queries.ts';
import { SmallTests } from './small-tests.tsx';
import { useInspectionText } from './words.ts';
import './inspection.css';

/** A look at one container, question by question, and what earlier looks found. */
export function LookPage() {
  const { container } = useParams({ from: '/s/$storehouse/inspections/$container' });
  const { storehouse } = useHouse();
  const words = useInspectionText();
  const looks = useQuery(looksQuery({ storehouse, container }));
  const rules = useQuery(rulesQuery({ storehouse }));
  return (
    <>
      <Link className="who" to="/s/$storehouse/inspections" params={{ storehouse }}>
        <BackIcon />
        {words.title}
      </Link>
      <Loaded isPage reading={joined(looks, rules)}>
        {([read, known]) => (
          <>
            <Head container={read.container} />
            <Guided container={read.container} rules={known} />
            <Earlier inspections={read.inspections} />
            <SmallTests container={read.container} tests={read.tests} />
          </>
        )}
      </Loaded>
    </>
  );
}

function Head({ container }: Pick<Looks, 'container'>) {
  const words = useInspectionText();
  const { format } = useHouse();
  const food = nameIn(format.language, container.food);
  useTitle(words.lookAt(food));
  return (
    <>
      <div className="row">
        <h1>{words.lookAt(food)}</h1>
        <span className="code">{container.spelled}</span>
      </div>
      <p className="soft">
        {[
          nameIn(format.language, container.kind),
          format.mass(container.grams),
          words.packed(format.day(container.packedOn)),
        ].join(' · ')}
      </p>
    </>
  );
}

function Earlier({ inspections }: Pick<Looks, 'inspections'>) {
  const words = useInspectionText();
  const { format } = useHouse();
  if (inspections.length === 0) return null;
  return (
    <section>
      <h2>{words.earlier}</h2>
      <ul className="list">
        {inspections.map(({ id, inspectedOn, findings, outcome, note, isOwn }) => (
          <li key={id}>
            <span>
              <b>{outcome.name[format.language]}</b> {format.day(inspectedOn)}
              <span className="soft block">
                {[...findings.map(({ name }) => name[format.language]), isOwn ? note : words.foundBeforeYours]
                  .filter(Boolean)
                  .join(' · ')}
              </span>
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
