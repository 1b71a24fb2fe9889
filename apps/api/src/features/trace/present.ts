import type { TracedStep } from './queries.ts';
import type { drawTraces } from './use-cases.ts';

type Drawn = Awaited<ReturnType<typeof drawTraces>>;

const sumOf = (steps: readonly TracedStep[], way: TracedStep['way']): number =>
  steps.filter((step) => step.way === way).reduce((sum, { grams }) => sum + grams, 0);

/** What a household did with its grams once it had them at home is its own: the trace ends at its door. */
const placeOf = ({ ownerKind, place }: TracedStep): string =>
  ownerKind === 'household' && place !== 'bag' && place !== 'supplier' && place !== 'unexplained'
    ? 'home'
    : place;

export function presentTraces({ seed, candidates, traces }: Drawn) {
  return {
    seed,
    candidates,
    traces: traces.map(({ bag, steps }) => {
      const [inGrams, outGrams, leftGrams] = [sumOf(steps, 'in'), sumOf(steps, 'out'), sumOf(steps, 'left')];
      return {
        bagId: bag.bagId,
        bagCode: bag.bagCode,
        bagNo: bag.bagNo,
        food: { nameEn: bag.foodEn, nameEs: bag.foodEs },
        supplier: bag.supplier,
        supplierMark: bag.supplierMark,
        buyId: bag.buyId,
        buy: bag.buy,
        arrivedOn: bag.arrivedOn,
        inGrams,
        outGrams,
        leftGrams,
        addsUp: inGrams === outGrams + leftGrams,
        steps: steps.map((step) => ({
          way: step.way,
          place: placeOf(step),
          owner: step.ownerKind,
          ownerName: step.ownerName,
          grams: step.grams,
        })),
      };
    }),
  };
}

export const traceRows = (drawn: Drawn) =>
  presentTraces(drawn).traces.flatMap(
    ({ steps, bagCode, bagNo, food, supplier, supplierMark, buy, arrivedOn }) =>
      steps.map(({ way, place, owner, ownerName, grams }) => ({
        ...{ bagCode, bagNo, food: food.nameEn, foodEs: food.nameEs, supplier, supplierMark, buy, arrivedOn },
        ...{ way, place, owner, ownerName, grams },
      })),
  );
