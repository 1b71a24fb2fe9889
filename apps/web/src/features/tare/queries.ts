import { queryOptions } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const taresApi = api.storehouses[':storehouse']['container-tares'];
export type Tare = InferResponseType<typeof taresApi.$get, 200>['tares'][number];
/** Ten empties, as a phone writes them down. */
export type TareWeighed = InferRequestType<typeof taresApi.$post>['json'];

/** A hall has no signal to spare: what was read stays readable for the day. */
export const taresQuery = (param: { readonly storehouse: string }) =>
  queryOptions({
    gcTime: 86_400_000,
    queryKey: ['container-tares', param],
    queryFn: () => ask(taresApi.$get({ param })),
  });
