import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

const ofBuy = api.storehouses[':storehouse'].buys[':buy'];
type OfBuy = { readonly storehouse: string; readonly buy: string };

export type ClosingBody = InferResponseType<typeof ofBuy.closing.$get, 200>;
export type Charges = Exclude<InferResponseType<typeof ofBuy.charges.$get, 200>, string>;

export const closingQuery = (param: OfBuy) =>
  queryOptions({
    queryKey: ['buy', param, 'closing'],
    queryFn: () => ask(ofBuy.closing.$get({ param })),
  });

export const chargesQuery = (param: OfBuy) =>
  queryOptions({
    queryKey: ['buy', param, 'charges'],
    queryFn: () => ask(ofBuy.charges.$get({ param, query: {} })),
  });
