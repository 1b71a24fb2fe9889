import { queryOptions } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';
import type { House } from '../../ui/house.ts';

export const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };

export type Pantry = InferResponseType<typeof inside.pantries.$get, 200>['pantries'][number];
export type PantryWithCards = InferResponseType<(typeof inside.pantries)[':pantry']['$get'], 200>;
export type CardFacts = InferRequestType<typeof inside.pantries.$post>['json']['card'];
export type Queued = InferResponseType<(typeof inside)['giving-queue']['$get'], 200>['containers'][number];
export type Matching = InferResponseType<(typeof inside)['gift-matchings'][':matching']['$get'], 200>;
export type Manifest = InferResponseType<(typeof inside)['gift-manifests'][':manifest']['$get'], 200>;

export const pantriesQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['giving', 'pantries', param],
    queryFn: () => ask(inside.pantries.$get({ param })),
  });
export const pantryQuery = (param: InHouse & { readonly pantry: string }) =>
  queryOptions({
    queryKey: ['giving', 'pantry', param],
    queryFn: () => ask(inside.pantries[':pantry'].$get({ param })),
  });
export const queueQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['giving', 'queue', param],
    queryFn: () => ask(inside['giving-queue'].$get({ param })),
  });
export const matchingQuery = (param: InHouse & { readonly matching: string }) =>
  queryOptions({
    queryKey: ['giving', 'matching', param],
    queryFn: () => ask(inside['gift-matchings'][':matching'].$get({ param })),
  });
export const manifestsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['giving', 'manifests', param],
    queryFn: () => ask(inside['gift-manifests'].$get({ param })),
  });
export const manifestQuery = (param: InHouse & { readonly manifest: string }) =>
  queryOptions({
    queryKey: ['giving', 'manifest', param],
    queryFn: () => ask(inside['gift-manifests'][':manifest'].$get({ param })),
  });
export const yearQuery = (param: InHouse, year: number) =>
  queryOptions({
    queryKey: ['giving', 'year', param, year],
    queryFn: () => ask(inside['gift-year'].$get({ param, query: { year: String(year) } })),
  });

/** Giving rounds are run by the coordinator and the packing lead; the server says so too. */
export const gives = ({ duties }: House) => duties.includes('coordinator') || duties.includes('packing_lead');

/** Common stock is known to whoever keeps or counts it. */
export const seesStoreRisk = (house: House) =>
  gives(house) || house.duties.includes('treasurer') || house.duties.includes('reviewer');

export const named = (row: { foodEn: string; foodEs: string }, language: string) =>
  language === 'es' ? row.foodEs : row.foodEn;
export const kindNamed = (row: { kindEn: string; kindEs: string }, language: string) =>
  language === 'es' ? row.kindEs : row.kindEn;
