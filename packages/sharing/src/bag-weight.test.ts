import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  findTolerance,
  judgeUnexplained,
  RECEIVING_TOLERANCE,
  receivedBag,
  SESSION_TOLERANCE,
  SPLITTING_TOLERANCE,
  STARTER_TARE_GRAMS,
} from './bag-weight.ts';

// Tolerances: receiving the larger of 100 g and 1 %, splitting 20 g and 0.2 %, a session 50 g and 0.5 %.
test.for([
  { what: 'receiving', tolerance: RECEIVING_TOLERANCE, mass: 22_680, grams: 226 },
  { what: 'receiving', tolerance: RECEIVING_TOLERANCE, mass: 5000, grams: 100 },
  { what: 'splitting', tolerance: SPLITTING_TOLERANCE, mass: 133_812, grams: 267 },
  { what: 'splitting', tolerance: SPLITTING_TOLERANCE, mass: 9000, grams: 20 },
  { what: 'a session', tolerance: SESSION_TOLERANCE, mass: 133_812, grams: 669 },
  { what: 'a session', tolerance: SESSION_TOLERANCE, mass: 0, grams: 50 },
])('$what lets $grams g pass on $mass g', ({ tolerance, mass, grams }) => {
  expect(findTolerance(tolerance, mass)).toBe(grams);
});

// A 50 lb bag in woven cloth of 250 g: 1 % of 22,680 g is 226.8, so 226 g off still agrees.
test.for([
  { gross: 22_930, booked: 22_680, short: 0, over: 0, because: 'it weighs what it says' },
  { gross: 22_704, booked: 22_680, short: 0, over: 0, because: '226 g light agrees' },
  { gross: 22_703, booked: 22_453, short: 227, over: 0, because: '227 g light is short' },
  { gross: 23_156, booked: 22_680, short: 0, over: 0, because: '226 g heavy agrees' },
  { gross: 23_157, booked: 22_907, short: 0, over: 227, because: '227 g heavy is over' },
  { gross: 20_662, booked: 20_412, short: 2268, over: 0, because: 'the torn bag lost 5 lb' },
  { gross: 250, booked: 0, short: 22_680, over: 0, because: 'the bag came empty' },
])('a bag of 22,680 g grossing $gross is booked at $booked: $because', ({ gross, booked, short, over }) => {
  const bag = receivedBag({ declaredGrams: 22_680, grossGrams: gross, tareGrams: STARTER_TARE_GRAMS.woven });
  expect(bag).toEqual({
    weighedGrams: gross - 250,
    bookedGrams: booked,
    toleranceGrams: 226,
    shortGrams: short,
    overGrams: over,
  });
});

test('a group’s own tolerance decides when it has one', () => {
  const exactly = { leastGrams: 0, perMille: 0 };
  const bag = receivedBag({ declaredGrams: 22_680, grossGrams: 22_829, tareGrams: 150, tolerance: exactly });
  expect(bag).toMatchObject({ bookedGrams: 22_679, shortGrams: 1 });
});

test('booked, short and over always explain the declared mass', () => {
  const someMass = fc.nat(40_000);
  fc.assert(
    fc.property(someMass, someMass, fc.nat(400), (declared, net, tare) => {
      const bag = receivedBag({ declaredGrams: declared, grossGrams: net + tare, tareGrams: tare });
      expect(bag.bookedGrams + bag.shortGrams - bag.overGrams).toBe(declared);
      expect([declared, net]).toContain(bag.bookedGrams);
      expect(bag.shortGrams === 0 || bag.overGrams === 0).toBe(true);
    }),
  );
});

// The worked lot: 133,812 g opened, 130,090 poured, 250 sample, 310 spill, so 3,162 expected and 3,150 weighed.
test.for([
  { unexplained: 133_812 - 130_090 - 250 - 310 - 3150, verdict: 'dust' },
  { unexplained: 669, verdict: 'dust' },
  { unexplained: 670, verdict: 'needs-a-cause' },
  { unexplained: -670, verdict: 'needs-a-cause' },
  { unexplained: -12, verdict: 'dust' },
  { unexplained: 0, verdict: 'none' },
])('$unexplained g unexplained of a session that opened 133,812 g: $verdict', ({ unexplained, verdict }) => {
  expect(judgeUnexplained(unexplained, 133_812, SESSION_TOLERANCE)).toBe(verdict);
});

test.for([
  { input: () => receivedBag({ declaredGrams: -1, grossGrams: 1, tareGrams: 0 }), message: /declaredGrams/ },
  { input: () => receivedBag({ declaredGrams: 1, grossGrams: 1.5, tareGrams: 0 }), message: /grossGrams/ },
  {
    input: () => receivedBag({ declaredGrams: 1, grossGrams: 1, tareGrams: 2 }),
    message: /tare cannot exceed/,
  },
  { input: () => judgeUnexplained(0.5, 1, SESSION_TOLERANCE), message: /unexplainedGrams must be whole/ },
  { input: () => findTolerance({ leastGrams: -1, perMille: 0 }, 1), message: /leastGrams/ },
])('a weighing without sense is refused: $message', ({ input, message }) => {
  expect(input).toThrow(message);
});
