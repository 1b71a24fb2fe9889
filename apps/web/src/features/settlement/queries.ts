import { queryOptions } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const sessionApi = api.storehouses[':storehouse']['packing-sessions'][':session'];
export type OfSession = { readonly storehouse: string; readonly session: string };
export type SettlementBody = InferResponseType<(typeof sessionApi)['settlement']['$get'], 200>;
export type PreviewBody = InferResponseType<(typeof sessionApi)['settlement-previews']['$post'], 200>;
export type Wish = InferRequestType<(typeof sessionApi)['settlement-previews']['$post']>['json'];
export type OwnCostsBody = InferResponseType<(typeof sessionApi)['own-costs']['$get'], 200>;

export const settlementQuery = (param: OfSession) =>
  queryOptions({
    queryKey: ['packing', param, 'settlement'],
    queryFn: () => ask(sessionApi.settlement.$get({ param })),
  });

export const ownCostsQuery = (param: OfSession) =>
  queryOptions({
    queryKey: ['packing', param, 'own-costs'],
    queryFn: () => ask(sessionApi['own-costs'].$get({ param })),
  });
