import { queryOptions } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import { all, type Food, page } from '../buy/run-queries.ts';

export type { Food };
export const foodsOf = api.storehouses[':storehouse'].foods;
type InHouse = { readonly storehouse: string };

/** Every food, those taken off the lists too. */
export const allFoodsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['foods', param, 'all'],
    queryFn: () =>
      all(async (after) => {
        const answer = await ask(foodsOf.$get({ param, query: { ...page(after), retired: 'all' } }));
        return { rows: answer.foods, next: answer.next };
      }),
  });

export const foodQuery = (param: InHouse & { readonly food: string }) =>
  queryOptions({ queryKey: ['foods', param], queryFn: () => ask(foodsOf[':food'].$get({ param })) });
