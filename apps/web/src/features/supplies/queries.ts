import { queryOptions } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

const house = api.storehouses[':storehouse'];
export const suppliesApi = house.supplies;
export const purchasesApi = house['supply-purchases'];
const sessionApi = house['packing-sessions'][':session'];

type Body<Call extends { $get: unknown }> = Exclude<InferResponseType<Call['$get'], 200>, string>;
export type Supply = Body<typeof suppliesApi>['supplies'][number];
export type ShoppingBody = Body<(typeof sessionApi)['supplies']>;
export type ShoppingLine = ShoppingBody['lines'][number];
export type Purchase = InferRequestType<typeof purchasesApi.$post>['json'];

export const suppliesQuery = (param: { readonly storehouse: string }) =>
  queryOptions({
    queryKey: ['supplies', param],
    queryFn: () => ask(suppliesApi.$get({ param, query: {} })),
  });

/** A shop has no signal to spare: what was read stays readable for the day. */
export const shoppingQuery = (param: { readonly storehouse: string; readonly session: string }) =>
  queryOptions({
    gcTime: 86_400_000,
    queryKey: ['packing', param, 'supplies'],
    queryFn: () => ask(sessionApi.supplies.$get({ param })),
  });
