import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { gramsOnScale } from '../shelf/mass-typed.ts';
import { penTime } from './pen-time.ts';
import type { LogBody, LoggedBag } from './queries.ts';
import { useBags } from './use-bags.ts';
import type { Log } from './use-log.ts';
import { keyOfBag } from './waiting-bags.ts';
import { usePackingText } from './words.ts';

/** What fell beside the can or went into a sample jar. */
export function Losses({ log, bags }: { log: Log; bags: readonly LoggedBag[] }) {
  const t = usePackingText();
  const { format } = useHouse();
  const { bag, options, typed, pen, change, reset } = useBags(`loss.${log.param.session}`, bags);
  const grams = gramsOnScale(typed, bag.leftInBagsGrams);
  const { penAt, isAhead } = penTime(pen, format.timeZone);
  const isReady = grams !== undefined && !isAhead;
  const lose = (to: 'spilled' | 'sampled') => {
    if (grams === undefined) return;
    const { bagId, householdId } = bag;
    log.write({
      kind: 'loss',
      json: { bagId, householdId, grams, to, lostAt: (penAt ?? new Date()).toISOString() },
    });
    reset();
  };
  return (
    <details>
      <summary>{t.losses}</summary>
      <div className="stack">
        <Choice
          label={t.whose}
          value={keyOfBag(bag)}
          options={options}
          onChange={(chosen) => change({ chosen })}
        />
        <Field
          label={t.howMuch}
          hint={t.figureHint}
          inputMode="decimal"
          value={typed}
          onChange={(event) => change({ typed: event.target.value })}
          problem={typed !== '' && grams === undefined ? t.massProblem : undefined}
        />
        <Field
          label={t.penLoss}
          type="time"
          hint={t.penHint}
          value={pen}
          onChange={(event) => change({ pen: event.target.value })}
          problem={isAhead ? t.penAhead : undefined}
        />
        <div className="pair">
          <button type="button" className="btn" disabled={!isReady} onClick={() => lose('spilled')}>
            {t.spilled}
          </button>
          <button type="button" className="btn" disabled={!isReady} onClick={() => lose('sampled')}>
            {t.sampled}
          </button>
        </div>
      </div>
    </details>
  );
}

/** Each with the hour at which it happened, which is not always the one at which it came into the book. */
export function LossesSoFar({ body: { losses } }: { body: LogBody }) {
  const t = usePackingText();
  const { format } = useHouse();
  if (losses.length === 0) return null;
  return (
    <details>
      <summary>{t.lossesSoFar(losses.length)}</summary>
      <ul className="list">
        {losses.map(({ entryId, to, grams, lostAt }) => (
          <li key={entryId}>
            {to === 'spilled' ? t.spilled : t.sampled}: {format.count(grams)} g
            <span className="soft block">{format.instant(lostAt)}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}
