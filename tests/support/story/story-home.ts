import { foodIdsOf } from '../buy.ts';
import { kindIdsOf } from '../shelf.ts';
import type { Chance, Step } from './story-step.ts';
import { pick, pickOwnBag, type Real, send } from './story-world.ts';

const canOf = async ({ storehouse }: Real) => (await kindIdsOf(storehouse))['can-no-10'];
/** A can of one's own; now and then a neighbour's. */
const canFor = (real: Real, { who, nth }: Chance) =>
  pick(real, `can of ${nth % 7 === 0 ? nth % 4 : who}`, nth);
const USES = ['eaten', 'given', 'animals', 'composted', 'spilled', 'sampled', 'discarded'] as const;
const gramsOf = ({ amount }: { amount: number }) => 1 + (amount % 2600);
const countOf = ({ who }: { who: number }) => 1 + (who % 3);

export const pour: Step = {
  name: 'pour',
  likelyAt: ['landed', 'shared-out', 'closed'],
  ask: async (real, chance) => {
    const bagId = await pickOwnBag(real, chance);
    if (bagId === undefined) return undefined;
    const filled = { count: countOf(chance), gramsEach: gramsOf(chance) };
    const body = { bagId, containerKindId: await canOf(real), ...filled };
    return send(real, { by: chance.who, path: '/containers', body });
  },
  believe: (model, chance) => {
    model.cansGrams += countOf(chance) * gramsOf(chance);
  },
};

export const pourMore: Step = {
  name: 'pour more',
  likelyAt: ['landed', 'shared-out', 'closed'],
  ask: async (real, chance) => {
    const [bagId, can] = [await pickOwnBag(real, chance), canFor(real, chance)];
    const body = { bagId, grams: gramsOf(chance) };
    return bagId && can ? send(real, { by: chance.who, path: `/containers/${can}/pours`, body }) : undefined;
  },
  believe: (model, chance) => {
    model.cansGrams += gramsOf(chance);
  },
};

export const undoPour: Step = {
  name: 'undo a pour',
  likelyAt: ['landed', 'shared-out', 'closed'],
  isOpaque: true,
  ask: async (real, { who, nth }) => {
    const entryId = pick(real, `pour of ${nth % 7 === 0 ? nth % 4 : who}`, nth);
    const body = { reason: 'the wrong bag' };
    return entryId === undefined
      ? undefined
      : send(real, { by: who, path: `/pours/${entryId}/undoing`, body });
  },
};

export const eat: Step = {
  name: 'eat from a can',
  likelyAt: ['landed', 'shared-out', 'closed'],
  ask: async (real, chance) => {
    const can = canFor(real, chance);
    const body = { grams: gramsOf(chance), to: USES[chance.amount % 7] };
    return can === undefined
      ? undefined
      : send(real, { by: chance.who, path: `/containers/${can}/uses`, body });
  },
  believe: (model, chance) => {
    model.cansGrams -= gramsOf(chance);
  },
};

export const eatFromBag: Step = {
  name: 'eat from a bag',
  likelyAt: ['landed', 'shared-out', 'closed'],
  ask: async (real, chance) => {
    const bag = await pickOwnBag(real, chance);
    const body = { grams: gramsOf(chance), to: USES[chance.amount % 7] };
    return bag === undefined ? undefined : send(real, { by: chance.who, path: `/bags/${bag}/uses`, body });
  },
};

export const bringIn: Step = {
  name: 'bring in stock',
  ask: async (real, chance) => {
    const foodId = (await foodIdsOf(real.storehouse))['rice-white-long'];
    const facts = { foodId, originNote: 'a cellar', packedOn: '2026-08-01' };
    const filled = { containerKindId: await canOf(real), count: countOf(chance), gramsEach: gramsOf(chance) };
    return send(real, { by: chance.who, path: '/stock', body: { ...facts, ...filled } });
  },
  believe: (model, chance) => {
    model.cansGrams += countOf(chance) * gramsOf(chance);
  },
};

/** Days go by: deadlines pass, debts age, and what nobody fetched may be taken. */
export const wait: Step = {
  name: 'wait',
  ask: async (real, { nth }) => {
    real.app.clock.now = new Date(real.app.clock.now.getTime() + (1 + (nth % 20)) * 86_400_000);
    real.log.push(`wait until ${real.app.clock.now.toISOString()}`);
    return undefined;
  },
};
