import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

const { treatments } = api.storehouses[':storehouse'];

export type TreatmentBook = InferResponseType<typeof treatments.$get, 200>;
export type Treatment = TreatmentBook['treatments'][number];

export const treatmentsQuery = (param: { readonly storehouse: string }) =>
  queryOptions({
    queryKey: ['treatments', param],
    staleTime: 300_000,
    queryFn: () => ask(treatments.$get({ param })),
  });
