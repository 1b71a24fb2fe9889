import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';
import type { House } from '../../ui/house.ts';

export const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };

export type Place = InferResponseType<typeof inside.places.$get, 200>['places'][number];
export type PlaceRecord = InferResponseType<(typeof inside.places)[':place']['$get'], 200>;
export type LogPreview = InferResponseType<(typeof inside.places)[':place']['log-previews']['$post'], 200>;

export const placesQuery = (param: InHouse) =>
  queryOptions({ queryKey: ['places', 'all', param], queryFn: () => ask(inside.places.$get({ param })) });

export const placeQuery = (param: InHouse & { readonly place: string }) =>
  queryOptions({
    queryKey: ['places', 'one', param],
    queryFn: () => ask(inside.places[':place'].$get({ param })),
  });

export type HotPlaces = InferResponseType<(typeof inside)['hot-places']['$get'], 200>;
export type Whose = 'household' | 'common';
export const hotPlacesQuery = (param: InHouse, of: Whose) =>
  queryOptions({
    queryKey: ['places', 'hot', param, of],
    queryFn: () => ask(inside['hot-places'].$get({ param, query: { of } })),
  });

/** The store's places are kept by whoever keeps its stock; the server says so too. */
export const keepsStore = ({ duties }: House) =>
  duties.includes('coordinator') || duties.includes('packing_lead');
