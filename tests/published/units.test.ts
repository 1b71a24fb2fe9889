import {
  BUSHEL_WEIGHTS,
  bushelsPerTonne,
  checkCharacter,
  countFromGrams,
  type Fraction,
  fraction,
  gramsOfPhysicalUnit,
  kilogramsPerBushel,
  kilogramsPerCubicMetre,
  MILLILITRES_PER_UNIT,
  multiplyFractions,
  plainKilogramsPerHectolitre,
  reportedKilogramsPerHectolitre,
  roundFraction,
} from '@sheafbook/units';
import { describe, expect, test } from 'vitest';

/** A fraction as a table prints it: a half goes up at the last digit. */
function printed(value: Fraction, decimals: number): string {
  const scale = 10n ** BigInt(decimals);
  const digits = roundFraction(multiplyFractions(value, fraction(scale))).toString();
  const padded = digits.padStart(decimals + 1, '0');
  return `${padded.slice(0, -decimals)}.${padded.slice(-decimals)}`;
}

// NIST Handbook 44, appendix C, General Tables of Units of Measurement (from memory): all exact by definition.
describe('US volume units by NIST Handbook 44', () => {
  test.for([
    { unit: 'us-gallon', millilitres: [3_785_411_784n, 6n] },
    { unit: 'us-quart', millilitres: [946_352_946n, 6n] },
    { unit: 'us-cup', millilitres: [2_365_882_365n, 7n] },
    { unit: 'us-fluid-ounce', millilitres: [295_735_295_625n, 10n] },
    { unit: 'cubic-inch', millilitres: [16_387_064n, 6n] },
    { unit: 'us-bushel', millilitres: [3_523_907_016_688n, 8n] },
  ] as const)('$unit is exact', ({ unit, millilitres: [digits, decimals] }) => {
    expect(MILLILITRES_PER_UNIT[unit]).toEqual(fraction(digits, 10n ** decimals));
  });
});

// Trade weights: University of Minnesota Extension, livestock systems DI0469, table A17; rough rice 45 lb/bu by the USDA
// Farm Service Agency. The metric columns are arithmetic from the definitions above, to the last digit of the table.
describe('US bushel weights', () => {
  test.for([
    {
      grain: 'wheat',
      pounds: 60,
      perBushel: '27.2155422',
      density: '772.31',
      hectolitre: '77.23',
      tonne: '36.7437',
    },
    {
      grain: 'soybeans',
      pounds: 60,
      perBushel: '27.2155422',
      density: '772.31',
      hectolitre: '77.23',
      tonne: '36.7437',
    },
    {
      grain: 'corn',
      pounds: 56,
      perBushel: '25.4011727',
      density: '720.82',
      hectolitre: '72.08',
      tonne: '39.3683',
    },
    {
      grain: 'rye',
      pounds: 56,
      perBushel: '25.4011727',
      density: '720.82',
      hectolitre: '72.08',
      tonne: '39.3683',
    },
    {
      grain: 'barley',
      pounds: 48,
      perBushel: '21.7724338',
      density: '617.85',
      hectolitre: '61.78',
      tonne: '45.9296',
    },
    {
      grain: 'rough-rice',
      pounds: 45,
      perBushel: '20.4116567',
      density: '579.23',
      hectolitre: '57.92',
      tonne: '48.9916',
    },
    {
      grain: 'oats',
      pounds: 32,
      perBushel: '14.5149558',
      density: '411.90',
      hectolitre: '41.19',
      tonne: '68.8945',
    },
  ])('$grain weighs $pounds lb a bushel', ({ grain, pounds, ...metric }) => {
    expect(BUSHEL_WEIGHTS.find((row) => row.grain === grain)?.poundsPerBushel).toBe(pounds);
    expect({
      perBushel: printed(kilogramsPerBushel(pounds), 7),
      density: printed(kilogramsPerCubicMetre(pounds), 2),
      hectolitre: printed(plainKilogramsPerHectolitre(pounds), 2),
      tonne: printed(bushelsPerTonne(pounds), 4),
    }).toEqual(metric);
  });

  // USDA Federal Grain Inspection Service, test weight conversion (from memory).
  test('60 lb/bu is certified as 78.94 kg/hL of wheat, which plain division makes 77.23', () => {
    expect(printed(reportedKilogramsPerHectolitre(60, 'other-wheat'), 2)).toBe('78.94');
    expect(printed(reportedKilogramsPerHectolitre(60, 'durum'), 2)).toBe('78.15');
    expect(printed(plainKilogramsPerHectolitre(60), 2)).toBe('77.23');
  });
});

// NIST Handbook 44, appendix C (from memory): 1 lb = 453.59237 g; a bag is rounded by itself, a half gram going up.
describe('bags as sellers name them', () => {
  test.for([
    { count: 50, unit: 'lb', grams: 22_680 },
    { count: 25, unit: 'lb', grams: 11_340 },
    { count: 25, unit: 'kg', grams: 25_000 },
  ] as const)('a $count $unit bag is $grams g and shows as $count $unit again', ({ count, unit, grams }) => {
    expect(gramsOfPhysicalUnit(count, unit)).toBe(grams);
    expect(countFromGrams(grams, unit)).toBe(count);
  });
});

// The check character of the NOID identifier scheme and its example 13030/xf93gt2q, both from memory of its
// documentation: 29 characters, a "/" counts nothing but holds its position.
test('the identifier 13030/xf93gt2 takes the check character q', () => {
  expect(checkCharacter('13030/xf93gt2', '0123456789bcdfghjkmnpqrstvwxz')).toBe('q');
});
