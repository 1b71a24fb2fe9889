import {
  absorberNeed,
  airAroundFood,
  airBetweenKernels,
  CARBON_DIOXIDE_LIMITS,
  carbonDioxideLitres,
  chooseAbsorbers,
  closedRoomPpm,
  dryIceGramsFor,
  flushWithDryIce,
  freshAirNeeded,
  judgeAbsorbers,
  mostDryIceGrams,
  OXYGEN_FRACTION,
  residualOxygen,
  ruleOfThumbAbsorber,
} from '@sheafbook/packing';
import { describe, expect, test } from 'vitest';

const QUART = 946.35;
const CAN = 3108.18;
const GALLON = 3785.41;
const PAIL_5 = 18_927.06;
const PAIL_6 = 22_712.47;
const GRAMS_PER_OUNCE = 28.349523125;

const rounded = (value: number, decimals = 1) => Number(value.toFixed(decimals));

// Gas law with air of 20.95 % oxygen (US Standard Atmosphere), 40 % of the volume between the kernels, no headspace.
describe('the oxygen of a full pack', () => {
  test.for([
    { pack: 'quart jar', volume: QUART, air: 378.5, oxygen: 79.3, need: 76.3, packets: [[100, 1]] },
    { pack: 'half gallon', volume: 1892.71, air: 757.1, oxygen: 158.6, need: 152.6, packets: [[200, 1]] },
    { pack: '2 L PET', volume: 2000, air: 800, oxygen: 167.6, need: 161.2, packets: [[200, 1]] },
    { pack: 'No. 10 can', volume: CAN, air: 1243.3, oxygen: 260.5, need: 250.5, packets: [[300, 1]] },
    { pack: '1 gallon pouch', volume: GALLON, air: 1514.2, oxygen: 317.2, need: 305.1, packets: [[500, 1]] },
    {
      pack: '5 gallon pail',
      volume: PAIL_5,
      air: 7570.8,
      oxygen: 1586.1,
      need: 1525.6,
      packets: [[2000, 1]],
    },
    { pack: '6 gallon pail', volume: PAIL_6, air: 9085, oxygen: 1903.3, need: 1830.8, packets: [[2000, 1]] },
  ])('of a $pack', ({ volume, air, oxygen, need, packets }) => {
    const airMillilitres = airBetweenKernels(volume, 0.4);
    expect(rounded(airMillilitres)).toBe(air);
    expect(rounded(OXYGEN_FRACTION * airMillilitres)).toBe(oxygen);
    expect(rounded(absorberNeed(airMillilitres))).toBe(need);
    const chosen = chooseAbsorbers(airMillilitres);
    expect(chosen?.packets.map(({ sizeMillilitres, count }) => [sizeMillilitres, count])).toEqual(packets);
  });

  test.for([
    { volume: QUART, at38: 72.5, at45: 85.8, at50: 95.4 },
    { volume: CAN, at38: 238.0, at45: 281.9, at50: 313.2 },
    { volume: PAIL_5, at38: 1449.4, at45: 1716.3, at50: 1907.0 },
    { volume: PAIL_6, at38: 1739.2, at45: 2059.6, at50: 2288.5 },
  ])('what $volume mL needs at other voids', ({ volume, at38, at45, at50 }) => {
    const needs = [0.38, 0.45, 0.5].map((part) => rounded(absorberNeed(airBetweenKernels(volume, part))));
    expect(needs).toEqual([at38, at45, at50]);
  });

  test('a 6 gallon pail of over 43 % air takes a second packet beside the one of 2,000', () => {
    const ratedAt = (part: number) => chooseAbsorbers(airBetweenKernels(PAIL_6, part))?.ratedMillilitres;
    expect(ratedAt(0.43)).toBe(2000);
    expect(ratedAt(0.45)).toBe(2100); // 2,059.6 is needed
  });

  // Residuals of a packet that takes up its rated size and no more.
  test.for([
    [QUART, 50, 8.92],
    [2000, 100, 9.66],
    [CAN, 100, 14.04],
    [CAN, 200, 5.8],
    [CAN, 300, 0],
    [GALLON, 300, 1.42],
    [PAIL_5, 500, 15.36],
    [PAIL_5, 1000, 8.92],
    [PAIL_5, 1500, 1.42],
    [PAIL_5, 2000, 0],
  ] as const)('%d mL with %d cc ends at %d %% oxygen', ([volume, rated, percent]) => {
    expect(rounded(100 * residualOxygen(airBetweenKernels(volume, 0.4), rated), 2)).toBe(percent);
  });

  // A can with 5.5 lb (2,494.76 g) of wheat whose kernels weigh 1.39 g/cm³ (Cereal Chemistry 1988): 1,313.4 mL of air.
  test('a can of 5.5 lb of wheat needs one packet of 300', () => {
    const airMillilitres = airAroundFood(CAN, 5.5 * 453.59237, 1.39);
    expect(rounded(airMillilitres)).toBe(1313.4);
    expect(rounded(OXYGEN_FRACTION * airMillilitres)).toBe(275.2);
    expect(rounded(absorberNeed(airMillilitres))).toBe(264.7);
    expect(chooseAbsorbers(airMillilitres)?.packets).toEqual([{ sizeMillilitres: 300, count: 1 }]);
  });

  // The job's own starter: 0.209 × (3,100 mL − m/ρ) and packets of 300 only. With 0.2095 the oxygen is a little more.
  test.for([
    { food: 'wheat', grams: 2600, density: 1.4, oxygen: 259.8, packets: 1 },
    { food: 'black beans', grams: 2500, density: 1.38, oxygen: 269.3, packets: 1 },
    { food: 'white rice', grams: 2600, density: 1.45, oxygen: 273.1, packets: 1 },
    { food: 'rolled oats', grams: 1130, density: 1.3, oxygen: 466.2, packets: 2 },
  ])('$food in a can of 3,100 mL', ({ grams, density, oxygen, packets }) => {
    const airMillilitres = airAroundFood(3100, grams, density);
    expect(rounded(0.209 * airMillilitres)).toBe(oxygen);
    expect(chooseAbsorbers(airMillilitres, [300])?.packets).toEqual([
      { sizeMillilitres: 300, count: packets },
    ]);
  });

  // Utah State University Extension's rule of thumb beside the sum: right for a quart, short for a gallon and a pail.
  test.for([
    [QUART, 100, true],
    [GALLON, 300, false],
    [PAIL_5, 500, false],
  ] as const)('the rule of thumb for %d mL is %d cc', ([volume, rule, isEnough]) => {
    expect(ruleOfThumbAbsorber(volume)).toBe(rule);
    expect(judgeAbsorbers(airBetweenKernels(volume, 0.4), rule).isEnough).toBe(isEnough);
  });

  test('nothing is said of a pail of 6 gallons', () => {
    expect(ruleOfThumbAbsorber(PAIL_6)).toBeNull();
  });
});

// Ideal gas: 44.0095 g/mol, 24.0551 L/mol at 20 °C and 1 atm.
describe('dry ice', () => {
  test('turns into gas', () => {
    expect(rounded(carbonDioxideLitres(GRAMS_PER_OUNCE), 2)).toBe(15.5);
    expect(rounded(carbonDioxideLitres(453.59237), 2)).toBe(247.93);
    expect(rounded(carbonDioxideLitres(1000), 2)).toBe(546.59);
  });

  test('a 5 gallon pail takes 5 oz by the rule of an ounce a gallon', () => {
    expect(dryIceGramsFor(18_927.05892)).toBe(142); // 5 × 28.35 g, rounded up
  });

  test.for([
    { ounces: 4, litres: 61.98, changes: 8.19, percent: 0.0058 },
    { ounces: 5, litres: 77.48, changes: 10.23, percent: 0.0008 }, // 20.95 % × e^−10.234 = 0.00075 %
  ])('$ounces oz in a pail of 40 % air', ({ ounces, litres, changes, percent }) => {
    const grams = ounces * GRAMS_PER_OUNCE;
    expect(rounded(carbonDioxideLitres(grams), 2)).toBe(litres);
    const { airChanges, oxygenFraction } = flushWithDryIce(grams, airBetweenKernels(PAIL_5, 0.4));
    expect(rounded(airChanges, 2)).toBe(changes);
    expect(rounded(100 * oxygenFraction, 4)).toBe(percent);
  });

  // 100 pails × 4 oz = 25 lb in a closed room of 6 × 8 × 2.7 m: 47,826 ppm, above what is immediately dangerous.
  test('25 lb in a closed hall is more than anybody may breathe', () => {
    const grams = 25 * 453.59237;
    expect(rounded(carbonDioxideLitres(grams) / 1000, 3)).toBe(6.198);
    expect(Math.round(closedRoomPpm(grams, 6 * 8 * 2.7))).toBe(47_826);
    expect(closedRoomPpm(grams, 6 * 8 * 2.7)).toBeGreaterThan(CARBON_DIOXIDE_LIMITS.dangerPpm);
  });

  test('the same over two hours wants 676.7 m³ of fresh air an hour, 5.22 changes', () => {
    const cubicMetres = freshAirNeeded({ dryIceGrams: 25 * 453.59237, hours: 2 });
    expect(rounded(cubicMetres)).toBe(676.7);
    expect(rounded(cubicMetres / 129.6, 2)).toBe(5.22);
  });

  test('without fresh air the room takes 1.086 kg', () => {
    expect(mostDryIceGrams(129.6)).toBe(1085); // 1,085.9… g, rounded down to stay below the limit
  });
});
