import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query';
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

/** The latest first, a page at a time. */
export const answeredClaimsQuery = (param: InHouse) =>
  infiniteQueryOptions({
    queryKey: ['books', param, 'claims-answered'],
    initialPageParam: '',
    queryFn: async ({ pageParam: after }) => {
      const query = { limit: '50', ...(after === '' ? {} : { after }) };
      return (await ask(inside['claims-answered'].$get({ param, query }))) as Answered;
    },
    getNextPageParam: ({ next }) => next,
  });
