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

/** All of them, the latest first. */
export const answeredClaimsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['books', param, 'claims-answered'],
    queryFn: async () =>
      (await ask(inside['claims-answered'].$get({ param, query: { limit: 'all' } }))) as Answered,
  });
