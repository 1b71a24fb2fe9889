import fc from 'fast-check';
import { bodyOf } from '../buy.ts';
import * as buy from './story-buy.ts';
import * as home from './story-home.ts';
import * as landing from './story-landing.ts';
import { expectSound, type Model, newModel } from './story-model.ts';
import * as money from './story-money.ts';
import { type Chance, isLikely, type Step, take } from './story-step.ts';
import { type Cast, callerOf, openStory, type Real } from './story-world.ts';

/** What comes next for a buy at each stage, when everything goes as it should. */
async function* nextSteps(real: Real, model: Model): AsyncGenerator<[Step, Partial<Chance>]> {
  const everyone = real.households.map((_, who) => who);
  if (model.stage === 'gathering') yield [buy.fix, {}];
  else if (model.stage === 'fixed') {
    yield* askedDeposits(real);
    for (const nth of [0, 1]) yield [buy.agree, { nth }];
  } else if (model.stage === 'ordered') {
    yield [landing.receive, {}];
    yield [landing.land, {}];
  } else if (model.stage === 'landed') {
    if ((real.ids.invoice ?? []).length === 0) yield [buy.bill, { nth: 1 }];
    for (const nth of [0, 1]) yield [buy.split, { nth, amount: 0 }];
    yield [buy.shareOut, {}];
  } else if (model.stage === 'shared-out') {
    for (const nth of (real.ids.claim ?? []).keys()) yield [buy.refuseClaim, { nth }];
    for (const nth of [0, 1]) yield [buy.split, { nth, amount: 0 }];
    yield [buy.recharge, {}];
    for (const who of everyone) yield [buy.planPickUp, { who }];
    for (const nth of (real.ids['pick-up'] ?? []).keys()) yield [buy.collect, { nth }];
    yield [buy.close, {}];
  }
}

async function* askedDeposits(real: Real): AsyncGenerator<[Step, Partial<Chance>]> {
  const path = `${real.storehouse.path}/buys/${real.buy.buyId}/deposits`;
  const { deposits } = bodyOf(await callerOf(real, 'treasurer').get(path));
  for (const { householdId, askedMinorUnits, heldMinorUnits } of deposits) {
    const who = real.households.findIndex((household) => household.householdId === householdId);
    const amount = (askedMinorUnits ?? 0) - heldMinorUnits;
    if (amount > 0) yield [money.deposit, { who, nth: 0, amount }];
  }
}

type StoryCommand = fc.AsyncCommand<Model, Real>;

const commandOf = (
  name: string,
  chance: Chance,
  { check = () => true, run }: Pick<StoryCommand, 'run'> & Partial<StoryCommand>,
): StoryCommand => ({
  check,
  run: async (model, real) => {
    await run(model, real);
    await expectSound(real);
  },
  toString: () => `${name}(${chance.who}, ${chance.nth}, ${chance.amount})`,
});

const chances = fc.record(
  { who: fc.nat(3), nth: fc.nat(40), amount: fc.integer({ min: 1, max: 12_000 }) },
  { noNullPrototype: true },
);

const stepping = (step: Step) =>
  chances.map((chance) =>
    commandOf(step.name, chance, {
      check: (model) => isLikely(step, model, chance),
      run: (model, real) => take(step, { real, model, chance }),
    }),
  );

/** Moves the buy on as its people would, so that a story gets to every stage. */
async function goOn(real: Real, model: Model, chance: Chance): Promise<void> {
  for await (const [step, wish] of nextSteps(real, { ...model }))
    await take(step, { real, model, chance: { ...chance, ...wish } });
}

const goingOn = chances.map((chance) =>
  commandOf('go on', chance, { run: (model, real) => goOn(real, model, chance) }),
);

/** What is done with food comes twice as often as what is done with money alone. */
const STEPS: readonly Step[] = [buy, home, landing, buy, home, landing, money].flatMap((steps) =>
  Object.values<Step>(steps),
);

/** What people do: how many stages the buy has gone through when the story begins, and then any sequence of steps. */
export type Plot = { stages: number; steps: Iterable<StoryCommand> };

/** Any plot of likely steps; about one step in ten moves the buy on. */
export const somePlot = (mostSteps: number): fc.Arbitrary<Plot> =>
  fc.record({
    stages: fc.nat(4),
    steps: fc.commands([...STEPS.map(stepping), ...Array.from({ length: 8 }, () => goingOn)], {
      maxCommands: mostSteps,
      size: 'max',
    }),
  });

/** Tells one story in a storehouse of its own, the whole book audited after every step. */
export async function tell(cast: Cast, { stages, steps }: Plot): Promise<Real> {
  const real = await openStory(cast);
  const model = newModel();
  for (let stage = 0; stage < stages; stage += 1) await goOn(real, model, { who: 0, nth: 1, amount: 1 });
  await expectSound(real);
  await fc.asyncModelRun(() => ({ model, real }), steps);
  return real;
}
