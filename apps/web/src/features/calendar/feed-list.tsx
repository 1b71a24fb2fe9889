import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { Address } from './address.tsx';
import { type FeedBody, feedsApi, feedsQuery } from './queries.ts';
import { useCalendarText } from './words.ts';

/** The addresses that were made, without themselves: each can be given anew, or ended. */
export function FeedList() {
  const words = useCalendarText();
  const { storehouse } = useHouse();
  const reading = useQuery(feedsQuery({ storehouse }));
  return (
    <section className="stack">
      <h2>{words.feeds}</h2>
      <Loaded reading={reading}>
        {({ feeds }) =>
          feeds.length === 0 ? (
            <p>{words.noFeeds}</p>
          ) : (
            <>
              <p className="soft">{words.renewWords}</p>
              <ul className="list">
                {feeds.map((feed) => (
                  <Feed key={feed.id} feed={feed} />
                ))}
              </ul>
            </>
          )
        }
      </Loaded>
    </section>
  );
}

function Feed({ feed }: { feed: FeedBody }) {
  const words = useCalendarText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, feed: feed.id };
  const onSuccess = () => queries.invalidateQueries({ queryKey: ['calendar-feeds'] });
  const renewing = useMutation({
    mutationFn: () => ask(feedsApi[':feed'].renewal.$post({ param })),
    onSuccess,
  });
  const ending = useMutation({ mutationFn: () => ask(feedsApi[':feed'].$delete({ param })), onSuccess });
  const name = feed.itemName === null ? words.scopes[feed.scope] : words.oneThing(feed.itemName);
  const since =
    feed.renewedAt === null
      ? words.madeOn(format.instant(feed.madeAt))
      : words.renewedOn(format.instant(feed.renewedAt));
  return (
    <li className="stack">
      <div className="row place">
        <p>
          <b>{name}</b>
          <br />
          <span className="soft">{since}</span>
        </p>
        <div className="actions">
          <button
            type="button"
            className="btn"
            onClick={() => renewing.mutate()}
            disabled={renewing.isPending}
          >
            {words.renew}
          </button>
          <button type="button" className="btn" onClick={() => ending.mutate()} disabled={ending.isPending}>
            {words.end}
          </button>
        </div>
      </div>
      <ProblemSaid error={renewing.error ?? ending.error} />
      {renewing.data ? <Address feed={renewing.data} /> : null}
    </li>
  );
}
