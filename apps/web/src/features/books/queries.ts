import { infiniteQueryOptions, queryOptions } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';

const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };

export const balancesQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['books', param, 'balances'],
    queryFn: () => ask(inside.balances.$get({ param, query: { limit: 'all' } })),
  });

export const trialBalanceQuery = (param: InHouse, throughOn?: string) =>
  queryOptions({
    queryKey: ['books', param, 'trial-balance', throughOn ?? ''],
    queryFn: () => ask(inside['trial-balance'].$get({ param, query: throughOn ? { throughOn } : {} })),
  });

export const clearingQuery = (param: InHouse & { readonly buy: string }) =>
  queryOptions({
    queryKey: ['books', param, 'clearing'],
    queryFn: () => ask(inside.clearing[':buy'].$get({ param })),
  });

export const heldDepositsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['books', param, 'deposits-held'],
    queryFn: () => ask(inside['deposits-held'].$get({ param, query: {} })),
  });

export const openClaimsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['books', param, 'claims-outstanding'],
    queryFn: () => ask(inside['claims-outstanding'].$get({ param, query: {} })),
  });

export const billsQuery = (param: InHouse & { readonly buy: string }) =>
  queryOptions({
    queryKey: ['books', param, 'bills'],
    queryFn: () => ask(inside.buys[':buy'].invoices.$get({ param, query: { limit: 'all' } })),
  });

export const writeOffsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['books', param, 'write-offs'],
    queryFn: () => ask(inside['write-offs'].$get({ param, query: { limit: 'all' } })),
  });

/** Which entries: of one line of the chart, one account, one buy or one household; all when nothing is named. */
export type EntriesOf = {
  readonly chart?: string;
  readonly account?: string;
  readonly buy?: string;
  readonly household?: string;
  readonly words?: string;
  readonly what?: string;
  readonly fromOn?: string;
  readonly toOn?: string;
};

/** The newest first, a page at a time. */
export const entriesQuery = (param: InHouse, of: EntriesOf) =>
  infiniteQueryOptions({
    queryKey: ['books', param, 'entries', of],
    initialPageParam: '',
    queryFn: ({ pageParam: after }) =>
      ask(
        inside.entries.$get({
          param,
          query: { ...of, newestFirst: 'true', limit: '50', ...(after === '' ? {} : { after }) },
        }),
      ),
    getNextPageParam: ({ next }) => next,
  });

export const entryQuery = (param: InHouse & { readonly entry: string }) =>
  queryOptions({
    queryKey: ['books', param, 'entry'],
    queryFn: () => ask(inside.entries[':entry'].$get({ param })),
  });
