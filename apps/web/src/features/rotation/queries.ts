import { queryOptions } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';

export const inside = api.storehouses[':storehouse'];
type InHouse = { readonly storehouse: string };

export type Rotation = InferResponseType<typeof inside.rotation.$get, 200>;
export type Queued = Rotation['queue'][number];
export type Kitchen = InferResponseType<typeof inside.kitchen.$get, 200>;
export type WhatIf = 'none' | 'faster' | 'repack' | 'give' | `to ${string}`;

/** What is asked beside how things are. */
function queryOf(whatIf: WhatIf): Record<string, string> {
  if (whatIf === 'faster') return { eatPercent: '150' };
  if (whatIf === 'repack') return { repack: 'true' };
  if (whatIf === 'give') return { give: 'true' };
  return whatIf === 'none' ? {} : { moveTo: whatIf.slice(3) };
}

type Asked = { readonly whatIf?: WhatIf; readonly queue?: 'first' | 'whole' };

/** The beginning of the queue, or the whole of it. */
export const rotationQuery = (param: InHouse, { whatIf = 'none', queue = 'first' }: Asked = {}) =>
  queryOptions({
    queryKey: ['rotation', param, whatIf, queue],
    queryFn: () => ask(inside.rotation.$get({ param, query: { ...queryOf(whatIf), queue } })),
    placeholderData: (before: Rotation | undefined) => before, // the picture stands while the what-if is reckoned
  });

/** The same of common stock, of which nobody eats. */
export const storeRotationQuery = (param: InHouse, whatIf: WhatIf = 'none') =>
  queryOptions({
    queryKey: ['rotation', param, 'store', whatIf],
    queryFn: () => ask(inside.rotation.store.$get({ param, query: { ...queryOf(whatIf), queue: 'whole' } })),
    placeholderData: (before: Rotation | undefined) => before,
  });

export const kitchenQuery = (param: InHouse) =>
  queryOptions({ queryKey: ['kitchen', param], queryFn: () => ask(inside.kitchen.$get({ param })) });
