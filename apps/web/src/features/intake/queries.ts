import { queryOptions } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';
import type { Whose } from '../place/queries.ts';

export const intakes = api.storehouses[':storehouse'].intakes;
export type Intakes = InferResponseType<typeof intakes.$get, 200>;
export type TakeIn = InferRequestType<typeof intakes.$post>['json'];

export const intakesQuery = (param: { readonly storehouse: string }, of: Whose) =>
  queryOptions({
    queryKey: ['intakes', param, of],
    queryFn: () => ask(intakes.$get({ param, query: { of } })),
  });
