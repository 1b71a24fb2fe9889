import { queryOptions } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';
import type { Whose } from '../place/queries.ts';

export const lidsApi = api.storehouses[':storehouse'].lids;

type LidsRead = InferResponseType<typeof lidsApi.$get, 200>;
export type Lid = LidsRead['lids'][number];
export type Answers = InferRequestType<typeof lidsApi.answers.$post>['json'];
export type Closings = InferRequestType<typeof lidsApi.closings.$post>['json'];

export const lidsQuery = (param: { readonly storehouse: string }, of: Whose) =>
  queryOptions({
    queryKey: ['lids', param, of],
    queryFn: () => ask(lidsApi.$get({ param, query: { of } })),
  });
