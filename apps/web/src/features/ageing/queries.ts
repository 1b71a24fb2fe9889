import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

const balances = api.storehouses[':storehouse'].balances;
type Page = Exclude<InferResponseType<typeof balances.$get, 200>, string>;
export type Balance = Page['balances'][number];
export type Balances = Pick<Page, 'balances' | 'currency'>;

/** Every household's balance by age: the whole list, so that its sums are those of the storehouse. */
export const ageingQuery = (param: { readonly storehouse: string }) =>
  queryOptions({
    queryKey: ['ageing', param],
    queryFn: async () => (await ask(balances.$get({ param, query: { limit: 'all' } }))) as Page,
  });
