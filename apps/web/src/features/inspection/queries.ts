import type { Finding, Outcome } from '@sheafbook/keeping';
import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';
import type { Whose } from '../place/queries.ts';

export const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };

export type ToInspect = InferResponseType<typeof inside.inspections.due.$get, 200>;
export type Rules = InferResponseType<(typeof inside)['inspection-rules']['$get'], 200>;
export type Looks = InferResponseType<(typeof inside.containers)[':container']['inspections']['$get'], 200>;

export type How = 'outside' | 'opened';
/** What somebody saw, before it is judged. */
export type Found = {
  readonly how: How;
  readonly findings: readonly Finding[];
  readonly kernels: { readonly damaged: number; readonly sampleGrams: number } | null;
};

/** What was answered so far: a look can take a while, and hands are not always clean. */
export type Look = {
  readonly how: How | null;
  readonly ticked: readonly Finding[];
  readonly damaged: string;
  readonly sample: string;
  readonly found: Found | null;
  readonly outcome: Outcome | null;
  readonly note: string;
  readonly isMovedOut: boolean;
};

export const toInspectQuery = (param: InHouse, of: Whose) =>
  queryOptions({
    queryKey: ['inspections', param, of],
    queryFn: () => ask(inside.inspections.due.$get({ param, query: { of } })),
  });

export const rulesQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['inspection-rules'],
    staleTime: Number.POSITIVE_INFINITY,
    queryFn: () => ask(inside['inspection-rules'].$get({ param })),
  });

export const looksQuery = (param: InHouse & { readonly container: string }) =>
  queryOptions({
    queryKey: ['inspections', 'of', param],
    queryFn: () => ask(inside.containers[':container'].inspections.$get({ param })),
  });
