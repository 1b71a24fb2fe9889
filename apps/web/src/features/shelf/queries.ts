import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };
type Page<Path extends { $get: unknown }> = Exclude<InferResponseType<Path['$get'], 200>, string>;

export type Shelved = Page<typeof inside.containers>['containers'][number];
export type Kind = Page<(typeof inside)['container-kinds']>['containerKinds'][number];
export type OwnBag = InferResponseType<(typeof inside)['own-bags']['$get'], 200>['bags'][number];

/** All of one's own containers, the empty ones too. */
export const containersQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['containers', param],
    queryFn: async (): Promise<Shelved[]> =>
      (await ask(inside.containers.$get({ param, query: { limit: 'all' } }))).containers,
  });

export const kindsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['container-kinds', param],
    staleTime: 300_000,
    queryFn: () => ask(inside['container-kinds'].$get({ param, query: { limit: 'all' } })),
  });

export const ownBagsQuery = (param: InHouse) =>
  queryOptions({ queryKey: ['own-bags', param], queryFn: () => ask(inside['own-bags'].$get({ param })) });

/** Who of the household may not eat what is in a container, and who should take care. */
export const eatersOfQuery = (param: InHouse & { readonly container: string }) =>
  queryOptions({
    queryKey: ['eaters-of', param],
    queryFn: () => ask(inside.containers[':container'].eaters.$get({ param })),
  });

/** What of the cache a change of one's own stock makes old. */
export const OF_STOCK = ['containers', 'container', 'own-bags', 'coverage', 'rotation', 'kitchen'] as const;
