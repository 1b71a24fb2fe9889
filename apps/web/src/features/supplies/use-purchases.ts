import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { ask } from '../../api/client.ts';
import { put, sendWaiting, throwAway, useWaiting } from '../../api/outbox.ts';
import { useHouse } from '../../ui/house.ts';
import { type Purchase, purchasesApi } from './queries.ts';

const AGAIN_MS = 8_000;

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
  // biome-ignore lint/correctness/useExhaustiveDependencies: what is sent is read from the browser, not from this render
  useEffect(() => {
    const go = () => void send();
    if (hasWaiting) go();
    const timer = hasWaiting ? setInterval(go, AGAIN_MS) : undefined;
    addEventListener('online', go);
    return () => {
      clearInterval(timer);
      removeEventListener('online', go);
    };
  }, [place, hasWaiting]);
  return {
    waiting,
    write(purchase: Purchase): void {
      put(place, purchase);
      void send();
    },
    drop: (id: string) => throwAway(place, id),
  };
}
