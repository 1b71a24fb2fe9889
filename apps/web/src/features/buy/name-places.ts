/** A level part of a drawn line, in pixels from the top left. */
export type Level = { readonly from: number; readonly to: number; readonly y: number };
/** Where words stand already; a wall is in the way at every height. */
export type Obstacle = {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly isWall: boolean;
};
type Plot = { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
export type NamePlace = { readonly x: number; readonly y: number };

const PLACES = 14;
const LINE_HEIGHT = 18;
const ABOVE = -7;
const BELOW = 18;

/**
 * Where the name of each line is written: just above or below it, where it is farthest from every other line and
 * from words that stand already. Units: pixels. A line of which nothing is drawn gets no place.
 */
export function placeNames(
  lines: readonly (readonly Level[])[],
  widths: readonly number[],
  { plot, avoid }: { plot: Plot; avoid: readonly Obstacle[] },
): (NamePlace | null)[] {
  const taken = [...avoid];
  return lines.map((levels, at) => {
    const width = widths[at] ?? 0;
    const others = lines.filter((_, other) => other !== at);
    const best = candidatesOf(levels, width, plot)
      .map((place) => ({ place, room: roomAt(place, width, { own: levels, others, taken }) }))
      .toSorted((a, b) => b.room - a.room)[0];
    if (!best) return null;
    taken.push({ ...best.place, width, isWall: false });
    return best.place;
  });
}

function candidatesOf(levels: readonly Level[], width: number, plot: Plot): NamePlace[] {
  const room = plot.right - plot.left - width;
  return Array.from(
    { length: PLACES },
    (_, at) => plot.left + (Math.max(room, 0) * at) / (PLACES - 1),
  ).flatMap((x) => {
    const under = levelsUnder(levels, x, width).map(({ y }) => y);
    if (under.length === 0) return [];
    return [
      { x, y: Math.min(...under) + ABOVE },
      { x, y: Math.max(...under) + BELOW },
    ].filter(({ y }) => y > plot.top && y < plot.bottom);
  });
}

const levelsUnder = (levels: readonly Level[], x: number, width: number) =>
  levels.filter(({ from, to }) => to > x && from < x + width);

/** Pixels to the nearest other line or word; a steep own line counts against a place, and so does a wall. */
function roomAt(
  { x, y }: NamePlace,
  width: number,
  at: {
    own: readonly Level[];
    others: readonly (readonly Level[])[];
    taken: readonly Obstacle[];
  },
): number {
  const middle = y - 5;
  const gaps = at.others.flatMap((levels) =>
    levelsUnder(levels, x, width).map((level) => Math.abs(level.y - middle)),
  );
  const words = at.taken
    .filter((word) => word.x < x + width && word.x + word.width > x)
    .map((word) => (word.isWall ? 0 : Math.max(0, Math.abs(word.y - y) - LINE_HEIGHT + 8)));
  const own = levelsUnder(at.own, x, width).map((level) => level.y);
  const steep = own.length === 0 ? 0 : Math.max(...own) - Math.min(...own);
  return Math.min(60, ...gaps, ...words) - steep * 0.5;
}
