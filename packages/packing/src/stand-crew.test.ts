import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CAN_LINE, placeCrew } from './line-crew.ts';
import { type Helper, standCrew } from './stand-crew.ts';

const blocksOf = (people: number) => placeCrew(CAN_LINE, people)?.blocks ?? [];
const helper = (personId: string, wish: Partial<Helper> = {}): Helper => ({
  ...{ personId, maySeam: false, mayLift: true },
  ...wish,
});

// Six people: three fill, weigh and put the packet in, one seams, two wipe, label and box.
const SIX = ['ada', 'ben', 'cy', 'dora', 'eve', 'fay'].map((personId) =>
  helper(personId, { maySeam: personId === 'cy' || personId === 'eve', mayLift: personId !== 'fay' }),
);

test('each block has its people, the trained one closes the cans, and those two take turns at it', () => {
  const spells = standCrew(blocksOf(6), SIX, 4);
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
  const [first, second] = standCrew(blocksOf(6), SIX, 2);
  const labelling = (spell: typeof first) => spell?.blocks[2]?.personIds ?? [];
  expect(labelling(first).filter((who) => labelling(second).includes(who))).toEqual([]);
});

test('where nobody is trained the seamer stays empty, and says so', () => {
  const untrained = SIX.map((one) => ({ ...one, maySeam: false }));
  const [spell] = standCrew(blocksOf(6), untrained, 1);
  expect(spell?.blocks.map(({ missing }) => missing)).toEqual([0, 1, 0]);
  expect(spell?.resting).toHaveLength(1);
});

test('where nobody may lift a bag one place at the filling stays open', () => {
  const unfit = SIX.map((one) => ({ ...one, mayLift: false }));
  const [spell] = standCrew(blocksOf(6), unfit, 1);
  expect(spell?.blocks.map(({ missing }) => missing)).toEqual([1, 0, 0]);
});

const someHelpers = fc
  .array(fc.record({ maySeam: fc.boolean(), mayLift: fc.boolean() }), { maxLength: 8 })
  .map((list) => list.map((one, at): Helper => ({ personId: `p${at}`, ...one })));

test('nobody stands twice or where they may not, and no place is open that somebody at rest may take', () => {
  fc.assert(
    fc.property(
      someHelpers,
      fc.integer({ min: 3, max: 8 }),
      fc.integer({ min: 1, max: 5 }),
      (helpers, people, count) => {
        const blocks = blocksOf(people);
        for (const spell of standCrew(blocks, helpers, count)) {
          const standing = spell.blocks.flatMap(({ personIds }) => personIds);
          expect([...standing, ...spell.resting].toSorted()).toEqual(
            helpers.map(({ personId }) => personId).toSorted(),
          );
          const of = (personId: string) => helpers.find((one) => one.personId === personId);
          const [filling, seaming, ...rest] = spell.blocks;
          expect(seaming?.personIds.every((id) => of(id)?.maySeam)).toBe(true);
          const lifters = filling?.personIds.filter((id) => of(id)?.mayLift).length ?? 0;
          if (filling?.missing === 0) expect(lifters).toBeGreaterThan(0);
          const resting = spell.resting.map(of);
          if ((seaming?.missing ?? 0) > 0) expect(resting.some((one) => one?.maySeam)).toBe(false);
          if (rest.some(({ missing }) => missing > 0)) expect(resting).toEqual([]);
        }
      },
    ),
  );
});
