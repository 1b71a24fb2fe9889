import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };
type Answered = Exclude<InferResponseType<(typeof inside)['claims-answered']['$get'], 200>, string>;

export const claimHistoryQuery = (param: InHouse & { readonly claim: string }) =>
  queryOptions({
    queryKey: ['books', param, 'claim-history'],
    queryFn: () => ask(inside.claims[':claim'].history.$get({ param })),
  });

type OfBuy = Exclude<InferResponseType<(typeof inside.buys)[':buy']['claims']['$get'], 200>, string>;

/** The claims of one buy, open or answered. */
export const buyClaimsQuery = (param: InHouse & { readonly buy: string }) =>
  queryOptions({
    queryKey: ['books', param, 'claims'],
    queryFn: async () =>
      (await ask(inside.buys[':buy'].claims.$get({ param, query: { limit: 'all' } }))) as OfBuy,
  });

/** All of them, the latest first. */
export const answeredClaimsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['books', param, 'claims-answered'],
    queryFn: async () =>
      (await ask(inside['claims-answered'].$get({ param, query: { limit: 'all' } }))) as Answered,
  });
