import { useQuery, useQueryClient } from '@tanstack/react-query';
import { put, putRight, sendAgain, sendWaiting, throwAway, useWaiting } from '../../api/outbox.ts';
import { useSending } from '../../api/use-sending.ts';
import { useHouse } from '../../ui/house.ts';
import { linePlace } from './line-place.ts';
import type { LogAct } from './log-act.ts';
import { logQuery, ofSession } from './queries.ts';
import { sendLogAct } from './send-act.ts';
import { isHeld } from './waiting-bags.ts';

/** What this phone has written down on a packing day and not sent yet, one after the other. */
export function useLogQueue(session: string) {
  const house = useHouse();
  const { storehouse } = house;
  const queries = useQueryClient();
  const param = { storehouse, session };
  const place = linePlace(house, session);
  const waiting = useWaiting<LogAct>(place);
  const hasWaiting = waiting.some(({ refusal }) => refusal === null);
  const send = async () => {
    const count = await sendWaiting<LogAct>(
      place,
      (act, key) => sendLogAct({ place, param, queries }, act, key),
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
    /** With whatever takes it back. */
    drop(id: string): void {
      for (const { id: other, act } of waiting)
        if (act.kind === 'undo' && act.entry === id) throwAway(place, other);
      throwAway(place, id);
    },
  };
}
export type LogQueue = ReturnType<typeof useLogQueue>;

/** The log as the book has it, with what waits. */
export function useLog(session: string) {
  const queue = useLogQueue(session);
  return { ...queue, reading: useQuery(logQuery(queue.param)) };
}
export type Log = ReturnType<typeof useLog>;
