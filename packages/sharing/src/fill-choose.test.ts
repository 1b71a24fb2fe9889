import { loadSolver } from '@sheafbook/solve';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { fillBags } from './fill.ts';
import { fillByDrops } from './fill-alone.ts';
import { aLine, anOffer, aPledge, aRequest } from './fill-builders.ts';
import { chooseTogether } from './fill-choose.ts';
import type { FillLine, FillPledge } from './fill-request.ts';
import { openCandidates, surveyLines } from './fill-survey.ts';
import { searchTogether } from './fill-together.ts';

const solver = await loadSolver();

const somePledge = fc
  .tuple(fc.nat({ max: 4 }), fc.integer({ min: 1, max: 5 }), fc.nat({ max: 4 }))
  .map(([least, more, room]) => aPledge(['', 5 * least, 5 * (least + more), 5 * (least + more + room), 5]));
const someLines = fc
  .array(fc.array(somePledge, { minLength: 1, maxLength: 4, size: 'max' }), { minLength: 2, maxLength: 3 })
  .map((lines) =>
    lines.map((pledges, index): FillLine => {
      const named = pledges.map((pledge, i) => ({ ...pledge, pledgeId: `pledge ${i}` }));
      const offers = [anOffer(), anOffer({ bagSize: 20 + 5 * index })];
      return aLine({ lineId: `food ${index}`, offers, commonCap: 5, pledges: named });
    }),
  );

// Two ways that share nothing but the bounds: looking at joint counts one by one, and one integer program.
test('the integer program over all lines reaches the key that looking at joint counts reaches', {
  timeout: 60_000,
}, () => {
  const property = fc.property(
    someLines,
    fc.constantFrom(0, 12_000, 25_000),
    fc.option(fc.constantFrom(9000, 20_000)),
    (lines, minimumGoodsMinorUnits, freeFromGoodsMinorUnits) => {
      const steps = [
        { fromGrams: 0, minorUnits: 900 },
        { fromGrams: 60_000, minorUnits: 2500 },
      ];
      const request = aRequest({
        lines,
        minimumGoodsMinorUnits,
        freight: { steps, freeFromGoodsMinorUnits },
      });
      const survey = surveyLines(request);
      const candidates = openCandidates(survey.lines, solver);
      const { best } = searchTogether(request, { lines: candidates, leastFreight: survey.leastFreight });
      expect(chooseTogether(request, survey.lines, solver).key).toEqual(best?.key);
    },
  );
  fc.assert(property, { seed: 20_260_731, numRuns: 20 });
});

const under = (pledge: FillPledge, minorUnits: number, grams: number) => ({
  ...pledge,
  ceiling: { minorUnits, grams },
});

// One bag for each, 36.00 the bag. Freight of 30.00 makes 46.00 a bag for three, 51.00 for two and 66.00 for
// one. Corran's 40.00 is the lowest that does not hold, then Birchall's 50.00; Ashdown's 70.00 holds to the
// end.
describe('dropping the lowest ceiling first', () => {
  const pledges = [7000, 5000, 4000].map((ceiling, i) =>
    under(aPledge([`h${i}`, 50, 50, 50, 50]), ceiling, 22_680),
  );
  const freight = { steps: [{ fromGrams: 0, minorUnits: 3000 }], freeFromGoodsMinorUnits: null };

  test('takes pledges out one at a time until every ceiling holds', () => {
    const { choice, drops } = fillByDrops(
      surveyLines(aRequest({ lines: [aLine({ pledges })], freight })),
      solver,
    );
    expect(drops.map((positions) => [...positions])).toEqual([[2, 1]]);
    expect(choice.parts.map((part) => part.allotted.units)).toEqual([[50, 0, 0]]);
  });
  test('takes out the later of two equal ceilings', () => {
    const equal = [4500, 4500, 4700].map((ceiling, i) =>
      under(aPledge([`h${i}`, 50, 50, 50, 50]), ceiling, 22_680),
    );
    const lines = [aLine({ pledges: equal })];
    const { drops } = fillByDrops(surveyLines(aRequest({ lines, freight })), solver);
    expect([...(drops[0] ?? [])]).toEqual([1, 0, 2]);
  });
});

// Six foods in three bag sizes each, wants worth some 600.00, and a minimum of 750.00: more joint bag counts
// come into question than are looked at one by one.
test('too many joint bag counts still end in a proven fill that reaches the minimum', {
  timeout: 60_000,
}, () => {
  const wants = [
    [25, 45, 60, 30],
    [50, 20, 35, 45],
    [40, 55, 15, 30],
    [60, 25, 50, 20],
    [35, 40, 45, 10],
    [30, 65, 20, 25],
  ];
  const lines = wants.map((row, index) =>
    aLine({
      lineId: `food ${index}`,
      offers: [50, 25, 10].map((bagSize) => anOffer({ bagSize })),
      commonCap: 5,
      pledges: row.map((wanted, i) => aPledge([`h${i}`, wanted - 10, wanted, wanted + 15, 5])),
    }),
  );
  const freight = { steps: [{ fromGrams: 0, minorUnits: 9500 }], freeFromGoodsMinorUnits: 84_000 };
  const answer = fillBags(aRequest({ lines, freight, minimumGoodsMinorUnits: 75_000 }), solver);
  expect(answer.certificate).toMatchObject({ method: 'drops-then-solve', isProvenBest: true });
  expect(answer.certificate.note).toContain('too many joint bag counts to look at all');
  expect(answer.goodsMinorUnits).toBeGreaterThanOrEqual(75_000);
});
