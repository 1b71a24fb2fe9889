import { assert } from '@sheafbook/units';
import type { Block } from './line-crew.ts';

/**
 * Somebody who comes to help, as far as it matters where they stand: trained at the machine, and fit to lift a full bag.
 * Units: none. Errors: none by itself.
 */
export type Helper = {
  readonly personId: string;
  readonly maySeam: boolean;
  readonly mayLift: boolean;
};

/**
 * Who stands where in one spell: each block of stations with its people, in the order of the line. `missing` counts the hands
 * that a block still wants, and `resting` those who are over: they carry, fetch and rest.
 * Units: people. Errors: none by itself.
 */
export type Spell = {
  readonly blocks: readonly {
    readonly stations: readonly string[];
    readonly personIds: readonly string[];
    readonly missing: number;
  }[];
  readonly resting: readonly string[];
};

/**
 * How long people stand at one station before they change.
 * Units: minutes. Errors: none. Source: common practice, no source.
 */
export const SPELL_MINUTES = 45;

/** Stations at which a full bag is lifted. */
const LIFTING = ['fill'];
const MACHINES = ['seam'];

type Place = { readonly block: number; readonly needsSeam: boolean; readonly needsLift: boolean };

/**
 * Who stands where through a day, spell by spell, so that everybody changes stations: only who is trained stands at the
 * machine, and one at the filling who may lift a full bag. What a person may not do is never asked of them: a place that nobody
 * may take stays open and is counted as missing. Of those who may, the one takes a place who has stood at that block least
 * often, then who has rested most often, then who may do less elsewhere, then who comes first in the list.
 * Units: people, spells. Shape: as many spells as asked for. Errors: AssertionError when fewer than one spell is asked for.
 * Source: common practice, no source.
 */
export function standCrew(blocks: readonly Block[], helpers: readonly Helper[], spells: number): Spell[] {
  assert(spells >= 1, 'a day has a spell at least');
  const stood = new Map<string, number>();
  const key = (personId: string, block: number) => `${personId} ${block}`;
  const rested = new Map<string, number>();
  return Array.from({ length: spells }, () => {
    const taken = placeAll(placesOf(blocks), helpers, {
      times: (personId, block) => stood.get(key(personId, block)) ?? 0,
      rests: (personId) => rested.get(personId) ?? 0,
    });
    for (const [personId, block] of taken) {
      stood.set(key(personId, block), (stood.get(key(personId, block)) ?? 0) + 1);
    }
    const resting = helpers.filter(({ personId }) => !taken.has(personId)).map(({ personId }) => personId);
    for (const personId of resting) rested.set(personId, (rested.get(personId) ?? 0) + 1);
    return {
      blocks: blocks.map(({ stations, people }, at) => {
        const personIds = helpers
          .filter(({ personId }) => taken.get(personId) === at)
          .map(({ personId }) => personId);
        return { stations, personIds, missing: people - personIds.length };
      }),
      resting,
    };
  });
}

/** The places of a line, those that fewest may take first. */
function placesOf(blocks: readonly Block[]): Place[] {
  const places = blocks.flatMap(({ stations, people }, block) =>
    Array.from({ length: people }, (_, at) => ({
      block,
      needsSeam: stations.some((name) => MACHINES.includes(name)),
      needsLift: at === 0 && stations.some((name) => LIFTING.includes(name)),
    })),
  );
  const strictness = ({ needsSeam, needsLift }: Place) => (needsSeam ? 2 : 0) + (needsLift ? 1 : 0);
  return places.toSorted((a, b) => strictness(b) - strictness(a));
}

type Past = {
  readonly times: (personId: string, block: number) => number;
  readonly rests: (personId: string) => number;
};

const mayTake = (helper: Helper, place: Place): boolean =>
  (helper.maySeam || !place.needsSeam) && (helper.mayLift || !place.needsLift);

/** Person by person the block that each takes. A place is filled by moving others on where that fills one more. */
function placeAll(
  places: readonly Place[],
  helpers: readonly Helper[],
  past: Past,
): ReadonlyMap<string, number> {
  const holders: (Helper | undefined)[] = places.map(() => undefined);
  const choice = (place: Place) =>
    helpers
      .filter((helper) => mayTake(helper, place))
      .toSorted(
        (a, b) =>
          past.times(a.personId, place.block) - past.times(b.personId, place.block) ||
          past.rests(b.personId) - past.rests(a.personId) ||
          skills(a) - skills(b),
      );
  const fill = (at: number, asked: Set<string>): boolean => {
    for (const helper of choice(places[at] as Place)) {
      if (asked.has(helper.personId)) continue;
      asked.add(helper.personId);
      const held = holders.indexOf(helper);
      if (held === -1 || (held !== at && fill(held, asked))) {
        if (held !== -1 && holders[held] === helper) holders[held] = undefined;
        holders[at] = helper;
        return true;
      }
    }
    return false;
  };
  for (const at of places.keys()) fill(at, new Set());
  return new Map(
    holders.flatMap((helper, at) => (helper ? [[helper.personId, (places[at] as Place).block]] : [])),
  );
}

/** Whoever can do less is placed where less is asked, so that the others are free for the rest. */
const skills = ({ maySeam, mayLift }: Helper): number => (maySeam ? 2 : 0) + (mayLift ? 1 : 0);
