import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };

export type Scale = InferResponseType<typeof inside.scales.$get, 200>['scales'][number];

export type Thermometer = InferResponseType<typeof inside.thermometers.$get, 200>['thermometers'][number];
export type ThermometerCheck = InferResponseType<
  (typeof inside.equipment)[':item']['thermometer-checks']['$get'],
  200
>['checks'][number];

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

export const thermometersQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['equipment', 'thermometers', param],
    queryFn: () => ask(inside.thermometers.$get({ param })),
  });

export const thermometerChecksQuery = (param: InHouse & { readonly item: string }) =>
  queryOptions({
    queryKey: ['equipment', 'thermometer-checks', param],
    queryFn: () => ask(inside.equipment[':item']['thermometer-checks'].$get({ param })),
  });
