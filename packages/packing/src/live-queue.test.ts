import fc from 'fast-check';
import { expect, test } from 'vitest';
import { longestQueue, type QueueWord, soonerMinutes } from './live-queue.ts';

const STATIONS = ['fill', 'weigh', 'seam', 'label'];
const word = (station: string, waiting: number, saidAtMs: number): QueueWord => ({
  station,
  waiting,
  saidAtMs,
});
/** A container each hundred milliseconds, the first at 100. */
const closed = (count: number) => Array.from({ length: count }, (_, at) => 100 * (at + 1));

test.for([
  { because: 'nobody said anything', said: [], count: 20, longest: null },
  { because: 'nothing waits anywhere', said: [word('seam', 0, 1500)], count: 15, longest: null },
  {
    because: 'the longest of two',
    said: [word('seam', 3, 1500), word('label', 5, 1500)],
    count: 15,
    longest: { station: 'label', waiting: 5 },
  },
  {
    because: 'ten were closed since it was said: nobody knows any more',
    said: [word('label', 5, 450)],
    count: 14, // the last ten are 500 to 1400
    longest: null,
  },
  {
    because: 'nine were closed since it was said',
    said: [word('label', 5, 550)],
    count: 14,
    longest: { station: 'label', waiting: 5 },
  },
  {
    // Of 600 to 1400 and now, three had twelve (600, 700, 800) and seven had two: 50 over ten.
    because: 'a queue that was worked off weighs as long as it stood',
    said: [word('label', 12, 550), word('label', 2, 850), word('seam', 4, 1400)],
    count: 14,
    longest: { station: 'label', waiting: 5 },
  },
  {
    because: 'a tie names the station nearer to the front',
    said: [word('label', 2, 1), word('fill', 2, 2)],
    count: 0,
    longest: { station: 'fill', waiting: 2 },
  },
])('$because', ({ said, count, longest }) => {
  expect(longestQueue(STATIONS, said, closed(count))).toEqual(longest);
});

test('what is named is a station of the line, and never longer than what was said of it', () => {
  const words = fc.array(
    fc.record({
      ...{ station: fc.constantFrom(...STATIONS), waiting: fc.nat(30), saidAtMs: fc.nat(3000) },
    }),
  );
  fc.assert(
    fc.property(words, fc.nat(25), (said, count) => {
      const longest = longestQueue(STATIONS, said, closed(count));
      if (longest === null) return;
      const most = said.filter(({ station }) => station === longest.station).map(({ waiting }) => waiting);
      expect(longest.waiting).toBeGreaterThan(0);
      expect(longest.waiting).toBeLessThanOrEqual(Math.max(...most));
      // The order in which phones send does not matter, but where two speak of one moment.
      if (new Set(said.map(({ saidAtMs }) => saidAtMs)).size === said.length)
        expect(longestQueue(STATIONS, said.toReversed(), closed(count))).toEqual(longest);
    }),
  );
});

test.for([
  { because: '5 s less for 50 containers are 250 s', wish: [27, 22, 50], minutes: 4 },
  { because: 'less than a minute is none', wish: [27, 26, 59], minutes: 0 },
  { because: 'one more there makes no container sooner', wish: [24, 24, 90], minutes: 0 },
  { because: 'a line can’t get slower by it', wish: [24, 30, 90], minutes: 0 },
  { because: 'more were closed than were planned', wish: [27, 22, -3], minutes: 0 },
] as const)(
  'one person more: $because',
  ({ wish: [cycleSeconds, oneMoreSeconds, containersLeft], minutes }) => {
    expect(soonerMinutes({ cycleSeconds, oneMoreSeconds, containersLeft })).toBe(minutes);
  },
);
