import { type BagOffer, costCurve, type FreightTerms } from '@sheafbook/sharing';

/** One bag size of one quote, under that quote's own freight. */
export type CurveOffer = {
  readonly key: string;
  readonly name: string;
  readonly offer: BagOffer;
  readonly freight: FreightTerms;
};

/** From more than `fromUnits` to `toUnits` the bags are so many, and a unit of the line lands at `price`. */
export type CurveStep = {
  readonly bags: number;
  readonly fromUnits: number;
  readonly toUnits: number;
  readonly totalMinorUnits: number;
  readonly grams: number;
  /** Minor units for one unit of the line, for drawing alone. */
  readonly price: number;
};

export type CurveLine = {
  readonly key: string;
  readonly name: string;
  readonly isLead: boolean;
  readonly steps: readonly CurveStep[];
};

export type Span = { readonly from: number; readonly to: number };

export type Curve = {
  readonly span: Span;
  readonly lines: readonly CurveLine[];
  /** Where the leading quote asks more than for a larger order: never order in there. */
  readonly deadZones: readonly Span[];
  /** Where the leading quote has a price break or free freight. */
  readonly jumps: readonly CurveStep[];
};

/** Beyond this many bags a picture shows nothing more. */
const MOST_BAGS = 400;

/** What is wanted of a line, in its units; zeros while nobody has pledged. */
export type Wanted = { readonly least: number; readonly wanted: number; readonly most: number };

/**
 * The landed price of a line against its mass, quote by quote. It spans what the pledges span and the leading quote's
 * next jumps, as far as those lie within reach: two and a half times what is wanted at most.
 */
export function curveOf(offers: readonly CurveOffer[], leadKey: string, wanted: Wanted): Curve {
  const lead = offers.find(({ key }) => key === leadKey) ?? offers[0];
  const span = spanOf(lead, wanted);
  const lines = offers.map((one) => ({
    key: one.key,
    name: one.name,
    isLead: one.key === lead?.key,
    steps: stepsOf(one, span),
  }));
  const rows = lead ? rowsOf(lead, span) : [];
  const steps = lines.find(({ isLead }) => isLead)?.steps ?? [];
  return {
    span,
    lines,
    deadZones: joinSpans(
      steps
        .filter((_, at) => rows[at]?.isDeadZone)
        .map((step) => ({ from: Math.max(step.fromUnits, span.from), to: step.toUnits })),
    ),
    jumps: steps.filter(
      (step, at) => (rows[at]?.isBreak || rows[at]?.isFreeFrom) && !rows[at]?.isDeadZone && step.bags > 1,
    ),
  };
}

function spanOf(lead: CurveOffer | undefined, { least, wanted, most }: Wanted): Span {
  const size = lead?.offer.bagSize ?? 1;
  if (wanted === 0) return { from: 0, to: Math.max(10, lastJump(lead, 40)) * size * 1.08 };
  const reach = Math.max(most, Math.min(lastJump(lead, MOST_BAGS) * size, wanted * 2.5), size);
  const from = Math.max(0, Math.min(least || wanted, wanted) - size * 1.5);
  return { from, to: Math.max(reach, wanted + size) * 1.04 };
}

/** The bags of the farthest jump within so many bags; none gives 0. */
function lastJump(lead: CurveOffer | undefined, within: number): number {
  if (!lead) return 0;
  const toBags = Math.min(lead.offer.mostBags ?? within, within);
  const rows = costCurve({ offer: lead.offer, freight: lead.freight, fromBags: 1, toBags });
  return rows.findLast((row) => row.isBreak || row.isFreeFrom)?.bags ?? 0;
}

function rowsOf({ offer, freight }: CurveOffer, { from, to }: Span) {
  const fromBags = Math.max(1, Math.floor(from / offer.bagSize) + 1);
  const most = Math.min(offer.mostBags ?? MOST_BAGS, fromBags + MOST_BAGS);
  const toBags = Math.min(most, Math.ceil(to / offer.bagSize));
  return toBags < fromBags ? [] : costCurve({ offer, freight, fromBags, toBags });
}

function stepsOf(one: CurveOffer, span: Span): CurveStep[] {
  const { bagSize, bagGrams } = one.offer;
  return rowsOf(one, span).map(({ bags, totalMinorUnits }) => ({
    bags,
    fromUnits: (bags - 1) * bagSize,
    toUnits: bags * bagSize,
    totalMinorUnits,
    grams: bags * bagGrams,
    price: totalMinorUnits / (bags * bagSize),
  }));
}

/** Spans that touch become one. */
export function joinSpans(spans: readonly Span[]): Span[] {
  const joined: Span[] = [];
  for (const span of spans) {
    const last = joined.at(-1);
    if (last && span.from <= last.to) joined.splice(-1, 1, { from: last.from, to: span.to });
    else joined.push(span);
  }
  return joined;
}

/** Round figures within a span, three to six of them: steps of 1, 2, 2.5 or 5 times a power of ten. */
export function ticksOf({ from, to }: Span): number[] {
  const width = to - from;
  if (!(width > 0)) return [];
  const power = 10 ** Math.floor(Math.log10(width));
  const steps = [5, 2.5, 2, 1, 0.5, 0.25, 0.2, 0.1].map((part) => part * power);
  const step = steps.find((one) => Math.floor(to / one) - Math.ceil(from / one) + 1 >= 3) ?? power / 10;
  const first = Math.ceil(from / step);
  const count = Math.floor(to / step) - first + 1;
  return Array.from({ length: count }, (_, at) => (first + at) * step);
}

/** The prices that a picture must hold: those of the lines, but for a first bag that costs far more than the rest. */
export function pricesOf({ lines }: Curve): Span {
  const prices = lines.flatMap(({ steps }) => steps.map(({ price }) => price));
  const lowest = Math.min(...prices);
  const highest = Math.max(...prices.filter((price) => price <= lowest * 2.2));
  const margin = Math.max((highest - lowest) * 0.12, highest * 0.02);
  return { from: lowest - margin * 1.6, to: highest + margin };
}
