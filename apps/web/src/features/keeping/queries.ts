import { queryOptions } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const inside = api.storehouses[':storehouse'];
const one = inside.containers[':container'].keeping;

export type KeepingSheet = InferResponseType<typeof one.$get, 200>;
export type Move = InferRequestType<(typeof inside)['container-moves']['$post']>['json'];

export const keepingQuery = (param: { readonly storehouse: string; readonly container: string }) =>
  queryOptions({ queryKey: ['container', 'keeping', param], queryFn: () => ask(one.$get({ param })) });
