import { sumOf } from '@sheafbook/units';
import { useHouse } from '../../ui/house.ts';
import { type Nearest, nearestIn, TakeNearest } from './nearest.tsx';
import type { Log, LogAct } from './use-log.ts';
import { usePackingText } from './words.ts';

type Pour = Extract<LogAct, { kind: 'pour' }>['json'];

/** The same pour, as it fits: what stands on the scale stays, unless it is more than the container holds. */
function asNearest(
  pour: Pour,
  { gramsEach, containerKindId, treatment, absorberMillilitres }: Nearest,
): Pour {
  if (absorberMillilitres !== undefined) return { ...pour, absorberMillilitres };
  const { absorberMillilitres: packets, ...rest } = pour;
  return {
    ...rest,
    ...(treatment === 'oxygen-absorber' ? { absorberMillilitres: packets ?? null } : {}),
    ...(treatment === undefined ? {} : { treatment }),
    ...(containerKindId === undefined ? {} : { containerKindId }),
    grams: gramsEach === undefined ? pour.grams : pour.grams.map((grams) => Math.min(grams, gramsEach)),
  };
}

/** What this phone has written down and the book has not taken yet. */
export function WaitingActs({ log }: { log: Log }) {
  const t = usePackingText();
  const { format } = useHouse();
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
        {waiting.map(({ id, at, act, refusal, facts = {} }) => (
          <li key={id}>
            <span>
              {act.kind === 'pour'
                ? t.actPour(act.json.grams.length, format.count(sumOf(act.json.grams)))
                : act.kind === 'loss'
                  ? t.actLoss(format.count(act.json.grams))
                  : act.kind === 'pack'
                    ? t.actPack(act.json.packets)
                    : t.actShut(act.json.packetsLeft)}
              <span className="soft block">{format.instant(at)}</span>
            </span>
            {refusal === null ? null : (
              <>
                <p className="said">{refusal}</p>
                {act.kind === 'pour' ? (
                  <TakeNearest
                    nearest={nearestIn(facts)}
                    onTake={(nearest) => log.again(id, { ...act, json: asNearest(act.json, nearest) })}
                  />
                ) : null}
                <button type="button" className="btn" onClick={() => log.drop(id)}>
                  {t.throwAway}
                </button>
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
