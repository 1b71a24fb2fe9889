import { queryOptions } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';

const inside = api.storehouses[':storehouse'];
type OfBuy = { readonly storehouse: string; readonly buy: string };

/** What waits and until when it may be fetched; null before the buy is shared out. */
export const uncollectedQuery = (param: OfBuy, isOpen: boolean) =>
  queryOptions({
    queryKey: ['buy', param, 'uncollected', isOpen],
    queryFn: async () => (isOpen ? await ask(inside.buys[':buy'].uncollected.$get({ param })) : null),
  });
