import type { Drawn, Trace } from './drawn.ts';
import type { TracedContainer, TracedStep } from './queries.ts';

const sumOf = (steps: readonly TracedStep[], way: TracedStep['way']): number =>
  steps.filter((step) => step.way === way).reduce((sum, { grams }) => sum + grams, 0);

/** What a household did with its grams once it had them at home is its own: the trace ends at its door. */
const placeOf = ({ ownerKind, place }: TracedStep): string =>
  ownerKind === 'household' && !['bag', 'supplier', 'unexplained', 'moisture'].includes(place)
    ? 'home'
    : place;

function presentSteps(steps: readonly TracedStep[]) {
  const [inGrams, outGrams, leftGrams] = [sumOf(steps, 'in'), sumOf(steps, 'out'), sumOf(steps, 'left')];
  return {
    ...{ inGrams, outGrams, leftGrams, addsUp: inGrams === outGrams + leftGrams },
    steps: steps.map((step) => ({
      way: step.way,
      place: placeOf(step),
      owner: step.ownerKind,
      ownerName: step.ownerName,
      grams: step.grams,
    })),
  };
}

/**
 * Of a household's container the reader sees its code, its lot and what was poured in from which bag: neither whose it is
 * nor what became of it. Whether it adds up is then for the audit alone to say.
 */
function presentContainer(container: TracedContainer, steps: readonly TracedStep[]) {
  const isCommon = container.householdId === null;
  const poured = container.bags.reduce((sum, { grams }) => sum + grams, 0);
  const whole = presentSteps(steps);
  return {
    isCommon,
    kindOf: { nameEn: container.kindEn, nameEs: container.kindEs },
    food: { nameEn: container.foodEn, nameEs: container.foodEs },
    supplier: container.supplier,
    supplierMark: container.supplierMark,
    buyId: container.buyId,
    buy: container.buy,
    originNote: isCommon ? container.originNote : '',
    importNo: isCommon ? container.importNo : null,
    packedOn: isCommon ? container.packedOn : null,
    bags: container.bags.map(({ bagCode, arrivedOn, grams }) => ({ bagCode, arrivedOn, grams })),
    ...(isCommon
      ? whole
      : { inGrams: poured, outGrams: null, leftGrams: null, addsUp: null, steps: hiddenSteps(container) }),
  };
}

const hiddenSteps = ({ bags }: TracedContainer) =>
  bags.map(({ grams }) => ({
    ...{ way: 'in' as const, place: 'bag', owner: 'household', ownerName: null as string | null, grams },
  }));

function presentTrace(trace: Trace) {
  const { code } = trace;
  if (trace.kind === 'entry') return { kind: trace.kind, code, entry: trace.entry };
  if (trace.kind === 'container')
    return { kind: trace.kind, code, ...presentContainer(trace.container, trace.steps) };
  const { bag, steps } = trace;
  return {
    kind: trace.kind,
    code,
    bagId: bag.bagId,
    bagCode: bag.bagCode,
    bagNo: bag.bagNo,
    food: { nameEn: bag.foodEn, nameEs: bag.foodEs },
    supplier: bag.supplier,
    supplierMark: bag.supplierMark,
    buyId: bag.buyId,
    buy: bag.buy,
    arrivedOn: bag.arrivedOn,
    ...presentSteps(steps),
  };
}

export const presentTraces = ({ seed, candidates, traces }: Drawn) => ({
  seed,
  candidates,
  traces: traces.map(presentTrace),
});

type Row = {
  readonly kind: string;
  readonly code: string;
  readonly food: string;
  readonly foodEs: string;
  readonly supplier: string | null;
  readonly supplierMark: string;
  readonly buy: string | null;
  readonly way: string;
  readonly from: string;
  readonly to: string;
  readonly amount: number | null;
  readonly unit: string;
};

/** A row a step of a bag or container, and a row a movement of an entry. */
export const traceRows = (drawn: Drawn): Row[] => presentTraces(drawn).traces.flatMap(rowsOf);

function rowsOf(trace: ReturnType<typeof presentTrace>): Row[] {
  const { kind, code } = trace;
  if (trace.kind === 'entry') {
    const { entry } = trace;
    const common = { kind, code, food: '', foodEs: '', supplier: null, supplierMark: '' };
    return (entry?.movements ?? []).map((movement) => ({
      ...common,
      ...{ buy: entry?.buy ?? null, way: entry?.what ?? '', unit: movement.unit },
      from: movement.isHomeStock ? '' : movement.from.name,
      to: movement.isHomeStock ? '' : movement.to.name,
      amount: movement.isHomeStock ? null : movement.amount,
    }));
  }
  const { food, supplier, supplierMark, buy, steps } = trace;
  return steps.map(({ way, place, ownerName, owner, grams }) => ({
    ...{ kind, code, food: food.nameEn, foodEs: food.nameEs, supplier, supplierMark, buy, way },
    from: way === 'in' ? place : code,
    to: way === 'out' ? place : (ownerName ?? owner),
    amount: grams,
    unit: 'g',
  }));
}
