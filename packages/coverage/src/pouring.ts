import { smaller } from './sums.ts';

/** Food that ends at one level (a place in the list of last days), and who may eat it. */
export type PouredPile = {
  readonly amount: bigint;
  readonly level: number;
  readonly diets: readonly number[];
};

/**
 * What became of the piles.
 * `leftovers`: what nobody can eat, one per pile. `closedAt`: for each diet the highest level up to which leftover
 * food finds no room even by handing food on, −1 when no leftover may go to it. `isReached`: whether leftover food
 * could take a pile's place. The last two are the smallest cut between food and mouths.
 */
export type Poured = {
  readonly leftovers: readonly bigint[];
  readonly closedAt: readonly number[];
  readonly isReached: readonly boolean[];
};

type Pouring = {
  readonly piles: readonly PouredPile[];
  readonly limits: readonly (readonly bigint[])[];
  readonly leftovers: bigint[];
  readonly eaten: bigint[][]; // [diet][pile]
  readonly through: bigint[][]; // [diet][level]: eaten of piles that end at this level or before
  level: number; // of the pile that is poured now; `through` holds up to here
  closed: Closed;
};

/**
 * Where nothing more can go: diets are full up to a level, with piles that only such diets may eat. Once closed stays
 * closed, since no later pile can take the place of what is eaten there.
 */
type Closed = { readonly closedAt: number[]; readonly isReached: boolean[] };

/** `pile` is put before `diet`; the step before made it free by taking its place at another diet. */
type Step = {
  readonly diet: number;
  readonly level: number;
  readonly pile: number;
  readonly before: Step | null;
};

/**
 * Pours piles into diets so that as much as possible is eaten, the piles that end first served first.
 * `limits[diet][level]` is how much a diet can eat until that level's day, and so the most it can eat of everything
 * that ends by then; it must not fall from one level to the next. Piles come in the order of their levels.
 *
 * This is a maximum flow by augmenting paths. A path hops from diet to diet, not from day to day, which keeps it as
 * short as the number of diets; because piles come in order of their levels, what was eaten of an earlier pile is
 * never less later on, so nothing that ends soon makes way for what keeps.
 */
export function pour(piles: readonly PouredPile[], limits: readonly (readonly bigint[])[]): Poured {
  const levels = limits[0]?.length ?? 0;
  const pouring: Pouring = {
    piles,
    limits,
    leftovers: piles.map(({ amount }) => amount),
    eaten: limits.map(() => piles.map(() => 0n)),
    through: limits.map(() => Array.from({ length: levels }, () => 0n)),
    level: 0,
    closed: { closedAt: limits.map(() => -1), isReached: piles.map(() => false) },
  };
  piles.forEach((pile, position) => {
    advance(pouring, pile.level);
    pourPile(pouring, position);
  });
  return { leftovers: pouring.leftovers, ...pouring.closed };
}

function pourPile(pouring: Pouring, position: number): void {
  while (at(pouring.leftovers, position) > 0n) {
    const end = findRoom(pouring, position);
    if (end === null) return;
    pourAlong(pouring, position, end);
  }
}

function advance(pouring: Pouring, level: number): void {
  for (const through of pouring.through) {
    const sofar = through[pouring.level] ?? 0n;
    through.fill(sofar, pouring.level, level + 1);
  }
  pouring.level = Math.max(pouring.level, level);
}

/**
 * Breadth first from a pile to a diet with room; null when there is none, and all that was seen is closed from then
 * on. A diet is looked at again only when a later level of it comes in sight.
 */
function findRoom(pouring: Pouring, start: number): Step | null {
  const closedAt = [...pouring.closed.closedAt];
  const isReached = [...pouring.closed.isReached];
  const queue: Step[] = [];
  const reach = (pile: number, before: Step | null): void => {
    isReached[pile] = true;
    const { level, diets } = pileAt(pouring, pile);
    for (const diet of diets) if (level > (closedAt[diet] ?? -1)) queue.push({ diet, level, pile, before });
  };
  reach(start, null);
  for (const step of queue) {
    if (step.level <= (closedAt[step.diet] ?? -1)) continue;
    const full = firstFullLevel(pouring, step);
    if (full === null) return step;
    closedAt[step.diet] = full;
    pouring.eaten[step.diet]?.forEach((amount, pile) => {
      if (amount > 0n && !isReached[pile] && pileAt(pouring, pile).level <= full) reach(pile, step);
    });
  }
  pouring.closed = { closedAt, isReached };
  return null;
}

function firstFullLevel(pouring: Pouring, { diet, level }: Step): number | null {
  for (let at = level; at <= pouring.level; at += 1) if (roomAt(pouring, diet, at) === 0n) return at;
  return null;
}

function pourAlong(pouring: Pouring, start: number, end: Step): void {
  const amount = smaller(at(pouring.leftovers, start), roomAlong(pouring, end));
  pouring.leftovers[start] = at(pouring.leftovers, start) - amount;
  put(pouring, end, amount);
  for (const { step, after } of handOvers(end)) {
    put(pouring, step, amount);
    put(pouring, { ...after, diet: step.diet }, -amount);
  }
}

function roomAlong(pouring: Pouring, end: Step): bigint {
  let room = leastRoom(pouring, end, pouring.level);
  for (const { step, after } of handOvers(end)) {
    room = smaller(room, pouring.eaten[step.diet]?.[after.pile] ?? 0n);
    if (after.level > step.level) room = smaller(room, leastRoom(pouring, step, after.level - 1));
  }
  return room;
}

/** Every step but the last, each with the step after it, whose pile it makes free. */
function handOvers(end: Step): { readonly step: Step; readonly after: Step }[] {
  const found: { step: Step; after: Step }[] = [];
  let after = end;
  while (after.before !== null) {
    found.push({ step: after.before, after });
    after = after.before;
  }
  return found;
}

function leastRoom(pouring: Pouring, { diet, level }: Step, lastLevel: number): bigint {
  let room = roomAt(pouring, diet, level);
  for (let at = level + 1; at <= lastLevel; at += 1) room = smaller(room, roomAt(pouring, diet, at));
  return room;
}

function put(pouring: Pouring, { diet, pile, level }: Step, amount: bigint): void {
  const eaten = pouring.eaten[diet] ?? [];
  const through = pouring.through[diet] ?? [];
  eaten[pile] = at(eaten, pile) + amount;
  for (let each = level; each <= pouring.level; each += 1) through[each] = at(through, each) + amount;
}

function roomAt(pouring: Pouring, diet: number, level: number): bigint {
  return (pouring.limits[diet]?.[level] ?? 0n) - (pouring.through[diet]?.[level] ?? 0n);
}

function pileAt(pouring: Pouring, position: number): PouredPile {
  return pouring.piles[position] ?? { amount: 0n, level: 0, diets: [] };
}

function at(values: readonly bigint[], position: number): bigint {
  return values[position] ?? 0n;
}
