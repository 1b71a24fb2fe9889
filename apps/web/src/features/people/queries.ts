import { queryOptions } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';

const { duties } = api.storehouses[':storehouse'];

/** Who held which duty from when to when, and until when it is meant to be held. */
export const dutiesQuery = (param: { readonly storehouse: string }) =>
  queryOptions({
    queryKey: ['duties', param.storehouse],
    queryFn: () => ask(duties.$get({ param, query: { limit: 'all' } })),
  });
