import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

const inside = api.storehouses[':storehouse'];
export type FoundPaper = InferResponseType<(typeof inside.papers)[':paper']['$get']>;

export const paperQuery = (param: { storehouse: string; paper: string }) =>
  queryOptions({ queryKey: ['paper', param], queryFn: () => ask(inside.papers[':paper'].$get({ param })) });

export const keyingsQuery = (param: { storehouse: string; buy: string }) =>
  queryOptions({
    queryKey: ['buy', param, 'keyings'],
    queryFn: () => ask(inside.buys[':buy'].keyings.$get({ param })),
  });

export const helpingQuery = (param: { storehouse: string }) =>
  queryOptions({
    queryKey: ['helping', param],
    queryFn: () => ask(inside.helping.$get({ param, query: { limit: 'all' } })),
  });
