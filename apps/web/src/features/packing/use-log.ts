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
  | { readonly kind: 'loss'; readonly json: InferRequestType<typeof sessionApi.losses.$post>['json'] }
  | { readonly kind: 'pack'; readonly json: PackOpened }
  | { readonly kind: 'shut'; readonly json: PackShut };
type PackOpened = InferRequestType<(typeof sessionApi)['absorber-packs']['$post']>['json'];
type PackShut = InferRequestType<(typeof sessionApi)['absorber-packs'][':pack']['shutting']['$post']>['json'];

/** The log as the book has it, and what this phone has written down and not sent yet. */
export function useLog(session: string) {
  const { storehouse, personId } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, session };
  const place = `sheafbook.log.${storehouse}.${session}.${personId}`; // each person's own
  const waiting = useWaiting<LogAct>(place);
  const reading = useQuery(logQuery(param));
  const hasWaiting = waiting.some(({ refusal }) => refusal === null);
  /** The pack that stands open; one that was opened without a signal has its id only now. Nothing is left to do where none is. */
  const shut = async (json: PackShut) => {
    const { packs } = await ask(sessionApi.log.$get({ param, query: {} }));
    const open = packs.findLast(({ shutAt }) => shutAt === null);
    const pack = open?.id;
    if (pack !== undefined)
      await ask(sessionApi['absorber-packs'][':pack'].shutting.$post({ param: { ...param, pack }, json }));
  };
  const send = async () => {
    const count = await sendWaiting<LogAct>(place, (act, key) => {
      const headers = { 'Idempotency-Key': key };
      if (act.kind === 'pour') return ask(sessionApi.pours.$post({ param, json: act.json }, { headers }));
      if (act.kind === 'loss') return ask(sessionApi.losses.$post({ param, json: act.json }, { headers }));
      if (act.kind === 'pack')
        return ask(sessionApi['absorber-packs'].$post({ param, json: act.json }, { headers }));
      return shut(act.json);
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
