import { seedSigmaDays } from '@sheafbook/keeping';
import { describe, expect, test } from 'vitest';

// Ellis and Roberts 1980, rice at 10 % moisture and 20 °C from 98 % alive (probit 2.05375).
describe('seed life as a comparison of the shape', () => {
  test('sigma of rice', () => {
    expect(seedSigmaDays(10, 20).toFixed(1)).toBe('614.9');
    expect(seedSigmaDays(8, 20).toFixed(1)).toBe('1889.1');
    expect((2.05375 - 365 / seedSigmaDays(10, 20)).toFixed(4)).toBe('1.4602');
    expect((2.05375 * seedSigmaDays(10, 20)).toFixed(1)).toBe('1262.8'); // to half alive
    const probitOf85 = 1.036433; // of the normal distribution, from any table of it
    expect(((2.05375 - probitOf85) * seedSigmaDays(10, 20)).toFixed(1)).toBe('625.5');
  });

  // The normal distribution by Abramowitz and Stegun 7.1.26, good to 1.5e-7.
  const partBelow = (deviate: number): number => {
    const x = Math.abs(deviate) / Math.SQRT2;
    const t = 1 / (1 + 0.3275911 * x);
    const sum = [1.061405429, -1.453152027, 1.421413741, -0.284496736, 0.254829592].reduce(
      (total, factor) => total * t + factor,
      0,
    );
    const within = 1 - sum * t * Math.exp(-x * x);
    return deviate < 0 ? (1 - within) / 2 : (1 + within) / 2;
  };
  test.for([
    [10, '92.79'],
    [8, '96.86'],
  ] as const)(
    'of rice at %d %% moisture and 20 °C, 98 %% alive, %s %% are after a year',
    ([moisture, alive]) => {
      expect((100 * partBelow(2.05375 - 365 / seedSigmaDays(moisture, 20))).toFixed(2)).toBe(alive);
    },
  );

  // Between 60 and 90 °F the seed rule's halving for each 10 °F and the equation agree within a quarter each step.
  test.for([60, 70, 80])('from %d °F ten degrees more about halve seed life', (fahrenheit) => {
    const celsius = (value: number) => (value - 32) / 1.8;
    const ratio = seedSigmaDays(10, celsius(fahrenheit + 10)) / seedSigmaDays(10, celsius(fahrenheit));
    expect(ratio).toBeGreaterThan(0.375);
    expect(ratio).toBeLessThan(0.625);
  });
});
