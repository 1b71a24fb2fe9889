import { createHash } from 'node:crypto';

const hashOf = (seed: string, code: string): string =>
  createHash('sha256').update(`${seed}\n${code}`, 'utf8').digest('hex');

/**
 * Draws from codes by a seed: each code gets the SHA-256 of `seed`, a line feed and the code, and those with the smallest
 * hashes are drawn, in that order. Nothing else goes in, so whoever knows the seed and the codes draws the same by hand,
 * for example with `printf 'seed\nCODE' | sha256sum`.
 */
function drawCodes(seed: string, codes: readonly string[], count: number): string[] {
  const hashed = codes.map((code) => ({ code, hash: hashOf(seed, code) }));
  hashed.sort((a, b) => (a.hash < b.hash ? -1 : a.hash > b.hash ? 1 : a.code < b.code ? -1 : 1));
  return hashed.slice(0, count).map(({ code }) => code);
}

/** Places of each kind among the ten: what has no places of its own is drawn only where another kind leaves some. */
export const PLACES = { bag: 4, container: 3, entry: 3 } as const;
export type TraceKind = keyof typeof PLACES;
const TRACE_KINDS: readonly TraceKind[] = ['bag', 'container', 'entry'];

/**
 * Draws a sample of all kinds: first each kind its own places by `drawCodes`; places that a kind can't fill go to the
 * smallest hashes of what is left, whatever its kind. Codes of different kinds are never alike.
 */
export function drawSample(
  seed: string,
  codes: Readonly<Record<TraceKind, readonly string[]>>,
): Record<TraceKind, string[]> {
  const own = {
    bag: drawCodes(seed, codes.bag, PLACES.bag),
    container: drawCodes(seed, codes.container, PLACES.container),
    entry: drawCodes(seed, codes.entry, PLACES.entry),
  };
  const drawn = new Set(TRACE_KINDS.flatMap((kind) => own[kind]));
  const places = PLACES.bag + PLACES.container + PLACES.entry;
  const rest = TRACE_KINDS.flatMap((kind) => codes[kind]).filter((code) => !drawn.has(code));
  const more = new Set(drawCodes(seed, rest, places - drawn.size));
  const withMore = (kind: TraceKind) => [
    ...own[kind],
    ...drawCodes(
      seed,
      codes[kind].filter((code) => more.has(code)),
      places,
    ),
  ];
  return { bag: withMore('bag'), container: withMore('container'), entry: withMore('entry') };
}
