import fc from 'fast-check';
import { expect, test } from 'vitest';
import { loadingOrder } from './loading-order.ts';

const load = (code: string, giftClosesOn: string) => ({ code, giftClosesOn });
const codes = (rows: readonly { readonly code: string }[]) => rows.map(({ code }) => code);

test('the farthest door leads, and at each door what closes first; of what closes alike the lower code', () => {
  const near = { distance: 3_000, loads: [load('N1', '2027-01-05'), load('N2', '2026-12-01')] };
  const far = { distance: 8_000, loads: [load('F2', '2027-03-01'), load('F1', '2027-03-01')] };
  const between = { distance: 5_000, loads: [load('B1', '2026-11-30')] };
  expect(codes(loadingOrder([near, far, between]))).toEqual(['F1', 'F2', 'B1', 'N2', 'N1']);
});

test('of two doors as far away the one that is named last leads, since it is come to last', () => {
  const door = (code: string) => ({ distance: 4_000, loads: [load(code, '2027-01-01')] });
  expect(codes(loadingOrder([door('A'), door('B')]))).toEqual(['B', 'A']);
});

test('nothing is left behind or loaded twice, and nothing of a farther door stands before what is nearer', () => {
  const stops = fc.array(
    fc.record({
      distance: fc.nat(20_000),
      loads: fc.array(
        fc.record({
          code: fc.uuid(),
          giftClosesOn: fc.constantFrom('2026-12-01', '2027-01-01', '2027-02-01'),
        }),
        { maxLength: 4 },
      ),
    }),
    { maxLength: 5 },
  );
  fc.assert(
    fc.property(stops, (doors) => {
      const distanceOf = new Map(
        doors.flatMap(({ distance, loads }) => loads.map(({ code }) => [code, distance])),
      );
      const loaded = codes(loadingOrder(doors));
      expect(loaded.toSorted()).toEqual(doors.flatMap(({ loads }) => codes(loads)).toSorted());
      const distances = loaded.map((code) => distanceOf.get(code) ?? 0);
      expect(distances).toEqual(distances.toSorted((a, b) => b - a));
    }),
  );
});
