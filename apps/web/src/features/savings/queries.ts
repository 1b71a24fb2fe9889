import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';
import type { House } from '../../ui/house.ts';

export const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };

export type SavingsOfYear = InferResponseType<typeof inside.savings.$get, 200>;
export type ShelfPrice = InferResponseType<(typeof inside)['shelf-prices']['$get'], 200>['prices'][number];

export const savingsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['savings', param],
    queryFn: () => ask(inside.savings.$get({ param, query: {} })),
  });

export const shelfPricesQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['savings', 'prices', param],
    queryFn: async () => (await ask(inside['shelf-prices'].$get({ param }))).prices,
  });

/** Whoever signs a year; the server says so too. */
export const readsSavings = ({ duties }: House) =>
  ['coordinator', 'treasurer', 'reviewer'].some((duty) => duties.includes(duty));
