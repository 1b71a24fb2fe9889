import { expect, test } from 'vitest';
import { type HowKnown, warmthBandOf } from './index.ts';

const stay = (steadyTenths: number, known: HowKnown = 'read') => ({ steadyTenths, known });

test('a gift was kept cool where it aged nowhere faster than at 70 °F, which is 21.1 °C', () => {
  expect(warmthBandOf([stay(180), stay(211)])).toBe('cool');
  expect(warmthBandOf([stay(180), stay(212)])).toBe('warm');
});

test('what nobody knows of its past is not called cool, however cool the rest was', () => {
  expect(warmthBandOf([stay(120), stay(120, 'unknown')])).toBe('unknown');
  expect(warmthBandOf([])).toBe('unknown');
  expect(warmthBandOf([stay(120, 'told'), stay(130, 'gap')])).toBe('cool');
});
