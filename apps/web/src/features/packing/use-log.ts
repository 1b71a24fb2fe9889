import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { InferRequestType } from 'hono/client';
import { ask } from '../../api/client.ts';
import { put, sendWaiting, throwAway, useWaiting } from '../../api/outbox.ts';
import { useSending } from '../../api/use-sending.ts';
import { useHouse } from '../../ui/house.ts';
import { logQuery, ofSession, sessionApi } from './queries.ts';

/** What a phone writes down at the line. */
export type LogAct =
  | { readonly kind: 'pour'; readonly json: InferRequestType<typeof sessionApi.pours.$post>['json'] }
  | { readonly kind: 'loss'; readonly json: InferRequestType<typeof sessionApi.losses.$post>['json'] };

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
  useSending(place, hasWaiting, send);
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
