import { useQueryClient } from '@tanstack/react-query';
import { ask } from '../../api/client.ts';
import { put, sendAgain, sendWaiting, throwAway, useWaiting } from '../../api/outbox.ts';
import { useSending } from '../../api/use-sending.ts';
import { useHouse } from '../../ui/house.ts';
import { boughtPlace } from './bought-place.ts';
import { type Purchase, purchasesApi } from './queries.ts';

/** What was bought where there may be no signal: kept on this phone first, sent once, and said when it was refused. */
export function usePurchases() {
  const house = useHouse();
  const { storehouse } = house;
  const queries = useQueryClient();
  const place = boughtPlace(house);
  const waiting = useWaiting<Purchase>(place);
  const hasWaiting = waiting.some(({ refusal }) => refusal === null);
  const send = async () => {
    const count = await sendWaiting<Purchase>(place, (json, key) =>
      ask(purchasesApi.$post({ param: { storehouse }, json }, { headers: { 'Idempotency-Key': key } })),
    );
    if (count === 0) return;
    await queries.invalidateQueries({ queryKey: ['supplies'] });
    await queries.invalidateQueries({ queryKey: ['packing'] });
  };
  useSending(place, hasWaiting, send);
  return {
    waiting,
    write(purchase: Purchase): void {
      put(place, purchase);
      void send();
    },
    again(id: string): void {
      sendAgain(place, id);
      void send();
    },
    drop: (id: string) => throwAway(place, id),
  };
}
