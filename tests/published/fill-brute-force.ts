import type { BagOffer, FillLine, FillPledge, FillRequest } from '@sheafbook/sharing';
import { freightMinorUnits, goodsMinorUnits } from '@sheafbook/sharing';
import { addFractions, compareFractions, fraction } from '@sheafbook/units';

/** One way to fill one line: bags of each offer (larger size first), units of each pledge. */
export type LineWay = {
  readonly line: FillLine;
  readonly bags: readonly number[];
  readonly units: readonly number[];
  readonly spare: number;
  readonly goods: number;
  readonly grams: number;
  readonly key: readonly number[];
};

const sum = (numbers: readonly number[]): number => numbers.reduce((total, number) => total + number, 0);
const byName = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

const offersOf = (line: FillLine): BagOffer[] =>
  line.offers.toSorted((a, b) => b.bagSize - a.bagSize || byName(a.bagOfferId, b.bagOfferId));

function allProducts(choices: readonly (readonly number[])[]): number[][] {
  return choices.reduce<number[][]>(
    (products, values) => products.flatMap((product) => values.map((value) => [...product, value])),
    [[]],
  );
}

/** Nothing, or any whole number of steps between least and most. */
function listUnits({ least, most, step }: FillPledge): number[] {
  const all = Array.from({ length: most / step + 1 }, (_, steps) => steps * step);
  return all.filter((units) => units === 0 || units >= least);
}

/** Every way to divide some mass over the pledges, whether or not it fills bags. */
export const listCandidates = (line: FillLine): number[][] => allProducts(line.pledges.map(listUnits));

/** Every way to fill a line, ceilings not looked at. */
export function listWays(line: FillLine): LineWay[] {
  const offers = offersOf(line);
  const most = sum(line.pledges.map((pledge) => pledge.most)) + line.commonCap;
  const counts = offers.map((offer) => Math.min(offer.mostBags ?? most, Math.floor(most / offer.bagSize)));
  const vectors = allProducts(counts.map((count) => Array.from({ length: count + 1 }, (_, bags) => bags)));
  const allowed = vectors.filter((bags) => {
    const inAll = sum(bags);
    return inAll === 0 || (inAll >= line.leastBags && inAll <= (line.mostBags ?? inAll));
  });
  const byMass = new Map<number, number[][]>();
  for (const bags of allowed) {
    const units = sum(bags.map((count, i) => count * (offers[i]?.bagSize ?? 0)));
    byMass.set(units, [...(byMass.get(units) ?? []), bags]);
  }
  return listCandidates(line).flatMap((units) =>
    Array.from({ length: line.commonCap + 1 }, (_, spare) => spare).flatMap((spare) =>
      (byMass.get(sum(units) + spare) ?? [])
        .filter((bags) => offers.every((offer, i) => (bags[i] ?? 0) === 0 || spare < offer.bagSize))
        .map((bags) => describeWay(line, { bags, units, spare })),
    ),
  );
}

function describeWay(line: FillLine, way: Pick<LineWay, 'bags' | 'units' | 'spare'>): LineWay {
  const offers = offersOf(line);
  const deviations = deviationsOf(line, way.units);
  const dropped = way.units.filter((units) => units === 0).length;
  return {
    ...way,
    line,
    goods: sum(offers.map((offer, i) => goodsMinorUnits(offer, way.bags[i] ?? 0))),
    grams: sum(offers.map((offer, i) => offer.bagGrams * (way.bags[i] ?? 0))),
    key: [dropped, way.spare > 0 ? 1 : 0, way.spare, sum(deviations), Math.max(0, ...deviations)],
  };
}

const deviationsOf = (line: FillLine, units: readonly number[]): number[] =>
  line.pledges.map((pledge, i) => Math.abs((units[i] ?? 0) - pledge.wanted));

/** Whether every pledge served is within its ceiling at goods per gram of the line plus freight per gram. */
function keepsCeilings(way: LineWay, freight: { minorUnits: number; grams: number }): boolean {
  if (way.grams === 0) return true;
  const price = addFractions(
    fraction(way.goods, way.grams),
    fraction(freight.minorUnits, Math.max(1, freight.grams)),
  );
  return way.line.pledges.every((pledge, i) => {
    const { ceiling } = pledge;
    if ((way.units[i] ?? 0) === 0 || ceiling === null) return true;
    return compareFractions(price, fraction(ceiling.minorUnits, ceiling.grams)) <= 0;
  });
}

function isSound(request: FillRequest, ways: readonly LineWay[]): boolean {
  const goods = sum(ways.map((way) => way.goods));
  const grams = sum(ways.map((way) => way.grams));
  const minorUnits = freightMinorUnits(request.freight, goods, grams);
  const meetsMinimum = goods >= request.minimumGoodsMinorUnits && grams >= request.minimumGrams;
  return (grams === 0 || meetsMinimum) && ways.every((way) => keepsCeilings(way, { minorUnits, grams }));
}

type Cost = (goods: number, freight: number) => number | null;

/** The whole key of some lines together, down to the last tie-break. */
function wholeKey(request: FillRequest, ways: readonly LineWay[], costOf: Cost): number[] {
  const levels = [0, 1, 2, 3, 4].map((level) => sum(ways.map((way) => way.key[level] ?? 0)));
  const goods = sum(ways.map((way) => way.goods));
  const freight = freightMinorUnits(request.freight, goods, sum(ways.map((way) => way.grams)));
  const cost = costOf(goods, freight);
  const bags = sum(ways.flatMap((way) => way.bags));
  return [
    ...levels,
    ...(cost === null ? [] : [cost, bags]),
    ...ways.flatMap((way) => deviationsOf(way.line, way.units)),
    ...ways.flatMap((way) => way.units.map((units) => -units)),
    ...ways.flatMap((way) => way.bags.map((count) => -count)),
  ];
}

function leastOf(request: FillRequest, choices: readonly LineWay[][], costOf: Cost): LineWay[] {
  const keyed = choices.map((ways) => ({ ways, key: wholeKey(request, ways, costOf) }));
  const isLess = (a: number[], b: number[]): boolean => {
    const level = a.findIndex((value, i) => value !== b[i]);
    return level !== -1 && (a[level] ?? 0) < (b[level] ?? 0);
  };
  return keyed.reduce((best, choice) => (isLess(choice.key, best.key) ? choice : best)).ways;
}

/** The best fill by trying everything; lines by name. */
export function fillByBruteForce(request: FillRequest): LineWay[] {
  const lines = request.lines.toSorted((a, b) => byName(a.lineId, b.lineId));
  const ways = lines.map(listWays);
  const several = (line: FillLine | undefined): boolean => (line?.offers.length ?? 0) > 1;
  if (lines.length > 1) {
    const free = { minorUnits: 0, grams: 0 };
    const alone = ways.map((lineWays) => {
      const choices = lineWays.filter((way) => keepsCeilings(way, free)).map((way) => [way]);
      return leastOf(request, choices, (goods) => (several(lineWays[0]?.line) ? goods : null));
    });
    if (isSound(request, alone.flat())) return alone.flat();
  }
  const together = ways.reduce<LineWay[][]>(
    (joint, lineWays) => joint.flatMap((earlier) => lineWays.map((way) => [...earlier, way])),
    [[]],
  );
  const costOf: Cost = (goods, freight) =>
    lines.length > 1 ? goods + freight : several(lines[0]) ? goods : null;
  const sound = together.filter((choice) => isSound(request, choice));
  return leastOf(request, sound, costOf);
}
