import { sumOf } from '@sheafbook/units';
import { useHouse } from '../../ui/house.ts';
import type { Log } from './use-log.ts';
import { usePackingText } from './words.ts';

/** What this phone has written down and the book has not taken yet. */
export function WaitingActs({ log }: { log: Log }) {
  const t = usePackingText();
  const { format } = useHouse();
  const { waiting } = log;
  if (waiting.length === 0) return null;
  return (
    <section className="stack" aria-live="polite">
      <p className="said watch-said">{t.waits(waiting.length)}</p>
      <ul className="list">
        {waiting.map(({ id, at, act, refusal }) => (
          <li key={id}>
            <span>
              {act.kind === 'pour'
                ? t.actPour(act.json.grams.length, format.count(sumOf(act.json.grams)))
                : t.actLoss(format.count(act.json.grams))}
              <span className="soft block">{format.instant(at)}</span>
            </span>
            {refusal === null ? null : (
              <>
                <p className="said">{refusal}</p>
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
