import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

const ways = api.storehouses[':storehouse']['ways-to-keep'];

export type WaysAnswer = InferResponseType<typeof ways.$get, 200>;
export type Way = NonNullable<WaysAnswer['ways']>[number];
type Wish = { storehouse: string; food: string; grams: number; moistureTenths: number | null };

export const waysQuery = ({ storehouse, food, grams, moistureTenths }: Wish) =>
  queryOptions({
    queryKey: ['ways-to-keep', storehouse, food, grams, moistureTenths],
    queryFn: () => {
      const measured = moistureTenths === null ? {} : { moistureTenths: String(moistureTenths) };
      return ask(ways.$get({ param: { storehouse }, query: { food, grams: String(grams), ...measured } }));
    },
  });
