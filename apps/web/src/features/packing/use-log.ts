import { useQuery, useQueryClient } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import { put, putRight, sendAgain, sendWaiting, throwAway, useWaiting } from '../../api/outbox.ts';
import { useSending } from '../../api/use-sending.ts';
import { useHouse } from '../../ui/house.ts';
import { taresApi, taresQuery } from '../tare/queries.ts';
import { linePlace } from './line-place.ts';
import type { LogAct, PackShut } from './log-act.ts';
import { type LogBody, logQuery, ofSession, sessionApi } from './queries.ts';
import { isHeld } from './waiting-bags.ts';

const checksApi = api.storehouses[':storehouse']['seal-checks'];

/** What this phone has written down at the line and not sent yet: pours and checks of seals, one after the other. */
export function useLogQueue(session: string) {
  const house = useHouse();
  const { storehouse } = house;
  const queries = useQueryClient();
  const param = { storehouse, session };
  const place = linePlace(house, session);
  const waiting = useWaiting<LogAct>(place);
  const hasWaiting = waiting.some(({ refusal }) => refusal === null);
  /** The pack that stands open; one that was opened without a signal has its id only now. Nothing is left to do where none is. */
  const shut = async (json: PackShut) => {
    const { packs } = await ask(sessionApi.log.$get({ param, query: {} }));
    const open = packs.findLast(({ shutAt }) => shutAt === null);
    const pack = open?.id;
    if (pack !== undefined)
      await ask(sessionApi['absorber-packs'][':pack'].shutting.$post({ param: { ...param, pack }, json }));
  };
  /** Its answer is the log: shown at once, so that no bag leaves the line between its sending and the next reading. */
  const shown = async (answer: Promise<LogBody>) => {
    queries.setQueryData(logQuery(param).queryKey, await answer);
  };
  const send = async () => {
    const count = await sendWaiting<LogAct>(
      place,
      async (act, key) => {
        const headers = { 'Idempotency-Key': key };
        if (act.kind === 'bring') return shown(ask(sessionApi.bags.$post({ param, json: act.json })));
        if (act.kind === 'left')
          return shown(ask(sessionApi.left.$put({ param, json: act.json }, { headers })));
        if (act.kind === 'pour') return ask(sessionApi.pours.$post({ param, json: act.json }, { headers }));
        if (act.kind === 'loss') return ask(sessionApi.losses.$post({ param, json: act.json }, { headers }));
        if (act.kind === 'pack')
          return ask(sessionApi['absorber-packs'].$post({ param, json: act.json }, { headers }));
        if (act.kind === 'queue') return ask(sessionApi.queues.$post({ param, json: act.json }, { headers }));
        if (act.kind === 'check')
          return ask(checksApi.$post({ param: { storehouse }, json: act.json }, { headers }));
        if (act.kind === 'tare') {
          const tares = await ask(taresApi.$post({ param: { storehouse }, json: act.json }, { headers }));
          return queries.setQueryData(taresQuery({ storehouse }).queryKey, tares);
        }
        return shut(act.json);
      },
      isHeld,
    );
    if (count > 0) await queries.invalidateQueries({ queryKey: ofSession(param) });
  };
  useSending(place, hasWaiting, send);
  return {
    param,
    waiting,
    write(act: LogAct): void {
      put(place, act);
      void send();
    },
    /** What was refused, once more as it is. */
    resend(id: string): void {
      sendAgain(place, id);
      void send();
    },
    /** What was refused, said otherwise. */
    again(id: string, act: LogAct): void {
      putRight(place, id, act);
      void send();
    },
    drop: (id: string) => throwAway(place, id),
  };
}
export type LogQueue = ReturnType<typeof useLogQueue>;

/** The log as the book has it, with what waits. */
export function useLog(session: string) {
  const queue = useLogQueue(session);
  return { ...queue, reading: useQuery(logQuery(queue.param)) };
}
export type Log = ReturnType<typeof useLog>;
