import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const noticesOf = api.storehouses[':storehouse'].notices;

export const wishesOf = api.storehouses[':storehouse']['telling-wishes'];
export type Wishes = InferResponseType<typeof wishesOf.$get, 200>;

export const wishesQuery = (storehouse: string) =>
  queryOptions({
    queryKey: ['telling-wishes', storehouse],
    queryFn: () => ask(wishesOf.$get({ param: { storehouse } })),
  });

export type Notice = Exclude<InferResponseType<typeof noticesOf.$get, 200>, string>['notices'][number];
export type Written = Exclude<
  InferResponseType<typeof noticesOf.written.$get, 200>,
  string
>['notices'][number];
/** What a notice is about, in the reader's language. */
export const aboutOf = (
  { about, aboutEs }: Pick<Notice, 'about' | 'aboutEs'>,
  { language }: { readonly language: string },
): string => (language === 'es' ? aboutEs : about);

export type NoticeState = 'all' | 'unread' | 'open';

/** Page by page, the newest first. */
export const noticesQuery = (storehouse: string, wanted: { state: NoticeState; q: string }) =>
  infiniteQueryOptions({
    queryKey: ['notices', storehouse, wanted],
    initialPageParam: '',
    queryFn: ({ pageParam: after }) =>
      ask(
        noticesOf.$get({
          param: { storehouse },
          query: { ...wanted, limit: '20', ...(after === '' ? {} : { after }) },
        }),
      ),
    getNextPageParam: ({ next }) => next ?? undefined,
  });

export const writtenQuery = (storehouse: string) =>
  queryOptions({
    queryKey: ['notices', storehouse, 'written'],
    queryFn: () => ask(noticesOf.written.$get({ param: { storehouse }, query: { limit: 'all' } })),
  });
