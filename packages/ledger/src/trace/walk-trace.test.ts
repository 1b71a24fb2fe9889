import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { isOutside, type VesselKind } from '../outside.ts';
import { gramsHeld, traceBalance, traceFlows } from './trace-balance.ts';
import { type TraceMovement, type TracePoint, vesselKey, walkTrace } from './walk-trace.ts';

const kindOf = (vesselId: string): VesselKind => {
  if (vesselId.startsWith('bag')) return 'bag';
  if (vesselId.startsWith('can')) return 'container';
  return vesselId.startsWith('kitchen') ? 'kitchen' : (vesselId as VesselKind);
};
const point = (vesselId: string, ownerId: string, lotId = 'wheat'): TracePoint => ({
  ...{ vesselId, ownerId, lotId, vesselKind: kindOf(vesselId) },
});
const move = (
  [from, fromOwner]: readonly [string, string],
  [to, toOwner]: readonly [string, string],
  amountGrams: number,
  more: Partial<TraceMovement> = {},
): TraceMovement => ({
  ...{ entryId: `${from} ${to} ${amountGrams}`, reversesEntryId: null, amountGrams, end: '' },
  ...{ source: point(from, fromOwner), destination: point(to, toOwner) },
  ...more,
});

// Job map 12, worked example: the mark K-77 is bags 2 and 3, 45,360 g; bag 1 of the same food has another mark.
const K_77: TraceMovement[] = [
  move(['supplier', 'nobody'], ['bag 1', 'nobody'], 22_680),
  move(['supplier', 'nobody'], ['bag 2', 'nobody'], 22_680),
  move(['supplier', 'nobody'], ['bag 3', 'nobody'], 22_680),
  move(['bag 2', 'nobody'], ['bag 2', 'ashdown'], 22_680),
  move(['bag 3', 'nobody'], ['bag 3', 'birchall'], 22_680),
  ...Array.from({ length: 8 }, (_, at) => move(['bag 2', 'ashdown'], [`can a${at}`, 'ashdown'], 2_600)),
  ...Array.from({ length: 4 }, (_, at) => move(['bag 3', 'birchall'], [`can b${at}`, 'birchall'], 2_600)),
  ...Array.from({ length: 4 }, (_, at) => move([`can b${at}`, 'birchall'], ['given', 'birchall'], 2_600)),
  move(['bag 3', 'birchall'], ['eaten', 'birchall'], 6_200),
];
const linesOf = (movements: readonly TraceMovement[], isInside: (at: TracePoint) => boolean) =>
  traceBalance(movements, isInside).lines.map(({ way, vesselKind, ownerId, grams }) => [
    ...[way, vesselKind, ownerId, grams],
  ]);
const insideOf = (startVesselIds: readonly string[], movements: readonly TraceMovement[]) => {
  const trace = walkTrace({ movements, startVesselIds });
  const keys = new Set(trace.reached.map(vesselKey));
  return { trace, isInside: (at: TracePoint) => keys.has(vesselKey(at)) };
};

describe('the mark K-77 of the job map', () => {
  const { trace, isInside } = insideOf(['bag 2', 'bag 3'], K_77);
  test('adds up: 20,800 + 1,880 + 10,400 + 6,200 + 6,080 = 45,360 g, and all of it is known', () => {
    expect(linesOf(trace.movements, isInside)).toEqual([
      ['in', 'supplier', 'nobody', 45_360],
      ['out', 'given', 'birchall', 10_400],
      ['out', 'eaten', 'birchall', 6_200],
      ['left', 'container', 'ashdown', 20_800],
      ['left', 'bag', 'birchall', 6_080],
      ['left', 'bag', 'ashdown', 1_880],
    ]);
    expect(traceBalance(trace.movements, isInside)).toMatchObject({
      ...{ inGrams: 45_360, outGrams: 16_600, leftGrams: 28_760, knownPermille: 1000 },
    });
  });
  test('reaches 2 bags and 8 + 4 cans, and not the bag of the other mark', () => {
    const kinds = trace.reached.map(({ vesselKind }) => vesselKind);
    expect([kinds.filter((kind) => kind === 'bag').length, kinds.length]).toEqual([2, 14]);
    expect(trace.reached.some(({ vesselId }) => vesselId === 'bag 1')).toBe(false);
    expect(trace.before).toEqual([]);
  });
  test('a household’s own part adds up by itself', () => {
    const own = (at: TracePoint) => isInside(at) && at.ownerId === 'birchall';
    expect(linesOf(trace.movements, own)).toEqual([
      ['in', 'bag', 'birchall', 22_680],
      ['out', 'given', 'birchall', 10_400],
      ['out', 'eaten', 'birchall', 6_200],
      ['left', 'bag', 'birchall', 6_080],
    ]);
  });
  test('50 g that went unexplained leave 998 of a thousand known', () => {
    const lost = [...K_77, move(['bag 2', 'ashdown'], ['unexplained', 'ashdown'], 50)];
    const whole = insideOf(['bag 2', 'bag 3'], lost);
    expect(traceBalance(whole.trace.movements, whole.isInside).knownPermille).toBe(998); // 45,310 / 45,360
  });
});

test('a can leads back to its bag, and what met in one vessel is reached whole', () => {
  const mixed = [
    ...K_77,
    move(['bag 1', 'common'], ['can c', 'common'], 1_000),
    move(['bag 2', 'common'], ['can c', 'common'], 500),
  ];
  const back = walkTrace({ movements: mixed, startVesselIds: ['can c'] });
  expect(back.before.map(({ vesselId }) => vesselId)).toEqual(['bag 1', 'bag 2']);
  const { trace, isInside } = insideOf(['bag 2'], mixed);
  expect(linesOf(trace.movements, isInside)).toContainEqual(['in', 'bag', 'common', 1_000]);
});

test('what was undone carried nothing, and what was done again after all did', () => {
  const poured = move(['bag 1', 'ashdown'], ['can', 'ashdown'], 100, { entryId: 'poured' });
  const undone = move(['can', 'ashdown'], ['bag 1', 'ashdown'], 100, {
    ...{ entryId: 'undone', reversesEntryId: 'poured' },
  });
  const redone = { ...poured, entryId: 'redone', reversesEntryId: 'undone' };
  const reach = (movements: readonly TraceMovement[]) =>
    walkTrace({ movements, startVesselIds: ['bag 1'] }).reached.map(({ vesselId }) => vesselId);
  const landed = move(['supplier', 'nobody'], ['bag 1', 'nobody'], 100);
  expect(reach([landed, poured])).toEqual(['bag 1', 'can']);
  expect(reach([landed, poured, undone])).toEqual(['bag 1']);
  expect(reach([landed, poured, undone, redone])).toEqual(['bag 1', 'can']);
});

test('grams can’t go from one lot into another', () => {
  const turned = { ...move(['bag 1', 'a'], ['can', 'a'], 1), destination: point('can', 'a', 'rice') };
  expect(() => walkTrace({ movements: [turned], startVesselIds: ['bag 1'] })).toThrow('stay of that lot');
});

const VESSELS = ['bag 1', 'bag 2', 'can 1', 'can 2', 'can 3', 'can 4', 'kitchen'];
const ENDS = ['eaten', 'given', 'discarded', 'unexplained'];
const OWNERS = ['nobody', 'common', 'ashdown', 'birchall'];

/** A story of any pours, splits and losses in which nothing gives more than it has; some of it is taken back. */
const someStory = fc
  .array(
    fc.record({
      from: fc.constantFrom(...VESSELS),
      to: fc.constantFrom(...VESSELS, ...ENDS),
      fromOwner: fc.constantFrom(...OWNERS),
      toOwner: fc.constantFrom(...OWNERS),
      part: fc.integer({ min: 1, max: 100 }),
      isUndone: fc.boolean(),
    }),
    { maxLength: 40 },
  )
  .map((steps) => {
    const grams = new Map<string, number>();
    const add = (key: string, more: number) => grams.set(key, (grams.get(key) ?? 0) + more);
    const story: TraceMovement[] = [];
    for (const bag of ['bag 1', 'bag 2']) {
      story.push(move(['supplier', 'nobody'], [bag, 'nobody'], 10_000));
      add(`${bag} nobody`, 10_000);
    }
    for (const [at, { from, to, fromOwner, toOwner, part, isUndone }] of steps.entries()) {
      const has = grams.get(`${from} ${fromOwner}`) ?? 0;
      const amount = Math.floor((has * part) / 100);
      if (amount === 0 || (from === to && fromOwner === toOwner)) continue;
      const step = move([from, fromOwner], [to, toOwner], amount, { entryId: `step ${at}` });
      story.push(step);
      if (isUndone) {
        const { source, destination } = step;
        const back = { source: destination, destination: source };
        story.push({ ...step, ...back, entryId: `undone ${at}`, reversesEntryId: step.entryId });
        continue;
      }
      add(`${from} ${fromOwner}`, -amount);
      add(`${to} ${toOwner}`, amount);
    }
    return { story, grams, undone: new Set(story.map(({ reversesEntryId }) => reversesEntryId)) };
  });

describe('of any story of pours and splits', () => {
  test('what came in is what went out and what is left, to the gram, and left is what the vessels hold', () => {
    fc.assert(
      fc.property(someStory, fc.constantFrom(...VESSELS), ({ story, grams }, start) => {
        const { trace, isInside } = insideOf([start], story);
        const all = traceBalance(trace.movements, isInside);
        expect(all.inGrams).toBe(all.outGrams + all.leftGrams);
        const reached = new Set(trace.reached.map(({ vesselId }) => vesselId));
        const held = [...grams].filter(([key]) =>
          VESSELS.some((id) => reached.has(id) && key.startsWith(`${id} `)),
        );
        expect(all.leftGrams).toBe(held.reduce((sum, [, has]) => sum + has, 0));
        const own = traceBalance(trace.movements, (at) => isInside(at) && at.ownerId === 'ashdown');
        expect(own.inGrams).toBe(own.outGrams + own.leftGrams);
        for (const { point: at, grams: has } of gramsHeld(trace.movements, isInside))
          expect(has).toBe(grams.get(`${at.vesselId} ${at.ownerId}`));
      }),
    );
  });

  test('the walk reaches what trying every movement over and over reaches, and no more', () => {
    fc.assert(
      fc.property(someStory, fc.constantFrom(...VESSELS), ({ story, undone }, start) => {
        const standing = story.filter(
          ({ entryId, reversesEntryId }) => reversesEntryId === null && !undone.has(entryId),
        );
        const closure = (from: 'source' | 'destination', to: 'source' | 'destination') => {
          const met = standing.some((step) =>
            [step.source, step.destination].some((at) => at.vesselId === start),
          );
          const found = new Set(met ? [start] : []);
          for (let round = 0; round < VESSELS.length; round += 1)
            for (const step of standing)
              if (found.has(step[from].vesselId) && !isOutside(step[to].vesselKind))
                found.add(step[to].vesselId);
          return found;
        };
        const forward = closure('source', 'destination');
        const back = closure('destination', 'source');
        const trace = walkTrace({ movements: story, startVesselIds: [start] });
        expect(new Set(trace.reached.map(({ vesselId }) => vesselId))).toEqual(forward);
        const before = new Set([...back].filter((id) => !forward.has(id)));
        expect(new Set(trace.before.map(({ vesselId }) => vesselId))).toEqual(before);
        const flows = traceFlows(trace.movements);
        const between = trace.movements.filter((step) => step.source.vesselId !== step.destination.vesselId);
        expect(flows.reduce((sum, { grams }) => sum + grams, 0)).toBe(
          between.reduce((sum, { amountGrams }) => sum + amountGrams, 0),
        );
      }),
    );
  });
});
