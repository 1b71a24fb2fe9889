import type { QueryClient } from '@tanstack/react-query';
import { api, ask } from '../../api/client.ts';
import { changeActs } from '../../api/outbox.ts';
import { taresApi, taresQuery } from '../tare/queries.ts';
import type { LogAct, PackShut } from './log-act.ts';
import { type LogBody, logQuery, type OfSession, sessionApi } from './queries.ts';

const inside = api.storehouses[':storehouse'];

type Sending = { readonly place: string; readonly param: OfSession; readonly queries: QueryClient };

/** Sends what was written down at a line, with the key that makes it count once. */
export async function sendLogAct(to: Sending, act: LogAct, key: string): Promise<unknown> {
  const { param, queries } = to;
  const { storehouse } = param;
  const headers = { 'Idempotency-Key': key };
  switch (act.kind) {
    case 'bring':
      return shown(to, ask(sessionApi.bags.$post({ param, json: act.json })));
    case 'left':
      return shown(to, ask(sessionApi.left.$put({ param, json: act.json }, { headers })));
    case 'pour':
      return pour(to, act.json, key);
    case 'undo': {
      const { entry, reason } = act;
      return ask(
        sessionApi.pours[':entry'].undoing.$post(
          { param: { ...param, entry }, json: { reason } },
          { headers },
        ),
      );
    }
    case 'loss':
      return ask(sessionApi.losses.$post({ param, json: act.json }, { headers }));
    case 'pack':
      return ask(sessionApi['absorber-packs'].$post({ param, json: act.json }, { headers }));
    case 'queue':
      return ask(sessionApi.queues.$post({ param, json: act.json }, { headers }));
    case 'shut':
      return shut(param, act.json);
    case 'check':
      return ask(inside['seal-checks'].$post({ param: { storehouse }, json: act.json }, { headers }));
    case 're-can':
      return ask(inside['re-cannings'].$post({ param: { storehouse }, json: act.json }, { headers }));
    case 'here':
      return ask(
        sessionApi.slots[':slot'].arrival.$put({ param: { ...param, slot: act.slot }, json: act.json }),
      );
    case 'hand':
      return ask(
        sessionApi.hands[':person'].$put({ param: { ...param, person: act.person }, json: act.json }),
      );
    case 'tare': {
      const tares = await ask(taresApi.$post({ param: { storehouse }, json: act.json }, { headers }));
      return queries.setQueryData(taresQuery({ storehouse }).queryKey, tares);
    }
  }
}

/** Its answer is the log: shown at once, so that no bag leaves the line between its sending and the next reading. */
async function shown({ param, queries }: Sending, answer: Promise<LogBody>): Promise<void> {
  queries.setQueryData(logQuery(param).queryKey, await answer);
}

/** What was poured has its entry only now: whatever takes it back and waits behind it is told which. */
async function pour(
  { place, param }: Sending,
  json: Extract<LogAct, { kind: 'pour' }>['json'],
  key: string,
): Promise<void> {
  const headers = { 'Idempotency-Key': key };
  const { entryId } = await ask(sessionApi.pours.$post({ param, json }, { headers }));
  changeActs<LogAct>(place, (act) =>
    act.kind === 'undo' && act.entry === key ? { ...act, entry: entryId } : act,
  );
}

/** The pack that stands open; one that was opened without a signal has its id only now. Nothing is left to do where none is. */
async function shut(param: OfSession, json: PackShut): Promise<void> {
  const { packs } = await ask(sessionApi.log.$get({ param, query: {} }));
  const pack = packs.findLast(({ shutAt }) => shutAt === null)?.id;
  if (pack !== undefined)
    await ask(sessionApi['absorber-packs'][':pack'].shutting.$post({ param: { ...param, pack }, json }));
}
