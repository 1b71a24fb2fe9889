import { queryOptions } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import type { Bag, Delivery } from './landing-body.ts';

const inside = api.storehouses[':storehouse'];
export type OfBuy = { readonly storehouse: string; readonly buy: string };
/** A lorry park has no signal to spare: what was read stays readable for the day. */
const kept = { gcTime: 86_400_000 } as const;

export const landingQuery = (param: OfBuy) =>
  queryOptions({
    ...kept,
    queryKey: ['buy', param, 'landing'],
    queryFn: () => ask(inside.buys[':buy'].landing.$get({ param })),
  });

export const deliveriesQuery = (param: OfBuy) =>
  queryOptions({
    ...kept,
    queryKey: ['buy', param, 'deliveries'],
    queryFn: async (): Promise<Delivery[]> =>
      (await ask(inside.buys[':buy'].deliveries.$get({ param, query: { limit: 'all' } }))).deliveries,
  });

export const bagsQuery = (param: OfBuy) =>
  queryOptions({
    ...kept,
    queryKey: ['buy', param, 'bags'],
    queryFn: async (): Promise<Bag[]> =>
      (await ask(inside.buys[':buy'].bags.$get({ param, query: { limit: 'all' } }))).bags,
  });

export const holdsQuery = (param: OfBuy) =>
  queryOptions({
    ...kept,
    queryKey: ['buy', param, 'holds'],
    queryFn: () =>
      ask(
        inside.holds.$get({
          param: { storehouse: param.storehouse },
          query: { open: 'true', buyId: param.buy, limit: 'all' },
        }),
      ),
  });
