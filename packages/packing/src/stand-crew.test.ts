import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Block, CAN_LINE, placeCrew } from './line-crew.ts';
import { type Helper, type Spell, standCrew } from './stand-crew.ts';

const blocksOf = (people: number) => placeCrew(CAN_LINE, people)?.blocks ?? [];
const stand = (people: number, helpers: readonly Helper[], spells: number) =>
  standCrew({ blocks: blocksOf(people), stations: CAN_LINE }, helpers, spells);
const helper = (personId: string, wish: Partial<Helper> = {}): Helper => ({
  ...{ personId, maySeam: false, mayLift: true, seatedOnly: false, isUnder16: false, lastStations: [] },
  ...wish,
});

// Six people: three fill, weigh and put the packet in, one seams, two wipe, label and box.
const SIX = ['ada', 'ben', 'cy', 'dora', 'eve', 'fay'].map((personId) =>
  helper(personId, { maySeam: personId === 'cy' || personId === 'eve', mayLift: personId !== 'fay' }),
);

test('each block has its people, the trained one closes the cans, and those two take turns at it', () => {
  const spells = stand(6, SIX, 4);
  for (const { blocks, resting } of spells) {
    expect(blocks.map(({ personIds }) => personIds.length)).toEqual([3, 1, 2]);
    expect(blocks.map(({ missing }) => missing)).toEqual([0, 0, 0]);
    expect(resting).toEqual([]);
  }
  const atTheSeamer = spells.map(({ blocks }) => blocks[1]?.personIds[0]);
  expect(atTheSeamer.toSorted()).toEqual(['cy', 'cy', 'eve', 'eve']);
  expect(atTheSeamer[0]).not.toBe(atTheSeamer[1]);
});

test('nobody stays where they stood when the rest can change', () => {
  const [first, second] = stand(6, SIX, 2);
  const labelling = (spell: typeof first) => spell?.blocks[2]?.personIds ?? [];
  expect(labelling(first).filter((who) => labelling(second).includes(who))).toEqual([]);
});

test('where nobody is trained the seamer stays empty, and says so', () => {
  const untrained = SIX.map((one) => ({ ...one, maySeam: false }));
  const [spell] = stand(6, untrained, 1);
  expect(spell?.blocks.map(({ missing }) => missing)).toEqual([0, 1, 0]);
  expect(spell?.resting).toHaveLength(1);
});

test('where nobody may lift a bag one place at the filling stays open', () => {
  const unfit = SIX.map((one) => ({ ...one, mayLift: false }));
  const [spell] = stand(6, unfit, 1);
  expect(spell?.blocks.map(({ missing }) => missing)).toEqual([1, 0, 0]);
});

test('nobody under 16 stands at the machine, whatever was said of training', () => {
  const young = SIX.map((one) => ({ ...one, maySeam: true, isUnder16: one.personId !== 'eve' }));
  expect(stand(6, young, 3).map(({ blocks }) => blocks[1]?.personIds)).toEqual([['eve'], ['eve'], ['eve']]);
  const [spell] = stand(
    6,
    young.map((one) => ({ ...one, isUnder16: true })),
    1,
  );
  expect(spell?.blocks[1]).toMatchObject({ personIds: [], missing: 1 });
});

// Fill 30, weigh 18 and the packet 6 are 54 s of work; three people are 18 s each, so the 24 seated seconds are one chair.
test('who works seated sits at the labels, or has the one chair at the scale', () => {
  const seated = ['ada', 'ben', 'cy'].map((personId) =>
    helper(personId, { seatedOnly: true, maySeam: true }),
  );
  const standing = ['dora', 'eve', 'fay'].map((personId) => helper(personId, { maySeam: true }));
  for (const { blocks } of stand(6, [...seated, ...standing], 4)) {
    const sit = (at: number) =>
      blocks[at]?.personIds.filter((id) => seated.some((one) => one.personId === id)).length;
    expect([sit(0), sit(1), sit(2)]).toEqual([1, 0, 2]);
    expect(blocks.map(({ missing }) => missing)).toEqual([0, 0, 0]);
  }
});

// Four people: two fill, weigh and put the packet in, 27 s each; the 24 seated seconds are less, so a chair there holds the line up.
test('a chair is set only where all of a person’s work is done from it', () => {
  const crew = [helper('ada', { seatedOnly: true }), helper('ben', { seatedOnly: true }), helper('cy')];
  const [spell] = stand(4, crew, 1);
  expect(spell?.blocks.map(({ personIds }) => personIds)).toEqual([['cy'], [], ['ada']]);
  expect(spell?.resting).toEqual(['ben']);
});

test('a day begins with other stations than the last one, and who has no other stays', () => {
  const last = (stations: readonly string[]) => ({ lastStations: stations, maySeam: true });
  const crew = [helper('ada', last(['fill'])), helper('ben', last(['seam'])), helper('cy', last(['label']))];
  const three = stand(3, crew, 1)[0]?.blocks.map(({ personIds }) => personIds[0]);
  expect(three).toEqual(['cy', 'ada', 'ben']); // and not ben, cy, ada: the first seat is nearer to the front
  const one = crew.map((who) => ({ ...who, maySeam: who.personId === 'ben' }));
  expect(stand(3, one, 1)[0]?.blocks.map(({ personIds }) => personIds[0])).toEqual(['cy', 'ben', 'ada']);
});

test('of equals the one listed first stands nearer to the front, and the last rests', () => {
  const crew = ['ada', 'ben', 'cy', 'dora'].map((personId) => helper(personId, { maySeam: true }));
  const [spell] = stand(3, crew, 1);
  expect(spell?.blocks.map(({ personIds }) => personIds)).toEqual([['ada'], ['ben'], ['cy']]);
  expect(spell?.resting).toEqual(['dora']);
});

const someHelpers = (maxLength: number) =>
  fc
    .array(
      fc.record({
        ...{
          maySeam: fc.boolean(),
          mayLift: fc.boolean(),
          seatedOnly: fc.boolean(),
          isUnder16: fc.boolean(),
        },
        lastStations: fc.subarray(['fill', 'seam', 'label'], { maxLength: 1 }),
      }),
      { maxLength },
    )
    .map((list) => list.map((one, at): Helper => ({ personId: `p${at}`, ...one })));

const mayClose = (one: Helper | undefined) => one?.maySeam === true && !one.isUnder16;

test('nobody stands twice or where they may not, and no place is open that somebody at rest may take', () => {
  fc.assert(
    fc.property(
      someHelpers(8),
      fc.integer({ min: 3, max: 8 }),
      fc.integer({ min: 1, max: 5 }),
      (helpers, people, count) => {
        for (const spell of stand(people, helpers, count)) {
          const standing = spell.blocks.flatMap(({ personIds }) => personIds);
          expect([...standing, ...spell.resting].toSorted()).toEqual(
            helpers.map(({ personId }) => personId).toSorted(),
          );
          const of = (personId: string) => helpers.find((one) => one.personId === personId);
          const [filling, seaming, labelling] = spell.blocks;
          expect(seaming?.personIds.every((id) => mayClose(of(id)) && !of(id)?.seatedOnly)).toBe(true);
          const lifters = filling?.personIds.filter((id) => of(id)?.mayLift).length ?? 0;
          if (filling?.missing === 0) expect(lifters).toBeGreaterThan(0);
          const resting = spell.resting.map(of);
          if ((seaming?.missing ?? 0) > 0)
            expect(resting.some((one) => mayClose(one) && !one?.seatedOnly)).toBe(false);
          if ((labelling?.missing ?? 0) > 0) expect(resting).toEqual([]);
        }
      },
    ),
  );
});

/** Every way to stand, person by person: a block of the line, or null for rest. */
const everyWay = (count: number, blocks: number): (number | null)[][] =>
  count === 0
    ? [[]]
    : everyWay(count - 1, blocks).flatMap((way) =>
        [...Array.from({ length: blocks }, (_, at) => at), null].map((one) => [...way, one]),
      );

type Past = { readonly stood: readonly number[][]; readonly rested: readonly number[] };
/** Chairs by hand: of 54 s at the front 24 are seated, all at the labels, none at the machine. */
const chairsOf = ({ stations, people }: Block) =>
  stations.includes('seam') ? 0 : stations.includes('fill') ? Math.floor((people * 24) / 54) : people;

/** What a way is worth by the rules in their order, the least first; null where somebody may not stand so. */
function worthOf(
  way: readonly (number | null)[],
  helpers: readonly Helper[],
  blocks: readonly Block[],
  past: Past,
) {
  let bare = 0;
  let open = 0;
  for (const [at, block] of blocks.entries()) {
    const here = helpers.filter((_, who) => way[who] === at);
    if (here.length > block.people) return null;
    if (block.stations.includes('seam') && !here.every(mayClose)) return null;
    const chairs = chairsOf(block);
    if (here.filter(({ seatedOnly }) => seatedOnly).length > chairs) return null;
    // The place that can't be done without: somebody who stands and lifts at the bags, anybody who may elsewhere.
    const isFilling = block.stations.includes('fill');
    const leads = isFilling ? here.some((one) => one.mayLift && !one.seatedOnly) : here.length > 0;
    if (isFilling && !leads && here.length > block.people - 1) return null;
    if (!leads) bare += 1;
    open += block.people - here.length;
  }
  const sum = (each: (who: number, at: number | null) => number) =>
    way.reduce<number>((total, at, who) => total + each(who, at), 0);
  const again = sum((who, at) => (at === null ? 0 : (past.stood[who]?.[at] ?? 0)));
  const rests = sum((who, at) => (at === null ? (past.rested[who] ?? 0) : 0));
  const repeats = sum((who, at) =>
    at !== null && blocks[at]?.stations.some((name) => helpers[who]?.lastStations.includes(name)) ? 1 : 0,
  );
  return [bare, open, again, rests, repeats, ...way.map((at) => at ?? blocks.length)];
}

const inOrder = (a: readonly number[], b: readonly number[]) =>
  a.map((one, at) => one - (b[at] ?? 0)).find((difference) => difference !== 0) ?? 0;

const wayOf = ({ blocks }: Spell, helpers: readonly Helper[]) =>
  helpers.map(({ personId }) => {
    const at = blocks.findIndex(({ personIds }) => personIds.includes(personId));
    return at === -1 ? null : at;
  });

test('each spell is the best of all ways to stand, by the rules in their order, after those before it', () => {
  fc.assert(
    fc.property(
      someHelpers(5),
      fc.integer({ min: 3, max: 6 }),
      fc.integer({ min: 1, max: 3 }),
      (helpers, people, count) => {
        const blocks = blocksOf(people);
        const past = { stood: helpers.map(() => blocks.map(() => 0)), rested: helpers.map(() => 0) };
        for (const spell of stand(people, helpers, count)) {
          const worths = everyWay(helpers.length, blocks.length).flatMap((way) => {
            const worth = worthOf(way, helpers, blocks, past);
            return worth ? [worth] : [];
          });
          const taken = wayOf(spell, helpers);
          expect(worthOf(taken, helpers, blocks, past)).toEqual(worths.toSorted(inOrder)[0]);
          for (const [who, at] of taken.entries()) {
            if (at === null) past.rested[who] = (past.rested[who] ?? 0) + 1;
            else (past.stood[who] as number[])[at] = (past.stood[who]?.[at] ?? 0) + 1;
          }
        }
      },
    ),
    { numRuns: 60 },
  );
}, 30_000);
