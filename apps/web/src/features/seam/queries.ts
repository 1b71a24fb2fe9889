import { queryOptions } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';
import type { OfSession } from '../packing/queries.ts';

export const inside = api.storehouses[':storehouse'];
const watchApi = inside['packing-sessions'][':session'].seals;

export type Watch = InferResponseType<typeof watchApi.$get, 200>;
export type LineWatch = Watch['lines'][number];
export type SealWindow = Watch['windows'][number];
export type Suspect = SealWindow['suspects'][number];

/** What did not pass and is to go into a new can, as long as it has not. */
export const isToReCan = ({ disposition, movedTo }: Suspect): boolean =>
  disposition === 're-can' && movedTo === null;
export type Machine = Watch['machines'][number];
export type Limit = Watch['limits'][number];
export type Settling = InferRequestType<(typeof inside)['seal-holds']['settling']['$post']>['json'];

export type ReCanning = InferRequestType<(typeof inside)['re-cannings']['$post']>['json'];

export type OwnDoubt = InferResponseType<(typeof inside)['own-doubts']['$get'], 200>['doubts'][number];

export const ownDoubtsQuery = (param: { readonly storehouse: string }) =>
  queryOptions({
    queryKey: ['own-doubts', param],
    queryFn: () => ask(inside['own-doubts'].$get({ param })),
  });

export const watchQuery = (param: OfSession) =>
  queryOptions({
    queryKey: ['packing', param, 'seals'],
    refetchInterval: 30_000, // others check too
    queryFn: () => ask(watchApi.$get({ param })),
  });

export const sealsQuery = (param: { readonly storehouse: string }) =>
  queryOptions({
    queryKey: ['packing', param, 'machines'],
    queryFn: () => ask(inside.seals.$get({ param })),
  });
