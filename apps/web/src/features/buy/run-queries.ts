import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

const inside = api.storehouses[':storehouse'];
const buys = inside.buys[':buy'];
type InHouse = { readonly storehouse: string };
type OfBuy = InHouse & { readonly buy: string };

export type Next = InferResponseType<typeof buys.next.$get, 200>;
export type Missing = Next['missing'][number];
export type Comparison = InferResponseType<typeof buys.comparison.$get, 200>;
export type ComparedLine = Comparison['lines'][number];
export type Fixing = InferResponseType<typeof buys.fixing.$get, 200>;
export type Outlook = InferResponseType<typeof buys.outlook.$get, 200>;
export type NextItem = Exclude<
  InferResponseType<(typeof inside)['next-steps']['$get'], 200>,
  string
>['items'][number];
export type HouseholdPledge = Exclude<
  InferResponseType<(typeof buys)['household-pledges']['$get'], 200>,
  string
>['pledges'][number];
export type Household = Exclude<
  InferResponseType<typeof inside.households.$get, 200>,
  string
>['households'][number];
export type Supplier = Exclude<
  InferResponseType<typeof inside.suppliers.$get, 200>,
  string
>['suppliers'][number];
export type Food = Exclude<InferResponseType<typeof inside.foods.$get, 200>, string>['foods'][number];
export type Order = InferResponseType<typeof buys.orders.$get, 200>['orders'][number];

export const nextQuery = (param: OfBuy) =>
  queryOptions({ queryKey: ['buy', param, 'next'], queryFn: () => ask(buys.next.$get({ param })) });

export const nextStepsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['next-steps', param],
    queryFn: () => ask(inside['next-steps'].$get({ param, query: {} })),
  });

export const householdPledgesQuery = (param: OfBuy) =>
  queryOptions({
    queryKey: ['buy', param, 'household-pledges'],
    queryFn: async () =>
      (await ask(buys['household-pledges'].$get({ param, query: { limit: 'all' } }))).pledges,
  });

export const householdsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['households', param],
    queryFn: async () => (await ask(inside.households.$get({ param, query: { limit: 'all' } }))).households,
  });

export const suppliersQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['suppliers', param],
    queryFn: async () => (await ask(inside.suppliers.$get({ param, query: { limit: 'all' } }))).suppliers,
  });

export const foodsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['foods', param],
    staleTime: 300_000,
    queryFn: async () => (await ask(inside.foods.$get({ param, query: { limit: 'all' } }))).foods,
  });

export const comparisonQuery = (param: OfBuy, grams: number | null) =>
  queryOptions({
    queryKey: ['buy', param, 'comparison', grams],
    queryFn: () =>
      ask(buys.comparison.$get({ param, query: grams === null ? {} : { grams: String(grams) } })),
  });

export const outlookQuery = (param: OfBuy) =>
  queryOptions({ queryKey: ['buy', param, 'outlook'], queryFn: () => ask(buys.outlook.$get({ param })) });

export const fixingQuery = (param: OfBuy) =>
  queryOptions({ queryKey: ['buy', param, 'fixing'], queryFn: () => ask(buys.fixing.$get({ param })) });

export const depositsQuery = (param: OfBuy) =>
  queryOptions({ queryKey: ['buy', param, 'deposits'], queryFn: () => ask(buys.deposits.$get({ param })) });

export const consentsQuery = (param: OfBuy) =>
  queryOptions({
    queryKey: ['buy', param, 'consents'],
    queryFn: () => ask(buys['order-consents'].$get({ param })),
  });

export const ordersQuery = (param: OfBuy) =>
  queryOptions({ queryKey: ['buy', param, 'orders'], queryFn: () => ask(buys.orders.$get({ param })) });

export const withdrawalsQuery = (param: OfBuy) =>
  queryOptions({
    queryKey: ['buy', param, 'withdrawals'],
    queryFn: () => ask(buys.withdrawals.$get({ param })),
  });

export const pledgeEffectQuery = (param: OfBuy) =>
  queryOptions({
    queryKey: ['buy', param, 'pledge-effect'],
    queryFn: () => ask(buys['pledge-effect'].$get({ param })),
  });
