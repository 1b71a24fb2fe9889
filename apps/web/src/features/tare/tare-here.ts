import { judgeTare, MOST_TARE_GRAMS } from '@sheafbook/packing';
import type { Waiting } from '../../api/outbox.ts';
import type { LogAct } from '../packing/log-act.ts';
import type { Tare } from './queries.ts';

/** What ten empties of a kind say, wherever it was written down. */
export type TareSaid = ReturnType<typeof judgeTare>;

/** What an empty container weighs, as it was typed, in whole grams; undefined for what none weighs. */
export function tareTyped(text: string): number | undefined {
  const grams = /^\s*\d{1,6}\s*$/.test(text) ? Number(text) : 0;
  return grams >= 1 && grams <= MOST_TARE_GRAMS ? grams : undefined;
}

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
