import { QueryClient, queryOptions } from '@tanstack/react-query';
import { api, ask } from './client.ts';
import { ApiProblem } from './problem.ts';

export const queries = new QueryClient({
  defaultOptions: {
    queries: {
      // The parts of one page share a reading; a page that is opened again asks anew, since neighbours write meanwhile.
      staleTime: 2_000,
      networkMode: 'always', // a lost signal is said at once, instead of waiting without a word
      retry: (count, error) => count < 2 && error instanceof ApiProblem && error.status >= 500,
    },
    mutations: { networkMode: 'always' },
  },
});

const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };
type OfBuy = InHouse & { readonly buy: string };
type OfHousehold = InHouse & { readonly household: string };

export const sessionQuery = queryOptions({ queryKey: ['session'], queryFn: () => ask(api.session.$get()) });

export const storehouseQuery = (param: InHouse) =>
  queryOptions({ queryKey: ['storehouse', param], queryFn: () => ask(inside.$get({ param })) });

export const personsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['persons', param],
    queryFn: async () => (await ask(inside.persons.$get({ param, query: { limit: 'all' } }))).persons,
  });

/** How many notices wait to be read; asked again now and then, since others write them. */
export const unreadQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['notices', param.storehouse, 'unread'],
    refetchInterval: 120_000,
    queryFn: () => ask(inside.notices.unread.$get({ param })),
  });

export const coverageQuery = (param: InHouse) =>
  queryOptions({ queryKey: ['coverage', param], queryFn: () => ask(inside.coverage.$get({ param })) });

export const buysQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['buys', param],
    queryFn: () => ask(inside.buys.$get({ param, query: { limit: 'all' } })),
  });

export const buyQuery = (param: OfBuy) =>
  queryOptions({ queryKey: ['buy', param], queryFn: () => ask(inside.buys[':buy'].$get({ param })) });

export const pledgesQuery = (param: OfBuy) =>
  queryOptions({
    queryKey: ['buy', param, 'pledges'],
    queryFn: () => ask(inside.buys[':buy'].pledges.$get({ param })),
  });

export const fillQuery = (param: OfBuy) =>
  queryOptions({
    queryKey: ['buy', param, 'fill'],
    queryFn: () => ask(inside.buys[':buy'].fill.$get({ param })),
  });

export const quotesQuery = (param: OfBuy) =>
  queryOptions({
    queryKey: ['buy', param, 'quotes'],
    queryFn: () => ask(inside.buys[':buy'].quotes.$get({ param, query: {} })),
  });

export const pickUpsQuery = (param: OfBuy) =>
  queryOptions({
    queryKey: ['buy', param, 'pick-ups'],
    queryFn: () => ask(inside.buys[':buy']['pick-ups'].$get({ param, query: {} })),
  });

export const balanceQuery = (param: OfHousehold) =>
  queryOptions({
    queryKey: ['balance', param],
    queryFn: () => ask(inside.households[':household'].balance.$get({ param })),
  });

export const statementQuery = (param: OfHousehold, query: { from?: string; to?: string }) =>
  queryOptions({
    queryKey: ['statement', param, query],
    queryFn: () => ask(inside.households[':household'].statement.$get({ param, query })),
  });

export const eatersQuery = (param: OfHousehold) =>
  queryOptions({
    queryKey: ['eaters', param],
    queryFn: () => ask(inside.households[':household'].eaters.$get({ param, query: { limit: 'all' } })),
  });

export const planQuery = (param: OfHousehold) =>
  queryOptions({
    queryKey: ['plan', param],
    queryFn: () => ask(inside.households[':household'].plan.$get({ param })),
  });
