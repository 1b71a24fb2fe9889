import type { BuyStage } from '@sheafbook/ledger';
import { expect } from 'vitest';
import type { Answer } from '../app.ts';
import { expectSame, look, type Model } from './story-model.ts';
import type { Real } from './story-world.ts';

/** What chance decides of a step: who, which one, and how much. */
export type Chance = { who: number; nth: number; amount: number };

/** Something that somebody may ask for in a story. */
export type Step = {
  name: string;
  /** The stages of the buy at which it may go through; any when left out. */
  at?: readonly BuyStage[];
  /** The stages at which somebody would ask for it, when those are fewer than it may go through at. */
  likelyAt?: readonly BuyStage[];
  /** Where the buy may stand after it went through, when that is not where it stood. */
  to?: readonly BuyStage[];
  /** Asks for it; undefined when there is nothing yet to ask it of. */
  ask(real: Real, chance: Chance): Promise<Answer | undefined>;
  /** What the model believes once it went through. */
  believe?(model: Model, chance: Chance): void;
  /** It moves money or grams by sums that the model does not know; they are read from the book afterwards. */
  isOpaque?: boolean;
};

/** Whether somebody would ask for it now; one time in five somebody does all the same, and is refused or not. */
export function isLikely({ at, likelyAt = at }: Step, { stage }: Model, { nth }: Chance): boolean {
  return nth % 5 === 0 || !likelyAt || likelyAt.includes(stage);
}

/**
 * Takes one step and holds the book against the model: what is refused leaves no trace, what goes through goes through
 * at a stage that allows it, and nothing is ever a failure of ours.
 */
export async function take(
  step: Step,
  { real, model, chance }: { real: Real; model: Model; chance: Chance },
) {
  const before = await look(real);
  const answer = await step.ask(real, chance);
  const after = await look(real);
  if (!answer) return;
  const story = real.log.join('\n');
  expect(answer.status, `${step.name} failed\n${story}`).toBeLessThan(500);
  if (answer.status >= 300) {
    expect(after, `${step.name} was refused and left a trace\n${story}`).toEqual(before);
    return;
  }
  if (step.at)
    expect(step.at, `${step.name} went through at ${before.stage}\n${story}`).toContain(before.stage);
  const allowed = step.to ?? [before.stage];
  expect(allowed, `${step.name} led from ${before.stage} to ${after.stage}\n${story}`).toContain(after.stage);
  model.stage = after.stage;
  step.believe?.(model, chance);
  if (step.isOpaque) Object.assign(model, { bank: after.bank, cash: after.cash, cansGrams: after.cansGrams });
  expectSame(real, after, model);
}
