import { queryOptions, useMutation, useQueryClient } from '@tanstack/react-query';
import type { InferRequestType, InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };
type OfHold = InHouse & { readonly hold: string };
const one = inside.holds[':hold'];

export type Hold = InferResponseType<typeof one.$get, 200>;
export type Standing = InferResponseType<typeof one.standing.$get, 200>;
export type OwnPart = InferResponseType<(typeof one)['own-part']['$get'], 200>;
export type HoldWish = InferRequestType<typeof inside.holds.$post>['json'];

export type SlipWish = InferRequestType<typeof one.slips.$post>['json'];

/** What it is on, in the reader's language. */
export const aboutOf = (
  { about, aboutEs }: Pick<Hold, 'about' | 'aboutEs'>,
  { language }: { readonly language: string },
): string => (language === 'es' ? aboutEs : about);

export const holdsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['holds', param],
    queryFn: async () => {
      const found = await ask(inside.holds.$get({ param, query: { limit: 'all' } }));
      return 'holds' in found ? found.holds : [];
    },
  });
export const holdQuery = (param: OfHold) =>
  queryOptions({ queryKey: ['holds', param, 'one'], queryFn: () => ask(one.$get({ param })) });
export const standingQuery = (param: OfHold) =>
  queryOptions({ queryKey: ['holds', param, 'standing'], queryFn: () => ask(one.standing.$get({ param })) });
export const ownPartQuery = (param: OfHold) =>
  queryOptions({ queryKey: ['holds', param, 'own'], queryFn: () => ask(one['own-part'].$get({ param })) });

/** A command about a hold; whatever stands on holds, traces and shelves is read anew after it. */
export function useHoldCommand<Wish, Answer>(send: (wish: Wish) => Promise<Answer>) {
  const queries = useQueryClient();
  return useMutation({
    mutationFn: send,
    onSuccess: () => queries.invalidateQueries(),
  });
}
