import { queryOptions } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };

export type Offers = InferResponseType<typeof inside.offers.$get, 200>;
export type Offer = Offers['toMe'][number];
export type OfferWish = InferRequestType<typeof inside.offers.$post>['json'];

export const offersQuery = (param: InHouse) =>
  queryOptions({ queryKey: ['offers', 'all', param], queryFn: () => ask(inside.offers.$get({ param })) });

export const offerQuery = (param: InHouse & { readonly offer: string }) =>
  queryOptions({
    queryKey: ['offers', 'one', param],
    queryFn: () => ask(inside.offers[':offer'].$get({ param })),
  });
