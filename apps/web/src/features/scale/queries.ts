import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };

export type Scale = InferResponseType<typeof inside.scales.$get, 200>['scales'][number];

/** Beside what else is of equipment, so that it is read anew with it. */
export const scalesQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['equipment', 'scales', param],
    queryFn: () => ask(inside.scales.$get({ param })),
  });

export const scaleChecksQuery = (param: InHouse & { readonly item: string }) =>
  queryOptions({
    queryKey: ['equipment', 'scale-checks', param],
    queryFn: () => ask(inside.equipment[':item']['scale-checks'].$get({ param })),
  });
