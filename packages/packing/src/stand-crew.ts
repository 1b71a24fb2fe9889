import { assert, floorFraction, fraction, sumOf } from '@sheafbook/units';
import { cheapestAssignment } from './cheapest-assignment.ts';
import type { Block, Station } from './line-crew.ts';

/**
 * Somebody who comes to help, as far as it matters where they stand: trained at the machine, fit to lift more than 10 kg,
 * able to work at a seated station only, under 16, and where they stood the last time they came.
 * Units: none. Errors: none by itself.
 */
export type Helper = {
  readonly personId: string;
  readonly maySeam: boolean;
  readonly mayLift: boolean;
  readonly seatedOnly: boolean;
  readonly isUnder16: boolean;
  readonly lastStations: readonly string[];
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

/**
 * Stations that can be worked from a chair: weighing, putting the packet in, labelling and the tally of boxes. Filling and
 * closing are done standing.
 * Units: none. Errors: none. Source: common practice, no source.
 */
const SEATED_STATIONS: readonly string[] = ['weigh', 'absorber', 'label', 'box'];

/** Stations at which a full bag is lifted. */
const LIFTING = ['fill'];
const MACHINES = ['seam'];

/** `isFirst` is the place that a block can't do without. */
type Place = {
  readonly block: number;
  readonly isFirst: boolean;
  readonly needsSeam: boolean;
  readonly needsLift: boolean;
  readonly maySit: boolean;
};

/**
 * Who stands where through a day, spell by spell, so that everybody changes stations. What a person may not do is never asked
 * of them: only who is trained and 16 or older stands at the machine, one at the filling may lift a full bag, and who works
 * seated has a place whose work is all done from a chair; a place that nobody may take stays open and is counted as missing.
 *
 * Each spell is the best one after those before it, by these in their order: fewest stations without the hands that they can't
 * do without; fewest open places; fewest who stand again where they stood today; whoever has rested most stands; fewest who
 * stand where they stood at their last session; then the seat, as helpers are listed: the earlier stands nearer to the front
 * of the line. The day as a whole is not optimised: a spell does not give way for a later one.
 * Units: people, spells. Shape: as many spells as asked for. Errors: AssertionError when fewer than one spell is asked for.
 * Source: the trade's job map, section 7.5; which stations are seated is common practice, no source.
 */
export function standCrew(
  { blocks, stations }: { readonly blocks: readonly Block[]; readonly stations: readonly Station[] },
  helpers: readonly Helper[],
  spells: number,
): Spell[] {
  assert(spells >= 1, 'a day has a spell at least');
  const places = blocks.flatMap((block, at) => placesOf(block, at, stations));
  const stood = helpers.map(() => blocks.map(() => 0));
  const rested = helpers.map(() => 0);
  return Array.from({ length: spells }, () => {
    const taken = placeAll({ places, blocks, helpers, stood, rested, spells });
    for (const [at, block] of taken.entries()) {
      const own = stood[at] as number[];
      if (block === null) rested[at] = (rested[at] ?? 0) + 1;
      else own[block] = (own[block] ?? 0) + 1;
    }
    const idsAt = (block: number | null) =>
      helpers.filter((_, at) => taken[at] === block).map(({ personId }) => personId);
    return {
      blocks: blocks.map((block, at) => {
        const personIds = idsAt(at);
        return { stations: block.stations, personIds, missing: block.people - personIds.length };
      }),
      resting: idsAt(null),
    };
  });
}

/** The places of a block. As many may be sat at as have all their work at its seated stations, at the pace of the plan. */
function placesOf(block: Block, at: number, stations: readonly Station[]): Place[] {
  const secondsAt = (names: readonly string[]) =>
    sumOf(stations.filter(({ name }) => names.includes(name)).map(({ secondsPerUnit }) => secondsPerUnit));
  const seatedSeconds = secondsAt(block.stations.filter((name) => SEATED_STATIONS.includes(name)));
  const workSeconds = Math.max(1, secondsAt(block.stations));
  const seats = Number(floorFraction(fraction(block.people * seatedSeconds, workSeconds)));
  return Array.from({ length: block.people }, (_, index) => ({
    block: at,
    isFirst: index === 0,
    needsSeam: block.stations.some((name) => MACHINES.includes(name)),
    needsLift: index === 0 && block.stations.some((name) => LIFTING.includes(name)),
    maySit: index >= block.people - seats,
  }));
}

/** Whether a helper may take a place at all. */
const mayTake = (helper: Helper, place: Place): boolean =>
  ((helper.maySeam && !helper.isUnder16) || !place.needsSeam) &&
  (helper.mayLift || !place.needsLift) &&
  (!helper.seatedOnly || place.maySit);

type Day = {
  readonly places: readonly Place[];
  readonly blocks: readonly Block[];
  readonly helpers: readonly Helper[];
  readonly stood: readonly (readonly number[])[];
  readonly rested: readonly number[];
  readonly spells: number;
};

/**
 * Helper by helper the block that each takes, null where they rest. What comes first weighs more than all that comes after it
 * together, so that the cheapest way is the first of all ways by every rule in its turn, and there is only one.
 */
function placeAll({ places, blocks, helpers, stood, rested, spells }: Day): (number | null)[] {
  const many = BigInt(helpers.length + 1);
  const often = BigInt(helpers.length * spells + 1);
  const bySeat = BigInt(blocks.length + 1);
  const repeat = bySeat ** many;
  const rest = repeat * many;
  const again = rest * often;
  const open = again * often;
  const uncovered = open * many;
  const costs = helpers.map((helper, at) => {
    const seat = bySeat ** BigInt(helpers.length - 1 - at);
    const standing = places.map((place) => {
      if (!mayTake(helper, place)) return null;
      const isRepeat = blocks[place.block]?.stations.some((name) => helper.lastStations.includes(name));
      return (
        again * BigInt(stood[at]?.[place.block] ?? 0) +
        (isRepeat ? repeat : 0n) +
        seat * BigInt(place.block) -
        open -
        (place.isFirst ? uncovered : 0n)
      );
    });
    const resting = rest * BigInt(rested[at] ?? 0) + seat * BigInt(blocks.length);
    return [...standing, ...helpers.map((_, other) => (other === at ? resting : null))];
  });
  return cheapestAssignment(costs).map((column) => places[column]?.block ?? null);
}
