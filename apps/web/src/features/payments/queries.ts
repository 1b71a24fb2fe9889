import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

const inside = api.storehouses[':storehouse'];
const owed = inside['suppliers-owed'];
export type SuppliersOwed = Exclude<InferResponseType<typeof owed.$get, 200>, string>;
export type SupplierStanding = SuppliersOwed['suppliers'][number];

/** Every supplier and carrier, with what was billed, credited and paid. */
export const suppliersOwedQuery = (param: { readonly storehouse: string }) =>
  queryOptions({
    queryKey: ['books', param, 'suppliers-owed'],
    queryFn: async () => (await ask(owed.$get({ param, query: {} }))) as SuppliersOwed,
  });
