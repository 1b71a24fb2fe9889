import { type QueryClient, queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };
export type OfItem = InHouse & { readonly item: string };

export type Item = InferResponseType<(typeof inside.equipment)[':item']['$get'], 200>;
export type Unit = Item['units'][number];
export type Desk = InferResponseType<(typeof inside)['equipment-desk']['$get'], 200>;
export type Booking = Desk['bookings'][number];
export type Loan = InferResponseType<(typeof inside.loans)[':loan']['$get'], 200>;

/** Everything of equipment is read anew after anything of it was done. */
export const readAnew = (queries: QueryClient) =>
  Promise.all([
    queries.invalidateQueries({ queryKey: ['equipment'] }),
    queries.invalidateQueries({ queryKey: ['next-steps'] }),
  ]);

export const itemsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['equipment', 'all', param],
    queryFn: () => ask(inside.equipment.$get({ param, query: { limit: 'all' } })),
  });
export const itemQuery = (param: OfItem) =>
  queryOptions({
    queryKey: ['equipment', 'one', param],
    queryFn: () => ask(inside.equipment[':item'].$get({ param })),
  });
export const freeTimesQuery = (param: OfItem, leastMinutes: number) =>
  queryOptions({
    queryKey: ['equipment', 'free', param, leastMinutes],
    queryFn: () =>
      ask(
        inside.equipment[':item']['free-times'].$get({
          param,
          query: { leastMinutes: String(leastMinutes), days: '14' },
        }),
      ),
  });
/** The times of a span of days at which a thing can be had for so long. */
export const freeForQuery = (param: OfItem, query: { fromDay: string; days: string; leastMinutes: string }) =>
  queryOptions({
    queryKey: ['equipment', 'free-for', param, query],
    queryFn: () => ask(inside.equipment[':item']['free-times'].$get({ param, query })),
  });
export const itemLoansQuery = (param: OfItem) =>
  queryOptions({
    queryKey: ['equipment', 'loans-of', param],
    queryFn: () => ask(inside.equipment[':item'].loans.$get({ param })),
  });
export const maintenanceQuery = (param: OfItem) =>
  queryOptions({
    queryKey: ['equipment', 'maintenance', param],
    queryFn: () => ask(inside.equipment[':item'].maintenance.$get({ param })),
  });
export const ownBookingsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['equipment', 'own-bookings', param],
    queryFn: () => ask(inside.bookings.$get({ param })),
  });
export const ownLoansQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['equipment', 'own-loans', param],
    queryFn: () => ask(inside.loans.$get({ param, query: { state: 'out' } })),
  });
export const itemBookingsQuery = (param: OfItem) =>
  queryOptions({
    queryKey: ['equipment', 'bookings-of', param],
    queryFn: () => ask(inside.equipment[':item'].bookings.$get({ param })),
  });
export const loanQuery = (param: InHouse & { readonly loan: string }) =>
  queryOptions({
    queryKey: ['equipment', 'loan', param],
    queryFn: () => ask(inside.loans[':loan'].$get({ param })),
  });
export const deskQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['equipment', 'desk', param],
    queryFn: () => ask(inside['equipment-desk'].$get({ param })),
  });
export type ItemUse = InferResponseType<(typeof inside)['equipment-use']['$get'], 200>['items'][number];
export const yearOfUseQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['equipment', 'use', param],
    queryFn: () => ask(inside['equipment-use'].$get({ param })),
  });
