import { useQueryClient } from '@tanstack/react-query';
import { ask } from '../../api/client.ts';
import { put, sendWaiting, throwAway, useWaiting } from '../../api/outbox.ts';
import { useSending } from '../../api/use-sending.ts';
import { useHouse } from '../../ui/house.ts';
import { type Purchase, purchasesApi } from './queries.ts';

/** What was bought where there may be no signal: kept on this phone first, sent once, and said when it was refused. */
export function usePurchases() {
  const { storehouse, personId } = useHouse();
  const queries = useQueryClient();
  const place = `sheafbook.bought.${storehouse}.${personId}`;
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
    drop: (id: string) => throwAway(place, id),
  };
}
