import { useInfiniteQuery, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useDeferredValue, useState } from 'react';
import { ask } from '../../api/client.ts';
import { unreadQuery } from '../../api/queries.ts';
import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { LooseLink } from '../buy/loose-link.tsx';
import { pageFor } from '../buy/run-links.ts';
import { aboutOf, type Notice, type NoticeState, noticesOf, noticesQuery } from './queries.ts';
import { useNoticeText } from './words.ts';
import './notices.css';

/** Everything the reader was told: read, acknowledged, searched. */
export function Notices() {
  const words = useNoticeText();
  const { storehouse, duties } = useHouse();
  useTitle(words.title);
  const unread = useQuery(unreadQuery({ storehouse }));
  const seesReach = duties.includes('coordinator') || duties.includes('packing_lead');
  return (
    <Loaded isPage reading={unread}>
      {(count) => (
        <>
          <h1>{words.stands(count.unread)}</h1>
          <div className="actions">
            {seesReach ? (
              <Link className="btn" to="/s/$storehouse/notices/written" params={{ storehouse }}>
                {words.write}
              </Link>
            ) : null}
            <Link className="btn" to="/s/$storehouse/notices/wishes" params={{ storehouse }}>
              {words.wishes}
            </Link>
          </div>
          <NoticeList />
        </>
      )}
    </Loaded>
  );
}

function NoticeList() {
  const words = useNoticeText();
  const { storehouse } = useHouse();
  const [state, setState] = useState<NoticeState>('all');
  const [typed, setTyped] = useState('');
  const q = useDeferredValue(typed);
  const list = useInfiniteQuery(noticesQuery(storehouse, { state, q }));
  const states = (['all', 'unread', 'open'] as const).map((value) => ({ value, name: words.states[value] }));
  return (
    <>
      <div className="pair">
        <Field
          label={words.find}
          type="search"
          maxLength={100}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
        />
        <Choice
          label={words.show}
          value={state}
          options={states}
          onChange={(value) => setState(value as NoticeState)}
        />
      </div>
      <Loaded reading={list}>
        {({ pages }) => {
          const notices = pages.flatMap((page) => page.notices);
          return notices.length === 0 ? (
            <div className="empty" role="status">
              <p>
                <b>{words.none}</b>
              </p>
              <p className="soft">{words.noneWords}</p>
            </div>
          ) : (
            <ul className="notices">
              {notices.map((notice) => (
                <OneNotice key={notice.id} notice={notice} />
              ))}
            </ul>
          );
        }}
      </Loaded>
      {list.hasNextPage ? (
        <div className="actions">
          <button
            type="button"
            className="btn"
            disabled={list.isFetching}
            onClick={() => void list.fetchNextPage()}
          >
            {words.more}
          </button>
        </div>
      ) : null}
    </>
  );
}

function OneNotice({ notice }: { notice: Notice }) {
  const words = useNoticeText();
  const { storehouse, format, duties } = useHouse();
  const queries = useQueryClient();
  const reading = useMutation({
    mutationFn: (isAcknowledged: boolean) =>
      ask(
        noticesOf[':notice'].reading.$put({
          param: { storehouse, notice: notice.id },
          json: { isAcknowledged },
        }),
      ),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['notices'] }),
  });
  const at = format.instant(notice.writtenAt);
  const to = pageFor(notice.path, { isTreasurer: duties.includes('treasurer') });
  return (
    <li className={notice.readAt === null ? 'unread' : undefined}>
      <article className="stack">
        <h2>{aboutOf(notice, format)}</h2>
        {notice.isSafety ? <State kind="wrong" word={words.safety} /> : null}
        {notice.readAt === null ? <State kind="watch" word={words.unread} /> : null}
        <p>{format.sentence(notice.words || notice.text)}</p>
        {notice.dueOn === null ? null : <p>{words.dueBy(format.day(notice.dueOn))}</p>}
        <p className="soft">
          {notice.writtenBy === null ? words.byBook(at) : words.by(notice.writtenBy, at)}
        </p>
        <ProblemSaid error={reading.error} />
        <div className="actions">
          {to === null ? null : (
            <LooseLink className="btn" to={to}>
              {words.see}
            </LooseLink>
          )}
          {notice.readAt !== null || notice.isSafety ? null : (
            <button
              type="button"
              className="btn"
              disabled={reading.isPending}
              onClick={() => reading.mutate(false)}
            >
              {words.read}
            </button>
          )}
          {notice.acknowledgedAt === null ? (
            <button
              type="button"
              className="btn"
              disabled={reading.isPending}
              onClick={() => reading.mutate(true)}
            >
              {words.acknowledge}
            </button>
          ) : null}
        </div>
        {notice.acknowledgedAt === null ? null : (
          <p className="soft">{words.acknowledged(format.instant(notice.acknowledgedAt))}</p>
        )}
      </article>
    </li>
  );
}
