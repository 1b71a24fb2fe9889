import { queryOptions } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import type { Bag, Delivery } from './landing-body.ts';

const inside = api.storehouses[':storehouse'];
export type OfBuy = { readonly storehouse: string; readonly buy: string };
/** A lorry park has no signal to spare: what was read stays readable for the day. */
const kept = { gcTime: 86_400_000 } as const;

export const landingQuery = (param: OfBuy) =>
  queryOptions({
    ...kept,
    queryKey: ['buy', param, 'landing'],
    queryFn: () => ask(inside.buys[':buy'].landing.$get({ param })),
  });

export const deliveriesQuery = (param: OfBuy) =>
  queryOptions({ ...kept, queryKey: ['buy', param, 'deliveries'], queryFn: () => allDeliveries(param) });

export const bagsQuery = (param: OfBuy) =>
  queryOptions({ ...kept, queryKey: ['buy', param, 'bags'], queryFn: () => allBags(param) });

export const holdsQuery = (param: OfBuy) =>
  queryOptions({
    ...kept,
    queryKey: ['buy', param, 'holds'],
    queryFn: () =>
      ask(
        inside.holds.$get({
          param: { storehouse: param.storehouse },
          query: { open: 'true', buyId: param.buy, limit: '200' },
        }),
      ),
  });

async function allDeliveries(param: OfBuy): Promise<Delivery[]> {
  const found: Delivery[] = [];
  for (let after: string | null | undefined; after !== null; ) {
    const query = { limit: '200', ...(after ? { after } : {}) };
    const page = await ask(inside.buys[':buy'].deliveries.$get({ param, query }));
    found.push(...page.deliveries);
    after = page.next;
  }
  return found;
}

async function allBags(param: OfBuy): Promise<Bag[]> {
  const found: Bag[] = [];
  for (let after: string | null | undefined; after !== null; ) {
    const query = { limit: '200', ...(after ? { after } : {}) };
    const page = await ask(inside.buys[':buy'].bags.$get({ param, query }));
    found.push(...page.bags);
    after = page.next;
  }
  return found;
}
