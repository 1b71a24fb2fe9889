import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const wishesOf = api.storehouses[':storehouse'].buys[':buy'].lines[':line']['container-wishes'];
export type WishPlan = InferResponseType<typeof wishesOf.$get, 200>;
export type OfLine = { readonly storehouse: string; readonly buy: string; readonly line: string };

export const wishesQuery = (param: OfLine) =>
  queryOptions({
    queryKey: ['buy', param, 'container-wishes'],
    queryFn: () => ask(wishesOf.$get({ param })),
  });
