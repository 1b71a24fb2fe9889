import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };

export type Traced = InferResponseType<typeof inside.trace.$get, 200>;
export type Way = NonNullable<Traced['way']>;
export type Thing = Way['things'][number];

export const KINDS = [
  'bag',
  'container',
  'lot',
  'mark',
  'delivery',
  'session',
  'manifest',
  'kitchen',
  'place',
] as const;
export type Kind = (typeof KINDS)[number];

/** What the address asks for: a code as it was typed, or one thing by its kind and id; in a recall all of it. */
export type Asked = {
  readonly code?: string | undefined;
  readonly kind?: Kind | undefined;
  readonly id?: string | undefined;
  readonly task?: 'recall' | undefined;
};

export const traceQuery = (param: InHouse, { code, kind, id, task }: Asked) => {
  const query = {
    ...(id !== undefined && kind !== undefined ? { kind, id } : { code: code ?? '' }),
    ...(task === undefined ? {} : { task }),
  };
  return queryOptions({
    queryKey: ['trace', param, query],
    queryFn: () => ask(inside.trace.$get({ param, query })),
    enabled: id !== undefined || (code ?? '').trim() !== '',
    retry: false,
  });
};
