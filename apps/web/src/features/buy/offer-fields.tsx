import { costCurve, type FreightTerms, type PriceBreak } from '@sheafbook/sharing';
import { gramsOfPhysicalUnit } from '@sheafbook/units';
import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import type { BuyPage } from './buy-body.ts';
import { foodNameOf } from './food-name.ts';
import { type BreakDraft, emptyBreak, type OfferDraft } from './quote-draft.ts';
import { useQuotesText } from './words.ts';

type Read = {
  readonly bagSize: number;
  readonly breakKind: 'all-units' | 'incremental';
  readonly mostBags: number | null;
  readonly breaks: readonly PriceBreak[];
};

type OfferProps = {
  buy: BuyPage;
  at: number;
  offer: OfferDraft;
  /** The same as it was read, for the sentence that says what it lands at. */
  read: Read | undefined;
  freight: FreightTerms;
  change: (part: Partial<OfferDraft>) => void;
  remove: (() => void) | null;
  problemAt: (field: string) => string | undefined;
};

/** One bag of one food with its price breaks. */
export function OfferFields({ buy, at, offer, read, freight, change, remove, problemAt }: OfferProps) {
  const words = useQuotesText();
  const { format } = useHouse();
  const line = buy.lines.find(({ id }) => id === offer.buyLineId);
  const unit = line?.massUnit === 'kg' ? 'kg' : 'lb';
  return (
    <>
      <div className="pair roomy">
        <Choice
          label={words.food}
          value={offer.buyLineId}
          options={buy.lines.map((one) => ({ value: one.id, name: foodNameOf(one, format.language) }))}
          onChange={(buyLineId) => change({ buyLineId })}
          problem={problemAt(`offers.${at}.buyLineId`)}
        />
        <Field
          label={words.bagSize(unit)}
          inputMode="numeric"
          value={offer.bagSize}
          onChange={(event) => change({ bagSize: event.target.value })}
          problem={problemAt(`offers.${at}.bagSize`)}
        />
      </div>
      <Breaks
        breaks={offer.breaks}
        change={(breaks) => change({ breaks })}
        problemAt={(field) => problemAt(`offers.${at}.breaks.${field}`)}
      />
      <div className="pair roomy">
        {offer.breaks.length > 1 ? (
          <Choice
            label={words.breakKind}
            value={offer.breakKind}
            options={Object.entries(words.breakKinds).map(([value, name]) => ({ value, name }))}
            onChange={(breakKind) => change({ breakKind })}
          />
        ) : null}
        <Field
          label={words.mostBags}
          hint={words.mostBagsHint}
          inputMode="numeric"
          value={offer.mostBags}
          onChange={(event) => change({ mostBags: event.target.value })}
          problem={problemAt(`offers.${at}.mostBags`)}
        />
      </div>
      <LandedAt read={read} freight={freight} unit={unit} />
      {remove ? (
        <div>
          <button type="button" className="btn quiet" onClick={remove}>
            {words.removeOffer(at + 1)}
          </button>
        </div>
      ) : null}
    </>
  );
}

export function Breaks(props: {
  breaks: readonly BreakDraft[];
  change: (breaks: readonly BreakDraft[]) => void;
  problemAt: (field: string) => string | undefined;
}) {
  const words = useQuotesText();
  const { breaks, change, problemAt } = props;
  const edit = (at: number, part: Partial<BreakDraft>) =>
    change(breaks.map((one, place) => (place === at ? { ...one, ...part } : one)));
  return (
    <>
      {breaks.map((one, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a price break is its place in the form
        <div key={at} className="pair">
          <Field
            label={words.fromBags}
            inputMode="numeric"
            value={one.fromBags}
            onChange={(event) => edit(at, { fromBags: event.target.value })}
            problem={problemAt(`${at}.fromBags`)}
          />
          <Field
            label={words.bagPrice}
            inputMode="decimal"
            value={one.price}
            onChange={(event) => edit(at, { price: event.target.value })}
            problem={problemAt(`${at}.bagPriceMinorUnits`)}
          />
          {at === 0 ? null : (
            <div>
              <button
                type="button"
                className="btn quiet"
                onClick={() => change(breaks.filter((_, place) => place !== at))}
              >
                {words.removeBreak(at + 1)}
              </button>
            </div>
          )}
        </div>
      ))}
      <div>
        <button type="button" className="btn" onClick={() => change([...breaks, emptyBreak('')])}>
          {words.addBreak}
        </button>
      </div>
    </>
  );
}

/** What the typed terms come to at ten bags, by the very sum that compares them later. */
function LandedAt({
  read,
  freight,
  unit,
}: {
  read: Read | undefined;
  freight: FreightTerms;
  unit: 'lb' | 'kg';
}) {
  const words = useQuotesText();
  const { format } = useHouse();
  const row = read && landedRow(read, freight, unit);
  if (!row) return null;
  return (
    <p className="soft" aria-live="polite">
      {words.preview({
        bags: row.bags,
        goods: format.money(row.goodsMinorUnits),
        freight: format.money(row.freightMinorUnits),
        price: format.perUnit({ minorUnits: row.totalMinorUnits, grams: row.bags * row.bagGrams }, unit),
        unit,
      })}
    </p>
  );
}

function landedRow(read: Read, freight: FreightTerms, unit: 'lb' | 'kg') {
  const isAscending = read.breaks.every(
    ({ fromBags, bagPriceMinorUnits }, at) =>
      bagPriceMinorUnits > 0 && (at === 0 ? fromBags === 1 : fromBags > (read.breaks[at - 1]?.fromBags ?? 0)),
  );
  const hasSteps = freight.steps.every(({ fromGrams }, at) =>
    at === 0 ? fromGrams === 0 : fromGrams > (freight.steps[at - 1]?.fromGrams ?? 0),
  );
  if (!isAscending || !hasSteps) return null;
  const bags = Math.min(10, read.mostBags ?? 10);
  const bagGrams = gramsOfPhysicalUnit(read.bagSize, unit);
  const offer = { ...read, bagOfferId: '', bagGrams };
  const [row] = costCurve({ offer, freight, fromBags: bags, toBags: bags });
  return row ? { ...row, bagGrams } : null;
}
