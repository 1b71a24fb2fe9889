import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const workOf = api.storehouses[':storehouse']['background-work'];

export type Troubled = InferResponseType<typeof workOf.$get, 200>['works'][number];

export const workQuery = (storehouse: string) =>
  queryOptions({
    queryKey: ['background-work', storehouse],
    queryFn: () => ask(workOf.$get({ param: { storehouse } })),
  });
