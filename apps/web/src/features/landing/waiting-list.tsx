import { useHouse } from '../../ui/house.ts';
import { useOnline } from '../../ui/use-online.ts';
import type { SheetLine } from './landing-body.ts';
import { nameOfLine } from './landing-body.ts';
import { type Act, mayDrop, type Written } from './queue.ts';
import { scaleText } from './scale.ts';
import type { Landing } from './use-landing.ts';
import { useLandingText } from './words.ts';

type WaitingProps = {
  landing: Landing;
  lines: readonly SheetLine[];
  onMend?: ((written: Written) => void) | undefined;
};

/** What this phone has written down and the book has not yet, oldest first, with why where it was refused. */
export function WaitingList({ landing, lines, onMend }: WaitingProps) {
  const t = useLandingText();
  const { format } = useHouse();
  const isOnline = useOnline();
  const { written } = landing.queue;
  const sayAct = useActWords(lines);
  if (written.length === 0) return null;
  const refused = written.find(({ refusal }) => refusal !== null);
  return (
    <section className="stack tight" aria-label={t.waitingTitle}>
      <p className="said watch-said" role="status">
        {refused
          ? t.waitsBehindRefused(written.length - 1)
          : isOnline && landing.isReached
            ? t.sending(written.length)
            : t.waits(written.length)}
      </p>
      <ul className="list">
        {written.map((one) => (
          <li key={one.id} className="stack tight waiting">
            <p>
              <b>{sayAct(one.act)}</b> <span className="soft">{t.writtenAt(format.instant(one.at))}</span>
            </p>
            {one.refusal === null ? null : (
              <>
                <p className="said">{t.refusedBecause(one.refusal.words)}</p>
                <div className="actions">
                  {onMend && (one.act.kind === 'bag' || one.act.kind === 'delivery') ? (
                    <button type="button" className="btn go" onClick={() => onMend(one)}>
                      {t.putRight}
                    </button>
                  ) : null}
                  <button type="button" className="btn" onClick={() => landing.mend(one.id, one.act)}>
                    {t.sendAgain}
                  </button>
                  {mayDrop(landing.queue, one.id) ? (
                    <button type="button" className="btn" onClick={() => landing.drop(one.id)}>
                      {t.throwAway}
                    </button>
                  ) : null}
                </div>
              </>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}

/** An act in words, with the number that stood on the scale. */
function useActWords(lines: readonly SheetLine[]): (act: Act) => string {
  const t = useLandingText();
  const { format } = useHouse();
  const nameOf = (bagOfferId: string) => {
    const line = lines.find((candidate) => candidate.bagOfferId === bagOfferId);
    return line ? nameOfLine(line, format.language) : '';
  };
  const scale = (grams: number, unit: 'lb' | 'kg') => `${scaleText(grams, unit, format.language)} ${unit}`;
  return (act) => {
    switch (act.kind) {
      case 'delivery':
        return t.actLorry(format.day(act.facts.arrivedOn));
      case 'counts':
        return t.actCounts(
          act.counts
            .map(({ bagOfferId, countedBags }) => `${nameOf(bagOfferId)} ${format.count(countedBags)}`)
            .join(', '),
        );
      case 'weight':
        return t.actWeight(act.bagCode, scale(act.weight.grossGrams, act.unit));
      case 'bag': {
        const { bagOfferId, grossGrams, condition, decision } = act.bag;
        const mass = grossGrams === undefined ? t.notWeighed : scale(grossGrams, act.unit);
        const words = decision === 'refused' ? t.kinds.refused : t.conditions[condition];
        return t.actBag(nameOf(bagOfferId), mass, words);
      }
    }
  };
}
