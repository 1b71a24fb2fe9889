import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const inside = api.storehouses[':storehouse'];
const promises = inside['fund-promises'];
export type Fund = Exclude<InferResponseType<typeof promises.$get, 200>, string>;
export type FundPromise = Fund['promises'][number];

/** What is in the store fund and every promise, the newest first. */
export const fundQuery = (param: { readonly storehouse: string }) =>
  queryOptions({
    queryKey: ['books', param, 'fund'],
    queryFn: async () => (await ask(promises.$get({ param, query: { limit: 'all' } }))) as Fund,
  });
