import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import type { Whose } from '../place/queries.ts';
import { AnswerLids } from './answer-lids.tsx';
import { LooseLids } from './loose-lids.tsx';
import { type Lid, lidsQuery } from './queries.ts';
import { type Lids, useLids } from './use-lids.ts';
import { useLidText } from './words.ts';

type Props = {
  readonly of: Whose;
  /** A page of its own, or part of a packing day's. */
  readonly isPage?: boolean;
  /** Those that one packing day closed, and no others. */
  readonly session?: string;
};

/** Lids that wait to be pressed, those that did not hold with what to do, and those that tell nothing yet. */
export function LidsOf({ of, isPage = false, session }: Props) {
  const t = useLidText();
  const { storehouse } = useHouse();
  const reading = useQuery(lidsQuery({ storehouse }, of));
  const list = session ?? of;
  const said = useLids(list);
  return (
    <Loaded isPage={isPage} reading={reading}>
      {(read) => {
        const lids = read.lids.filter((lid) => session === undefined || lid.session?.id === session);
        if (!isPage && lids.length === 0 && !said.answering.data) return null;
        const [due, loose, early] = (['due', 'loose', 'early'] as const).map((state) =>
          lids.filter((lid) => lid.state === state),
        ) as [Lid[], Lid[], Lid[]];
        const standing = t.standing({ due: due.length, loose: loose.length, early: early.length });
        return (
          <section className="stack">
            {isPage ? <h1>{standing}</h1> : <h2>{`${t.title}: ${standing}`}</h2>}
            <Said {...said} />
            {lids.length === 0 ? null : <p className="said watch-said">{t.means}</p>}
            {due.length === 0 ? null : (
              <AnswerLids
                key={due.map(({ id }) => id).join()}
                {...{ of, due, list }}
                answering={said.answering}
              />
            )}
            {loose.length === 0 ? null : <LooseLids {...{ of, loose }} closing={said.closing} />}
            {early.length === 0 ? null : <Early early={early} />}
            <p className="soft">{t.howLong}</p>
          </section>
        );
      }}
    </Loaded>
  );
}

/** What was written down just now, also where nothing of it waits any more. */
function Said({ answering, closing }: Lids) {
  const t = useLidText();
  const closed = closing.data?.closed ?? [];
  return (
    <div role="status">
      {answering.data ? <p>{t.written(answering.data)}</p> : null}
      {closed.length === 0 ? null : <p>{t.closedAgain(closed.join(', '))}</p>}
    </div>
  );
}

function Early({ early }: { early: readonly Lid[] }) {
  const t = useLidText();
  const { format } = useHouse();
  return (
    <section>
      <h2>{t.early}</h2>
      <p>{t.earlySays}</p>
      <ul className="list">
        {early.map((lid) => (
          <li key={lid.id}>
            <span>
              <span className="code">{lid.spelled}</span> {t.from(format.instant(lid.dueAt))}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
