import { expect, test } from 'vitest';
import { press, scaleBar, scaleText } from './scale.ts';

test('a torn bag of 22.680 kg with 20.412 kg in it stands on a bar of 25 kg with ticks each 5', () => {
  const bar = scaleBar({ declaredGrams: 22_680, weighedGrams: 20_412, unit: 'kg' });
  expect(bar.weighed).toBeCloseTo(20.412 / 25, 10);
  expect(bar.declared).toBeCloseTo(22.68 / 25, 10);
  expect(bar.shortFrom).toBeCloseTo(20.412 / 25, 10);
  expect(bar.ticks.map(({ label }) => label)).toEqual(['0', null, '10', null, '20', null]);
  expect(bar.ticks.at(-1)?.at).toBe(1);
});

test('a heavier bag stretches the bar, and nothing is short', () => {
  const bar = scaleBar({ declaredGrams: 22_680, weighedGrams: 40_000, unit: 'kg' });
  expect(bar.shortFrom).toBeNull();
  expect(bar.weighed).toBe(1);
  expect(scaleBar({ declaredGrams: 22_680, weighedGrams: 0, unit: 'lb' })).toMatchObject({
    weighed: 0,
    shortFrom: 0,
  });
});

test('pounds get ticks of their own: 50 lb is the end of a bar in tens', () => {
  const bar = scaleBar({ declaredGrams: 22_679.6185, weighedGrams: 22_679.6185, unit: 'lb' });
  expect(bar.ticks.map(({ label }) => label)).toEqual(['0', null, '20', null, '40', null]);
  expect(bar.declared).toBeCloseTo(1, 10);
});

test('a mass is written as a scale shows it', () => {
  expect(scaleText(20_662, 'kg', 'en')).toBe('20.662');
  expect(scaleText(22_680, 'lb', 'en')).toBe('50.00');
  expect(scaleText(20_662, 'kg', 'es')).toBe('20,662');
});

test('keys make the number that the scale shows, with one point and no zeros in front', () => {
  const typed = (keys: readonly string[]) => keys.reduce(press, '');
  expect(typed(['2', '0', '.', '6', '6', '2'])).toBe('20.662');
  expect(typed(['0', '0', '7', '.', '.', '5'])).toBe('7.5');
  expect(typed(['.', '4'])).toBe('0.4');
  expect(typed(['2', '1', 'rub', '2'])).toBe('22');
  expect(typed([...'123456789'])).toBe('12345678');
});
