import { useText } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import type { Preview } from './buy-body.ts';
import type { LineFacts } from './line-facts.ts';

type Price = { minorUnits: number; grams: number } | null;

/** What the pledge would cost: now, with all at their least and at their most, and what one more bag would save. */
export function PledgeCost({
  preview,
  isWaiting,
  landed,
  facts,
}: {
  preview: Preview | undefined;
  isWaiting: boolean;
  landed: Price;
  facts: LineFacts;
}) {
  const t = useText();
  const { format } = useHouse();
  if (!preview) return <p className="soft">{isWaiting ? t.reckoning : t.typeAPledge}</p>;
  const { atFill, allAtLeast, allAtMost, landedPrice, tips } = preview;
  const tip = tips?.tip ?? null;
  const [low, high] = [allAtLeast.landedMinorUnits, allAtMost.landedMinorUnits].toSorted((a, b) => a - b);
  const price = (of: Price) => (of ? format.perUnit(of, facts.unit) : '');
  const isPriceMoved = landed && landedPrice && price(landed) !== price(landedPrice);
  return (
    <div className="stack" aria-live="polite" aria-busy={isWaiting}>
      <dl className="savings">
        <dt>{t.landedAt(facts.unit)}</dt>
        <dd>
          {isPriceMoved ? t.changes(price(landed), price(landedPrice)) : price(landedPrice)}{' '}
          <span className="u">{t.cents}</span>
        </dd>
        <dt>{t.yourMass(format.massIn(atFill.grams, facts.unit))}</dt>
        <dd>{format.money(atFill.landedMinorUnits)}</dd>
        {tip && tip.savedMinorUnits > 0 ? (
          <>
            <dt>{t.moreSaves(tip.extraBags)}</dt>
            <dd>{format.money(tip.savedMinorUnits)}</dd>
            <dt>{t.ofThatYou}</dt>
            <dd>{format.money(tip.ownSavedMinorUnits)}</dd>
          </>
        ) : null}
      </dl>
      {atFill.dropped === null ? null : <p>{t.dropped[atFill.dropped] ?? t.droppedOther}</p>}
      {low !== undefined && high !== undefined && low !== high ? (
        <p className="soft">{t.costBetween(format.money(low), format.money(high))}</p>
      ) : null}
      {tips?.isDeadZone ? <p className="soft">{t.deadZone}</p> : null}
    </div>
  );
}
