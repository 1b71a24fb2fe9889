import { queryOptions } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import type { Food } from '../buy/run-queries.ts';

export type { Food };
export const foodsOf = api.storehouses[':storehouse'].foods;
type InHouse = { readonly storehouse: string };

/** Every food, those taken off the lists too. */
export const allFoodsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['foods', param, 'all'],
    queryFn: async () => (await ask(foodsOf.$get({ param, query: { limit: 'all', retired: 'all' } }))).foods,
  });

export const foodQuery = (param: InHouse & { readonly food: string }) =>
  queryOptions({ queryKey: ['foods', param], queryFn: () => ask(foodsOf[':food'].$get({ param })) });
