import type { Answer } from './app.ts';
import { bodyOf, foodIdsOf } from './buy.ts';
import type { TestHousehold } from './household.ts';
import { kindIdsOf } from './shelf.ts';
import type { TestStorehouse } from './storehouse.ts';

export type StockWish = {
  food?: string;
  kind?: string;
  count?: number;
  gramsEach?: number;
  packedOn?: string;
  treatment?: string | null;
};

export type TestStock = Awaited<ReturnType<typeof stockOf>>;

/** A household's own stock and its kitchen: one No. 10 can with 2,400 g of hard red wheat unless a test says otherwise. */
export async function stockOf(storehouse: TestStorehouse, { caller }: Pick<TestHousehold, 'caller'>) {
  const [foods, kinds] = [await foodIdsOf(storehouse), await kindIdsOf(storehouse)];
  const at = (rest: string) => `${storehouse.path}${rest}`;
  const bringIn = async (wish: StockWish = {}): Promise<{ id: string; code: string }[]> => {
    const { food = 'wheat-hard-red-winter', kind = 'can-no-10', packedOn = '2026-08-01', ...more } = wish;
    const body = {
      ...{ foodId: foods[food], originNote: 'an old shelf', containerKindId: kinds[kind], packedOn },
      ...{ count: 1, gramsEach: 2400, ...more },
    };
    return bodyOf(await caller.post(at('/stock'), body), 201).containers;
  };
  const bringCan = async (wish: StockWish = {}) => {
    const [can] = await bringIn({ ...wish, count: 1 });
    if (!can) throw new Error('one container was asked for');
    return can;
  };
  return {
    bringIn,
    bringCan,
    take: (can: { id: string }, grams?: number, headers?: Record<string, string>): Promise<Answer> =>
      caller.post(at(`/containers/${can.id}/kitchen`), grams === undefined ? {} : { grams }, headers),
    undo: (entryId: string): Promise<Answer> => caller.post(at(`/kitchen/takes/${entryId}/undoing`), {}),
    eat: (lotId: string, grams: number, to = 'eaten'): Promise<Answer> =>
      caller.post(at('/kitchen/uses'), { lotId, grams, to }),
    kitchen: async () => bodyOf(await caller.get(at('/kitchen'))),
    shown: async (can: { id: string }) => bodyOf(await caller.get(at(`/containers/${can.id}`))),
  };
}
