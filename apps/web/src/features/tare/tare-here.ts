import { judgeTare } from '@sheafbook/packing';
import type { Waiting } from '../../api/outbox.ts';
import type { LogAct } from '../packing/log-act.ts';
import type { Tare } from './queries.ts';

/** What ten empties of a kind say, wherever it was written down. */
export type TareSaid = ReturnType<typeof judgeTare>;

/** The last weighing of a kind's ten empties: by this phone, where it waits to be sent, else by the book. */
export function tareHere(
  kindId: string | undefined,
  tares: readonly Tare[],
  waiting: readonly Waiting<LogAct>[],
): TareSaid | undefined {
  const own = waiting.findLast(
    ({ act, refusal }) => refusal === null && act.kind === 'tare' && act.json.containerKindId === kindId,
  );
  if (own?.act.kind === 'tare') return judgeTare(own.act.json.readings);
  return tares.find(({ kind }) => kind.id === kindId);
}
