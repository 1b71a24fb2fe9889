import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { InferRequestType } from 'hono/client';
import { useEffect } from 'react';
import { ask } from '../../api/client.ts';
import { put, sendWaiting, throwAway, useWaiting } from '../../api/outbox.ts';
import { useHouse } from '../../ui/house.ts';
import { logQuery, ofSession, sessionApi } from './queries.ts';

/** What a phone writes down at the line. */
export type LogAct =
  | { readonly kind: 'pour'; readonly json: InferRequestType<typeof sessionApi.pours.$post>['json'] }
  | { readonly kind: 'loss'; readonly json: InferRequestType<typeof sessionApi.losses.$post>['json'] };

const AGAIN_MS = 8_000;

/** The log as the book has it, and what this phone has written down and not sent yet. */
export function useLog(session: string) {
  const { storehouse, personId } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, session };
  const place = `sheafbook.log.${storehouse}.${session}.${personId}`; // each person's own
  const waiting = useWaiting<LogAct>(place);
  const reading = useQuery(logQuery(param));
  const hasWaiting = waiting.some(({ refusal }) => refusal === null);
  const send = async () => {
    const count = await sendWaiting<LogAct>(place, (act, key) => {
      const headers = { 'Idempotency-Key': key };
      return act.kind === 'pour'
        ? ask(sessionApi.pours.$post({ param, json: act.json }, { headers }))
        : ask(sessionApi.losses.$post({ param, json: act.json }, { headers }));
    });
    if (count > 0) await queries.invalidateQueries({ queryKey: ofSession(param) });
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
    param,
    reading,
    waiting,
    write(act: LogAct): void {
      put(place, act);
      void send();
    },
    /** What was refused, said otherwise. */
    again(id: string, act: LogAct): void {
      throwAway(place, id);
      put(place, act);
      void send();
    },
    drop: (id: string) => throwAway(place, id),
  };
}
export type Log = ReturnType<typeof useLog>;
