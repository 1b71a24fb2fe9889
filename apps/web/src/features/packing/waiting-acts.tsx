import { sumOf } from '@sheafbook/units';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import type { CheckMade, LogAct, NamedBag } from './log-act.ts';
import { type Nearest, nearestIn, TakeNearest } from './nearest.tsx';
import type { LogQueue } from './use-log.ts';
import { isHeld, mayDrop } from './waiting-bags.ts';
import { usePackingText } from './words.ts';

type Pour = Extract<LogAct, { kind: 'pour' }>['json'];

/**
 * The same pour, as it fits: what stands on the scale stays, unless it is more than the container holds. What is in another
 * container, or less of it, is no longer what was weighed with its container, so its net alone is told.
 */
function asNearest(
  pour: Pour,
  { gramsEach, containerKindId, treatment, absorberMillilitres }: Nearest,
): Pour {
  if (absorberMillilitres !== undefined) return { ...pour, absorberMillilitres };
  const { absorberMillilitres: packets, weighed: _, ...rest } = pour;
  return {
    ...rest,
    ...(treatment === 'oxygen-absorber' ? { absorberMillilitres: packets ?? null } : {}),
    ...(treatment === undefined ? {} : { treatment }),
    ...(containerKindId === undefined ? {} : { containerKindId }),
    grams: gramsEach === undefined ? pour.grams : pour.grams.map((grams) => Math.min(grams, gramsEach)),
  };
}

type WaitingProps = {
  log: LogQueue;
  /** Takes a check that was refused back into its form. */
  onPutRight?: (check: CheckMade) => void;
};

/** What this phone has written down and the book has not taken yet. */
export function WaitingActs({ log, onPutRight }: WaitingProps) {
  const t = usePackingText();
  const { format } = useHouse();
  const say = useActWords();
  const { waiting } = log;
  if (waiting.length === 0) return null;
  const refused = waiting.filter(({ refusal }) => refusal !== null).length;
  return (
    <section className="stack" aria-live="polite">
      {refused < waiting.length ? (
        <p className="said watch-said">{t.waits(waiting.length - refused)}</p>
      ) : null}
      {refused > 0 ? <p className="said watch-said">{t.notTaken(refused)}</p> : null}
      <ul className="list">
        {waiting.map((one) => {
          const { id, at, act, refusal, facts = {} } = one;
          const isBehind = refusal === null && isHeld(one, waiting);
          return (
            <li key={id}>
              <span>
                {say(act)}
                <span className="soft block">{format.instant(at)}</span>
              </span>
              {isBehind ? <p className="soft">{t.waitsBehind}</p> : null}
              {refusal === null ? null : <p className="said">{refusal}</p>}
              {refusal !== null && act.kind === 'pour' ? (
                <TakeNearest
                  nearest={nearestIn(facts)}
                  onTake={(nearest) => log.again(id, { ...act, json: asNearest(act.json, nearest) })}
                />
              ) : null}
              {refusal === null ? null : (
                <button type="button" className="btn" onClick={() => log.resend(id)}>
                  {act.kind === 'bring' ? t.bringAgain : t.sendAgain}
                </button>
              )}
              {refusal !== null && act.kind === 'check' && onPutRight ? (
                <button
                  type="button"
                  className="btn"
                  onClick={() => {
                    onPutRight(act.json);
                    log.drop(id);
                  }}
                >
                  {t.putRight}
                </button>
              ) : null}
              {(refusal !== null || isBehind) && mayDrop(one, waiting) ? (
                <button type="button" className="btn" onClick={() => log.drop(id)}>
                  {t.throwAway}
                </button>
              ) : null}
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** What was written down, in words. */
function useActWords(): (act: LogAct) => string {
  const t = usePackingText();
  const { format } = useHouse();
  const named = ({ food, household, bagNo }: NamedBag) =>
    t.bagOf(nameIn(format.language, food), household, bagNo);
  return (act) => {
    switch (act.kind) {
      case 'bring':
        return t.actBring(named(act.bag));
      case 'left':
        return t.actLeft(named(act.bag), format.count(act.json.leftGrams), act.json.because ?? '');
      case 'pour':
        return t.actPour(act.json.grams.length, format.count(sumOf(act.json.grams)));
      case 'loss':
        return t.actLoss(format.count(act.json.grams));
      case 'pack':
        return t.actPack(act.json.packets);
      case 'shut':
        return t.actShut(act.json.packetsLeft);
      case 'queue':
        return t.actQueue(t.stations[act.json.station], act.json.waiting);
      case 'check':
        return t.actCheck(act.json.line, act.json.serial, act.json.looksGood);
      case 'undo':
        return t.actUndo(act.containers, format.count(act.grams));
      case 're-can':
        return t.actReCan(act.json.containers.length);
      case 'here':
        return t.actHere(act.household, act.json.isHere);
      case 'hand':
        return t.actHand(act.name, act.json.state === 'came');
      case 'tare':
        return t.actTare(nameIn(format.language, act.named));
    }
  };
}
