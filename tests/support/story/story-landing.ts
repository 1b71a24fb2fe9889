import { bodyOf } from '../buy.ts';
import type { Step } from './story-step.ts';
import { callerOf, pick, type Real, send } from './story-world.ts';

const ofBuy = ({ buy }: Real, rest: string) => `/buys/${buy.buyId}${rest}`;

/** A lorry with the bags that were ordered; now and then one too few, one torn, one too many. */
export const receive: Step = {
  name: 'receive a lorry',
  at: ['ordered', 'landed', 'shared-out'],
  ask: async (real, { nth, amount }) => {
    const arrived = { supplierId: real.buy.supplierId, arrivedOn: '2026-09-01', countedBy: 'Ada and Ben' };
    const delivery = await send(real, { by: 'coordinator', path: ofBuy(real, '/deliveries'), body: arrived });
    if (delivery.status >= 300) return delivery;
    const { lines } = bodyOf(
      await callerOf(real, 'coordinator').get(`${real.storehouse.path}${ofBuy(real, '/landing')}`),
    );
    const isLater = (real.ids.bag ?? []).length > 0;
    const counts = lines.map((line: { bagOfferId: string; orderedBags: number }, at: number) => ({
      bagOfferId: line.bagOfferId,
      countedBags: isLater ? 1 : Math.max(0, line.orderedBags + (nth % 4 === at ? -1 : 0)),
    }));
    const path = `/deliveries/${delivery.body.id}`;
    const body = { version: delivery.body.version, counts };
    const counted = await send(real, { by: 'coordinator', path: `${path}/counts`, body, method: 'PUT' });
    if (counted.status >= 300) return counted;
    const declared = [22_680, 11_340];
    const bags = counts.flatMap(({ bagOfferId, countedBags }: (typeof counts)[number], at: number) =>
      Array.from({ length: countedBags }, (_, bag) => {
        const isTorn = bag === 0 && amount % 3 === 0;
        const netGrams = (declared[at] ?? 0) - (isTorn ? 2268 : 0);
        const state = isTorn ? { condition: 'torn', decision: 'accepted-with-note', note: 'Torn.' } : {};
        return { bagOfferId, grossGrams: netGrams + 250, tareGrams: 250, ...state };
      }),
    );
    return bags.length === 0
      ? counted
      : send(real, { by: 'coordinator', path: `${path}/bags`, body: { bags } });
  },
};

export const land: Step = {
  name: 'end the landing',
  at: ['ordered'],
  to: ['landed'],
  ask: (real) => send(real, { by: 'coordinator', path: ofBuy(real, '/landing') }),
};

async function bagOf(real: Real, nth: number) {
  const id = pick(real, 'bag', nth);
  if (id === undefined) return undefined;
  return bodyOf(await callerOf(real, 'coordinator').get(`${real.storehouse.path}/bags/${id}`));
}

export const weigh: Step = {
  name: 'weigh a bag again',
  likelyAt: ['ordered', 'landed', 'shared-out'],
  ask: async (real, { nth, amount }) => {
    const bag = await bagOf(real, nth);
    if (!bag) return undefined;
    const grossGrams = Math.max(1, bag.netGrams + 250 + (amount % 400) - 200);
    const body = { version: bag.version, grossGrams, tareGrams: 250, reason: 'another scale' };
    return send(real, { by: 'packing lead', path: `/bags/${bag.id}/weight`, body, method: 'PUT' });
  },
};

export const refuseBag: Step = {
  name: 'refuse a bag after all',
  likelyAt: ['ordered', 'landed', 'shared-out'],
  ask: async (real, { nth }) => {
    const bag = await bagOf(real, nth);
    if (!bag) return undefined;
    const known = {
      moistureTenthsPercent: bag.moistureTenthsPercent,
      isExemptFromWeighing: bag.isExemptFromWeighing,
    };
    const body = {
      version: bag.version,
      condition: 'wet',
      decision: 'refused',
      note: 'Wet through.',
      ...known,
    };
    return send(real, { by: 'coordinator', path: `/bags/${bag.id}`, body, method: 'PUT' });
  },
};

export const lose: Step = {
  name: 'lose from a bag',
  likelyAt: ['ordered', 'landed', 'shared-out'],
  ask: async (real, { nth, amount }) => {
    const id = pick(real, 'bag', nth);
    const to = (['spilled', 'sampled', 'composted', 'animals', 'discarded'] as const)[amount % 5];
    const body = { grams: 1 + (amount % 9000), to, because: 'a torn corner' };
    return id === undefined ? undefined : send(real, { by: 'packing lead', path: `/bags/${id}/loss`, body });
  },
};

export const hold: Step = {
  name: 'hold a bag',
  likelyAt: ['ordered', 'landed', 'shared-out'],
  ask: async (real, { nth }) => {
    const id = pick(real, 'bag', nth);
    const body = { reason: 'A smell of mice.' };
    return id === undefined ? undefined : send(real, { by: 'packing lead', path: `/bags/${id}/holds`, body });
  },
};

export const release: Step = {
  name: 'release a hold',
  likelyAt: ['ordered', 'landed', 'shared-out'],
  ask: async (real, { nth }) => {
    const id = pick(real, 'hold', nth);
    if (id === undefined) return undefined;
    const finding = { finding: 'Only the sack smells.' };
    await send(real, { by: 'packing lead', path: `/holds/${id}/release-request`, body: finding });
    return send(real, { by: 'coordinator', path: `/holds/${id}/release` });
  },
};

export const discard: Step = {
  name: 'discard a bag on hold',
  likelyAt: ['ordered', 'landed', 'shared-out'],
  ask: async (real, { nth }) => {
    const id = pick(real, 'bag', nth);
    const body = { finding: 'mice' };
    return id === undefined
      ? undefined
      : send(real, { by: 'coordinator', path: `/bags/${id}/discard`, body });
  },
};
