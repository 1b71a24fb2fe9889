import { useQuery } from '@tanstack/react-query';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import type { Whose } from '../place/queries.ts';
import { AnswerLids } from './answer-lids.tsx';
import { LooseLids } from './loose-lids.tsx';
import { type Lid, lidsQuery } from './queries.ts';
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
  return (
    <Loaded isPage={isPage} reading={reading}>
      {(read) => {
        const lids = read.lids.filter((lid) => session === undefined || lid.session?.id === session);
        if (!isPage && lids.length === 0) return null;
        const [due, loose, early] = (['due', 'loose', 'early'] as const).map((state) =>
          lids.filter((lid) => lid.state === state),
        ) as [Lid[], Lid[], Lid[]];
        const standing = t.standing({ due: due.length, loose: loose.length, early: early.length });
        return (
          <section className="stack">
            {isPage ? <h1>{standing}</h1> : <h2>{`${t.title}: ${standing}`}</h2>}
            {lids.length === 0 ? null : <p className="said watch-said">{t.means}</p>}
            {due.length === 0 ? null : (
              <AnswerLids key={due.map(({ id }) => id).join()} {...{ of, due }} name={session ?? of} />
            )}
            {loose.length === 0 ? null : <LooseLids {...{ of, loose }} />}
            {early.length === 0 ? null : <Early early={early} />}
            <p className="soft">{t.howLong}</p>
          </section>
        );
      }}
    </Loaded>
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
