import { expect, test } from 'vitest';
import { placeNames } from './name-places.ts';

const PLOT = { left: 0, right: 400, top: 0, bottom: 300 };
const flat = (y: number) => [{ from: 0, to: 400, y }];

test('two lines far apart are each named at their own side, away from the other', () => {
  const [upper, lower] = placeNames([flat(100), flat(130)], [80, 80], { plot: PLOT, avoid: [] });
  expect(upper?.y).toBe(93); // above the upper line
  expect(lower?.y).toBe(148); // below the lower one
});

test('where two lines part, the name stands at the open end', () => {
  const steps = (end: number) => [
    { from: 0, to: 200, y: 100 },
    { from: 200, to: 400, y: end },
  ];
  const places = placeNames([steps(60), steps(200)], [60, 60], { plot: PLOT, avoid: [] });
  expect(places.every((place) => (place?.x ?? 0) >= 200)).toBe(true);
});

test('a name keeps clear of a wall and of words that stand already', () => {
  const wall = { x: 190, y: 0, width: 6, isWall: true };
  const words = { x: 200, y: 93, width: 200, isWall: false };
  const [place] = placeNames([flat(100)], [100], { plot: PLOT, avoid: [wall, words] });
  const crossesWall = (place?.x ?? 0) < 196 && (place?.x ?? 0) + 100 > 190;
  const coversWords = (place?.x ?? 0) + 100 > 200 && place?.y === 93;
  expect({ crossesWall, coversWords }).toEqual({ crossesWall: false, coversWords: false });
});

test('a line of which nothing is drawn has no name in the picture', () => {
  expect(placeNames([[], flat(50)], [50, 50], { plot: PLOT, avoid: [] })[0]).toBeNull();
});
