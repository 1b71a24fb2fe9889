import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };

/** What a trial showed, file by file and row by row. */
export type Trial = InferResponseType<(typeof inside)['import-trials']['$post'], 200>;
export type TrialFile = Trial['files'][number];
export type TrialRow = TrialFile['rows'][number];

export const importsQuery = (param: InHouse) =>
  queryOptions({
    queryKey: ['imports', param],
    queryFn: () => ask(inside.imports.$get({ param, query: { limit: 'all' } })),
  });

/** What taking an import back would do, and what leans on it. */
export const undoingQuery = (param: InHouse & { readonly import: string }) =>
  queryOptions({
    queryKey: ['imports', 'undoing', param],
    queryFn: () => ask(inside.imports[':import'].undoing.$get({ param })),
  });
