import { sumOf } from '@sheafbook/units';
import { useEffect, useState } from 'react';
import type { LoggedBag, LoggedPour } from './queries.ts';
import type { LogQueue } from './use-log.ts';
import type { PourWaiting } from './waiting-bags.ts';
import { usePackingText } from './words.ts';

type UndoProps = {
  readonly log: LogQueue;
  readonly bag: LoggedBag;
  /** Those that stand, of the book and on this phone, oldest first. */
  readonly poured: readonly LoggedPour[];
  readonly waits: readonly PourWaiting[];
};

/** The second tap of two that were meant as one takes nothing back. */
const REST_MS = 1_000;

/** Takes the last entry back whole, also one that waits on this phone still; the book refuses once somebody has eaten of it. */
export function UndoPour({ log, bag: { bagId, householdId }, poured, waits }: UndoProps) {
  const t = usePackingText();
  const [isResting, setIsResting] = useState(false);
  useEffect(() => {
    if (!isResting) return;
    const timer = setTimeout(() => setIsResting(false), REST_MS);
    return () => clearTimeout(timer);
  }, [isResting]);
  const last = poured.at(-1);
  const here = waits.at(-1);
  const ofEntry = poured.filter(({ entryId }) => entryId === last?.entryId).map(({ grams }) => grams);
  const [entry, grams] = here ? [here.id, here.act.json.grams] : [last?.entryId, ofEntry];
  const takeBack = () => {
    if (entry === undefined) return;
    setIsResting(true);
    log.write({
      ...{ kind: 'undo', entry, bag: { bagId, householdId }, reason: t.undoReason },
      ...{ containers: grams.length, grams: sumOf(grams) },
    });
  };
  return (
    <button type="button" className="btn" disabled={entry === undefined || isResting} onClick={takeBack}>
      {here ? t.undoWaiting(grams.length) : last ? t.undo(last.serial) : t.undoNothing}
    </button>
  );
}
