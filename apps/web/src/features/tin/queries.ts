import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const tinApi = api.storehouses[':storehouse'].tin;
type InHouse = { readonly storehouse: string };

export type TinBody = InferResponseType<typeof tinApi.$get, 200>;
export type Counts = Exclude<InferResponseType<typeof tinApi.counts.$get, 200>, string>;

export const tinKey = (param: InHouse) => ['tin', param] as const;

export const tinQuery = (param: InHouse) =>
  queryOptions({ queryKey: [...tinKey(param), 'now'], queryFn: () => ask(tinApi.$get({ param })) });

export const countsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: [...tinKey(param), 'counts'],
    queryFn: async () => (await ask(tinApi.counts.$get({ param, query: { limit: 'all' } }))) as Counts,
  });
