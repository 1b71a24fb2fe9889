import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { type Troubled, workOf, workQuery } from './queries.ts';
import { useWorkText } from './words.ts';

/** What failed in the background, why, and a button that tries it again. */
export function Work() {
  const words = useWorkText();
  const { storehouse } = useHouse();
  useTitle(words.title);
  const reading = useQuery(workQuery(storehouse));
  return (
    <>
      <Link className="who" to="/s/$storehouse/settings" params={{ storehouse }}>
        <BackIcon />
        {words.toSettings}
      </Link>
      {reading.data === undefined ? <h1>{words.title}</h1> : null}
      <Loaded reading={reading}>
        {({ dead, waiting, mail, works }) => (
          <>
            <h1>{words.stands(dead)}</h1>
            <p>{mail.sentence}</p>
            {waiting === 0 ? null : <p className="soft">{words.waiting(waiting)}</p>}
            {works.length === 0 ? (
              <div className="empty" role="status">
                <p>
                  <b>{words.none}</b>
                </p>
                <p className="soft">{words.noneWords}</p>
              </div>
            ) : (
              <Searched
                items={works}
                wordsOf={(work) => `${words.tasks(work.task, work.personName)} ${work.words}`}
              >
                {(shown) => shown.map((work) => <OneWork key={work.id} work={work} />)}
              </Searched>
            )}
          </>
        )}
      </Loaded>
    </>
  );
}

function OneWork({ work }: { work: Troubled }) {
  const words = useWorkText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const retrying = useMutation({
    mutationFn: () => ask(workOf[':work'].retry.$post({ param: { storehouse, work: work.id } })),
    onSettled: () => queries.invalidateQueries({ queryKey: ['background-work'] }),
  });
  const isDead = work.state === 'dead';
  return (
    <article className="stack">
      <h2>{words.tasks(work.task, work.personName)}</h2>
      <State kind={isDead ? 'wrong' : 'watch'} word={isDead ? words.dead : words.later} />
      <p>{work.words}</p>
      <p className="soft">
        {words.tried(work.tries, format.instant(work.madeAt))}
        {isDead || work.dueAt === null ? '' : ` ${words.next(format.instant(work.dueAt))}`}
      </p>
      <ProblemSaid error={retrying.error} />
      {isDead ? (
        <div className="actions">
          <button
            type="button"
            className="btn"
            disabled={retrying.isPending}
            onClick={() => retrying.mutate()}
          >
            {words.retry}
          </button>
        </div>
      ) : null}
    </article>
  );
}
