import { loadSolver } from '@sheafbook/solve';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fillBags } from './fill.ts';
import type { FilledLine } from './fill-answer.ts';
import { aLine, anOffer, aPledge, aRequest } from './fill-builders.ts';
import type { FillLine, FillPledge } from './fill-request.ts';

const solver = await loadSolver();

const unitsOf = (line: FilledLine | undefined) => line?.allotments.map((allotment) => allotment.units);
const reasonsOf = (line: FilledLine | undefined) => line?.allotments.map((allotment) => allotment.dropped);
const bagsOf = (line: FilledLine | undefined) => line?.bags.map((bag) => bag.bags);
const fillLine = (line: Partial<FillLine>, rest: Parameters<typeof aRequest>[0] = {}) =>
  fillBags(aRequest({ lines: [aLine(line)], ...rest }), solver);
const flat = (minorUnits: number) => ({
  steps: [{ fromGrams: 0, minorUnits }],
  freeFromGoodsMinorUnits: null,
});
const under = (pledge: FillPledge, minorUnits: number, grams: number) => ({
  ...pledge,
  ceiling: { minorUnits, grams },
});

describe('grams', () => {
  // Three bags of 22,680 g are 68,040 g for 150 lb: 453.6 g a pound.
  test('of all bags are shared over what each gets', () => {
    const rows = [30, 45, 20, 20, 35].map((units, i) => aPledge([`h${i}`, units, units, units, 5]));
    const answer = fillLine({ pledges: rows });
    const grams = answer.lines[0]?.allotments.map((allotment) => allotment.grams);
    expect(grams).toEqual([13_608, 20_412, 9072, 9072, 15_876]);
    expect(answer.grams).toBe(68_040);
  });
  // 1000 g over 3, 3 and 1 common of 7: 428.57, 428.57, 142.86; two grams left, to .86 and the earlier .57.
  test('go by largest remainder, the earlier pledge first, the common stock last', () => {
    const pledges = [aPledge(['first', 3, 3, 3, 1]), aPledge(['second', 3, 3, 3, 1])];
    const [line] = fillLine({
      offers: [anOffer({ bagSize: 7, bagGrams: 1000 })],
      pledges,
      commonCap: 1,
    }).lines;
    expect(line?.allotments.map((allotment) => allotment.grams)).toEqual([429, 428]);
    expect(line).toMatchObject({ commonUnits: 1, commonGrams: 143 });
  });
});

describe('who gets nothing, and why', () => {
  test('a want far below a bag buys nothing', () => {
    const answer = fillLine({ pledges: [aPledge(['Ashdown', 10, 20, 20, 5])] });
    expect(reasonsOf(answer.lines[0])).toEqual(['line-not-bought']);
    expect(answer).toMatchObject({ goodsMinorUnits: 0, freightMinorUnits: 0, grams: 0 });
    expect(answer.lines[0]).toMatchObject({ landedPrice: null, key: [1, 0, 0, 20, 20] });
  });
  test('nobody at all is filled by nothing at all', () => {
    expect(fillLine({ pledges: [] }).lines[0]).toMatchObject({ key: [0, 0, 0, 0, 0], allotments: [] });
    expect(fillBags(aRequest({ lines: [] }), solver).lines).toEqual([]);
  });
  test('a pledge that does not fit in whole bags is left out, here the one whose absence costs least', () => {
    const pledges = [aPledge(['whole', 50, 50, 50, 50]), aPledge(['odd', 20, 20, 20, 5])];
    const [line] = fillLine({ pledges }).lines;
    expect(reasonsOf(line)).toEqual([null, 'does-not-fit']);
  });
  // 35 + 15 = 50 would do with the second at nothing; but a pledge whose least is 0 and that gets nothing is
  // dropped.
  test('a pledge with no least that gets nothing counts as dropped', () => {
    const pledges = [aPledge(['first', 35, 35, 50, 5]), aPledge(['second', 0, 5, 5, 5])];
    const [line] = fillLine({ pledges }).lines;
    expect(unitsOf(line)).toEqual([45, 5]);
    expect(line?.key[0]).toBe(0);
  });
});

describe('ceilings', () => {
  const two = [aPledge(['Ashdown', 50, 50, 50, 50]), aPledge(['Birchall', 50, 50, 50, 50])] as const;
  // Two bags land at (72.00 + 30.00) / 45,360 g; one bag at (36.00 + 30.00) / 22,680 g.
  test.for([
    { ceiling: 10_200, units: [50, 50], because: 'the landed price itself is within it' },
    { ceiling: 10_199, units: [50, 0], because: 'one cent less is not' },
  ])('a ceiling of $ceiling for two bags gives $units: $because', ({ ceiling, units }) => {
    const pledges = [two[0], under(two[1], ceiling, 45_360)];
    const [line] = fillLine({ pledges }, { freight: flat(3000) }).lines;
    expect(unitsOf(line)).toEqual(units);
    expect(reasonsOf(line)?.[1]).toBe(units[1] === 0 ? 'ceiling' : null);
  });
  test('the landed price is exact, in lowest terms', () => {
    const [line] = fillLine({ pledges: [...two] }, { freight: flat(3000) }).lines;
    expect(line?.landedPrice).toEqual({ minorUnits: 85, grams: 378 }); // 10,200 / 45,360
  });
  // From two bags on a bag costs 30.00, a single one 40.00. Birchall would pay 25.00, so only one bag is
  // left, and that is above Ashdown's 35.00.
  test('one pledge too dear can price another out', () => {
    const breaks = [
      { fromBags: 1, bagPriceMinorUnits: 4000 },
      { fromBags: 2, bagPriceMinorUnits: 3000 },
    ];
    const pledges = [under(two[0], 3500, 22_680), under(two[1], 2500, 22_680)];
    const [line] = fillLine({ offers: [anOffer({ breaks })], pledges }).lines;
    expect(unitsOf(line)).toEqual([0, 0]);
    // Ashdown's would hold if somebody else took a bag, but nobody else may: no bag is bought.
    expect(reasonsOf(line)).toEqual(['line-not-bought', 'ceiling']);
  });
  // Wheat alone: 36.00 + 20.00 freight for one bag. With a bag of oats of the same mass the freight is
  // halved: 46.00.
  test.for([
    { oats: 50, wheat: 50 },
    { oats: 25, wheat: 0 },
  ])(
    'another food that shares the freight can keep a ceiling: oats $oats, wheat $wheat',
    ({ oats, wheat }) => {
      const lines = [
        aLine({ lineId: 'wheat', pledges: [under(two[0], 4600, 22_680)] }),
        aLine({ lineId: 'oats', pledges: [aPledge(['Corran', oats, oats, oats, 25])] }),
      ];
      const answer = fillBags(aRequest({ lines, freight: flat(2000) }), solver);
      expect(unitsOf(answer.lines[0])).toEqual([wheat]);
    },
  );
});

describe('limits of the supplier', () => {
  // Oats 50 lb at 36.00, beans 25 lb at 18.00. The wants alone, 50 and 25 lb, come to 54.00. For 80.00: two
  // bags of oats and one of beans (90.00) is 50 lb off; one of oats and three of beans (90.00) is 50 lb off
  // too, but its largest deviation is the same 50 and its bags are more.
  const pair = [
    aLine({ lineId: 'oats', pledges: [aPledge(['Ashdown', 50, 50, 100, 50])] }),
    aLine({
      lineId: 'beans',
      offers: [anOffer({ bagSize: 25 })],
      pledges: [aPledge(['Birchall', 25, 25, 75, 25])],
    }),
  ];
  test('a minimum is reached with the least deviation, over all foods together', () => {
    const answer = fillBags(aRequest({ lines: pair, minimumGoodsMinorUnits: 8000 }), solver);
    expect(answer.lines.map(bagsOf)).toEqual([[2], [1]]);
    expect(answer.certificate).toMatchObject({ method: 'joint-bag-counts', isProvenBest: true });
    expect(answer.certificate.levels.map((level) => level.value)).toEqual([0, 0, 0, 50, 50, 9000, 3]);
  });
  test('a minimum that is met anyway changes nothing', () => {
    const answer = fillBags(aRequest({ lines: pair, minimumGoodsMinorUnits: 5400 }), solver);
    expect(answer.lines.map(bagsOf)).toEqual([[1], [1]]);
    expect(answer.certificate.method).toBe('exhausted-bag-counts');
  });
  test.for([{ minimumGoodsMinorUnits: 1_000_000 }, { minimumGrams: 1_000_000 }])(
    'a minimum out of reach buys nothing: %o',
    (minimum) => {
      const answer = fillBags(aRequest({ lines: pair, ...minimum }), solver);
      expect(answer.grams).toBe(0);
      expect(answer.lines.map(reasonsOf)).toEqual([['line-not-bought'], ['line-not-bought']]);
      expect(answer.certificate.note).toContain('no order of these pledges reaches the supplier’s minimum');
    },
  );
  test('a least number of bags holds only for a line that is bought', () => {
    const pledges = [aPledge(['Ashdown', 50, 50, 150, 50])];
    expect(bagsOf(fillLine({ pledges, leastBags: 3 }).lines[0])).toEqual([3]);
    expect(bagsOf(fillLine({ pledges, leastBags: 4 }).lines[0])).toEqual([0]);
  });
});

describe('several bag sizes', () => {
  const large = anOffer({ breaks: [{ fromBags: 1, bagPriceMinorUnits: 3600 }] });
  const small = (price: number, mostBags: number | null = null) =>
    anOffer({ bagSize: 25, mostBags, breaks: [{ fromBags: 1, bagPriceMinorUnits: price }] });
  const pledges = [aPledge(['Ashdown', 50, 50, 50, 5])];
  test.for([
    { offers: [large, small(1700)], bags: [0, 2], because: 'two small ones are cheaper' },
    { offers: [large, small(1700, 1)], bags: [1, 0], because: 'the supplier has only one small one' },
    { offers: [large, small(1800)], bags: [1, 0], because: 'for the same price fewer bags' },
    { offers: [small(1800), large], bags: [0, 1], because: 'the order of the offers does not matter' },
  ])('50 lb come in $bags: $because', ({ offers, bags }) => {
    const [line] = fillLine({ offers, pledges }).lines;
    expect(bagsOf(line)).toEqual(bags);
    expect(line?.key).toHaveLength(7);
  });
  test('a bag is never bought for the common stock alone', () => {
    const [line] = fillLine({ offers: [large, small(1700)], pledges, commonCap: 40 }).lines;
    expect(line?.commonUnits).toBe(0);
  });
});

const somePledges = fc.array(
  fc.tuple(fc.nat({ max: 4 }), fc.integer({ min: 1, max: 6 }), fc.nat({ max: 3 }), fc.boolean()),
  { minLength: 2, maxLength: 5 },
);
const someLines = fc.array(somePledges, { minLength: 2, maxLength: 3 }).map((lines) =>
  lines.map((rows, index) =>
    aLine({
      lineId: `food ${index}`,
      offers: [anOffer({ bagSize: 50 }), anOffer({ bagSize: 20 })],
      commonCap: 5,
      pledges: rows.map(([least, more, room, isTight], i) => {
        const pledge = aPledge([`h${i}`, 5 * least, 5 * (least + more), 5 * (least + more + room), 5]);
        return isTight ? under(pledge, 17_500, 100_000) : pledge;
      }),
    }),
  ),
);

// A timeout of its own: these solve hundreds of models, on a machine that may be busy.
describe('the same pledges always get the same answer', { timeout: 60_000 }, () => {
  const seeded = { seed: 20_260_731, numRuns: 12 };
  const byLine = (lines: readonly FilledLine[]) => lines.toSorted((a, b) => (a.lineId < b.lineId ? -1 : 1));

  test('whatever order foods and bag sizes are typed in', () => {
    const property = fc.property(someLines, (lines) => {
      const request = aRequest({ lines, freight: flat(1500) });
      const turned = lines.toReversed().map((line) => ({ ...line, offers: line.offers.toReversed() }));
      const one = fillBags(request, solver);
      const other = fillBags({ ...request, lines: turned }, solver);
      const sorted = (all: readonly FilledLine[]) =>
        byLine(all).map((line) => ({
          ...line,
          bags: line.bags.toSorted((a, b) => (a.bagOfferId < b.bagOfferId ? -1 : 1)),
        }));
      expect(sorted(other.lines)).toEqual(sorted(one.lines));
      expect(other.certificate.levels).toEqual(one.certificate.levels);
    });
    fc.assert(property, seeded);
  });
  test('asked twice, also of a freshly loaded solver', async () => {
    const fresh = await loadSolver();
    const property = fc.property(someLines, (lines) => {
      const request = aRequest({ lines, freight: flat(1500) });
      const first = JSON.stringify(fillBags(request, solver));
      expect(JSON.stringify(fillBags(request, solver))).toBe(first);
      expect(JSON.stringify(fillBags(request, fresh))).toBe(first);
    });
    fc.assert(property, { ...seeded, numRuns: 8 });
  });
  test('and the order of pledges decides nothing but ties', () => {
    const property = fc.property(someLines, (lines) => {
      const turned = lines.map((line) => ({ ...line, pledges: line.pledges.toReversed() }));
      const keysOf = (all: readonly FillLine[]) =>
        fillBags(aRequest({ lines: [...all] }), solver).lines.map((line) => line.key);
      expect(keysOf(turned)).toEqual(keysOf(lines));
    });
    fc.assert(property, seeded);
  });
});

describe('a request that makes no sense', () => {
  const pledge = aPledge(['Ashdown', 10, 20, 30, 5]);
  const offer = anOffer();
  test.for([
    { line: { pledges: [{ ...pledge, least: 25 }] }, message: /less than its least/ },
    { line: { pledges: [{ ...pledge, most: 15 }] }, message: /more than its most/ },
    { line: { pledges: [{ ...pledge, wanted: 22 }] }, message: /wanted must be a multiple/ },
    { line: { pledges: [{ ...pledge, step: 0 }] }, message: /multiple of the pledge's step/ },
    { line: { pledges: [{ ...pledge, least: -5 }] }, message: /least must be a whole number/ },
    { line: { pledges: [{ ...pledge, least: 0, wanted: 0 }] }, message: /must want something/ },
    { line: { pledges: [{ ...pledge, most: 2.5 }] }, message: /most must be a whole number/ },
    { line: { pledges: [pledge, pledge] }, message: /pledges of a line must have different ids/ },
    { line: { pledges: [under(pledge, 100, 0)] }, message: /at least one gram/ },
    { line: { offers: [] }, message: /at least one bag offer/ },
    { line: { offers: [offer, offer] }, message: /bag offers of a line must have different ids/ },
    { line: { offers: [{ ...offer, bagSize: 0 }] }, message: /at least one line unit/ },
    { line: { offers: [{ ...offer, breaks: [] }] }, message: /first price must hold from 1 bag/ },
    { line: { commonCap: -1 }, message: /commonCap must be a whole number/ },
    { line: { mostBags: 1.5 }, message: /mostBags must be a whole number/ },
  ])('is stopped: $message', ({ line, message }) => {
    expect(() => fillLine({ pledges: [pledge], ...line })).toThrow(message);
  });
  test('is stopped for two foods of one name and for a negative minimum', () => {
    expect(() => fillBags(aRequest({ lines: [aLine(), aLine()] }), solver)).toThrow(/different ids/);
    expect(() => fillBags(aRequest({ minimumGrams: -1 }), solver)).toThrow(/minimumGrams/);
  });
});
