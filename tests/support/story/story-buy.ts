import { gramsOfPhysicalUnit } from '@sheafbook/units';
import { bodyOf } from '../buy.ts';
import type { Chance, Step } from './story-step.ts';
import { BEANS, callerOf, pick, type Real, send, WHEAT } from './story-world.ts';

const pounds = (count: number) => gramsOfPhysicalUnit(count, 'lb');
const ofBuy = ({ buy }: Real, rest: string) => `/buys/${buy.buyId}${rest}`;
const lineOf = ({ buy }: Real, { nth }: Chance) => buy.lines[nth % 2 === 0 ? WHEAT : BEANS] ?? '';
const terms = ({ nth, amount }: Chance) => {
  const wanted = 5 * (1 + (amount % 24));
  const [least, most] = [nth % 3 === 0 ? 0 : wanted, wanted + 5 * (nth % 7)];
  const grams = { leastGrams: pounds(least), wantedGrams: pounds(wanted), mostGrams: pounds(most) };
  return { ...grams, wholeBags: false, asTyped: `${wanted} lb` };
};

async function ownPledge(real: Real, { who, nth }: Chance) {
  const caller = callerOf(real, who);
  const { own } = bodyOf(await caller.get(`${real.storehouse.path}${ofBuy(real, '/pledges')}`));
  const standing = own.filter(({ isWithdrawn }: { isWithdrawn: boolean }) => !isWithdrawn);
  return standing.length === 0 ? undefined : standing[nth % standing.length];
}

export const pledge: Step = {
  name: 'pledge',
  at: ['gathering'],
  ask: (real, chance) =>
    send(real, {
      by: chance.who,
      path: ofBuy(real, '/pledges'),
      body: { buyLineId: lineOf(real, chance), ...terms(chance) },
    }),
};

export const changePledge: Step = {
  name: 'change a pledge',
  at: ['gathering'],
  ask: async (real, chance) => {
    const own = await ownPledge(real, chance);
    const path = ofBuy(real, `/pledges/${own?.id}`);
    return (
      own &&
      send(real, { by: chance.who, path, body: { version: own.version, ...terms(chance) }, method: 'PUT' })
    );
  },
};

export const withdrawPledge: Step = {
  name: 'withdraw a pledge',
  at: ['gathering'],
  ask: async (real, chance) => {
    const own = await ownPledge(real, chance);
    const path = ofBuy(real, `/pledges/${own?.id}/withdrawal`);
    return own && send(real, { by: chance.who, path, body: { version: own.version } });
  },
};

export const fix: Step = {
  name: 'fix',
  at: ['gathering'],
  to: ['fixed'],
  ask: (real) => send(real, { by: 'coordinator', path: ofBuy(real, '/fixing'), body: {} }),
};

export const reopen: Step = {
  name: 'reopen',
  at: ['fixed'],
  to: ['gathering'],
  ask: (real) => {
    const toldHouseholdIds = real.households.map(({ householdId }) => householdId);
    const body = { reason: 'two more want in', toldHouseholdIds };
    return send(real, { by: 'coordinator', path: ofBuy(real, '/reopening'), body });
  },
};

export const callOff: Step = {
  name: 'call off',
  at: ['gathering', 'fixed', 'ordered'],
  likelyAt: [], // it ends a story, so only one time in five
  to: ['called-off'],
  isOpaque: true,
  ask: (real, { nth, amount }) => {
    const costs = nth % 2 === 0 ? [] : [{ supplierId: real.buy.supplierId, minorUnits: amount }];
    const body = { reason: 'the mill burned down', cancellationNote: 'agreed', cancellationCosts: costs };
    return send(real, { by: 'coordinator', path: ofBuy(real, '/calling-off'), body });
  },
};

export const agree: Step = {
  name: 'agree to order',
  at: ['fixed'],
  to: ['fixed', 'ordered'],
  ask: (real, { nth }) => {
    const duty = nth % 2 === 0 ? 'coordinator' : 'treasurer';
    return send(real, { by: duty, path: ofBuy(real, '/order-consents'), body: { duty } });
  },
};

export const withdrawHousehold: Step = {
  name: 'withdraw a household',
  at: ['gathering', 'fixed', 'ordered', 'landed'],
  isOpaque: true,
  ask: (real, { who }) => {
    const path = ofBuy(real, '/withdrawals');
    return send(real, { by: who, path, body: { reason: 'we are moving' } });
  },
};

export const bill: Step = {
  name: 'bill',
  at: ['ordered', 'landed', 'shared-out'],
  ask: (real, { nth }) => {
    const { buy } = real;
    const lines = [
      { kind: 'goods', buyLineId: buy.lines[WHEAT], minorUnits: 21_600 },
      { kind: 'goods', buyLineId: buy.lines[BEANS], minorUnits: 10_700 },
      { kind: 'freight', minorUnits: 8_800 },
    ];
    const some = nth % 4 === 0 ? lines.slice(2) : lines;
    const body = { supplierId: buy.supplierId, number: `S-${nth}`, onDay: '2026-09-01', lines: some };
    return send(real, { by: 'treasurer', path: ofBuy(real, '/invoices'), body });
  },
};

export const voidBill: Step = {
  name: 'void a bill',
  at: ['ordered', 'landed', 'shared-out'],
  ask: async (real, { nth }) => {
    const id = pick(real, 'invoice', nth);
    const path = `/invoices/${id}/void`;
    return id === undefined
      ? undefined
      : send(real, { by: 'treasurer', path, body: { reason: 'entered twice' } });
  },
};

export const claim: Step = {
  name: 'claim',
  at: ['ordered', 'landed', 'shared-out'],
  ask: (real, chance) => {
    const kind = (['short', 'damage', 'goodwill', 'freight'] as const)[chance.nth % 4];
    const buyLineId = kind === 'freight' ? null : lineOf(real, chance);
    const wish = { kind, buyLineId, minorUnits: 1 + (chance.amount % 4000), because: 'it came short' };
    const body = { supplierId: real.buy.supplierId, ...wish };
    return send(real, { by: 'treasurer', path: ofBuy(real, '/claims'), body });
  },
};

export const creditClaim: Step = {
  name: 'credit a claim',
  likelyAt: ['landed', 'shared-out'],
  ask: async (real, { nth, amount }) => {
    const id = pick(real, 'claim', nth);
    const till = amount % 2 === 0 ? { till: 'bank' } : {};
    const body = { minorUnits: 1 + (amount % 4000), ...till };
    return id === undefined ? undefined : send(real, { by: 'treasurer', path: `/claims/${id}/credit`, body });
  },
  believe: (model, { amount }) => {
    if (amount % 2 === 0) model.bank += 1 + (amount % 4000);
  },
};

export const refuseClaim: Step = {
  name: 'refuse a claim',
  likelyAt: ['landed', 'shared-out'],
  ask: async (real, { nth }) => {
    const id = pick(real, 'claim', nth);
    const path = `/claims/${id}/refusal`;
    return id === undefined
      ? undefined
      : send(real, { by: 'treasurer', path, body: { because: 'too late' } });
  },
};

const RULES = [
  'proportional',
  'equal-awards',
  'equal-losses',
  'first-come',
  'need-first',
  'rotation-of-loss',
];

export const split: Step = {
  name: 'split',
  at: ['landed', 'shared-out'],
  ask: (real, chance) => {
    const body = chance.amount % 2 === 0 ? {} : { rule: RULES[chance.amount % 6] };
    return send(real, {
      by: 'packing lead',
      path: ofBuy(real, `/lines/${lineOf(real, chance)}/splits`),
      body,
    });
  },
};

export const undoSplit: Step = {
  name: 'undo a split',
  at: ['landed'],
  ask: async (real, { nth }) => {
    const id = pick(real, 'split', nth);
    return id === undefined ? undefined : send(real, { by: 'coordinator', path: `/splits/${id}/undoing` });
  },
};

export const shareOut: Step = {
  name: 'share out',
  at: ['landed'],
  to: ['shared-out'],
  ask: (real) => send(real, { by: 'coordinator', path: ofBuy(real, '/sharing-out') }),
};

export const recharge: Step = {
  name: 'recharge',
  at: ['shared-out'],
  ask: (real) => send(real, { by: 'treasurer', path: ofBuy(real, '/recharging') }),
};

export const creditLate: Step = {
  name: 'credit late',
  at: ['shared-out', 'closed'],
  ask: async (real, { nth, amount }) => {
    const { path } = real.storehouse;
    const { lines } = bodyOf(await callerOf(real, 'treasurer').get(`${path}${ofBuy(real, '/charges')}`));
    if (lines.length === 0) return undefined;
    const minorUnits = nth % 2 === 0 ? amount : -amount;
    const body = { chargeLineId: lines[nth % lines.length].id, minorUnits, till: 'bank', reason: 'goodwill' };
    return send(real, { by: 'treasurer', path: ofBuy(real, '/late-credits'), body });
  },
  believe: (model, { nth, amount }) => {
    model.bank += nth % 2 === 0 ? amount : -amount;
  },
};

export const planPickUp: Step = {
  name: 'plan a pick-up',
  at: ['ordered', 'landed', 'shared-out', 'closed'],
  ask: (real, { who }) => {
    const startsAt = new Date(real.app.clock.now.getTime() + 3_600_000).toISOString();
    const endsAt = new Date(real.app.clock.now.getTime() + 7_200_000).toISOString();
    return send(real, { by: who, path: ofBuy(real, '/pick-ups'), body: { startsAt, endsAt } });
  },
};

export const collect: Step = {
  name: 'collect',
  at: ['shared-out', 'closed'],
  ask: async (real, { nth }) => {
    const id = pick(real, 'pick-up', nth);
    const path = `/pick-ups/${id}/collection`;
    return id === undefined
      ? undefined
      : send(real, { by: 'coordinator', path, body: { signedBy: 'whoever came' } });
  },
};

export const takeUncollected: Step = {
  name: 'take what nobody fetched',
  at: ['shared-out', 'closed'],
  ask: (real, { who }) => {
    const { householdId } = real.households[who % real.households.length] ?? { householdId: '' };
    const path = ofBuy(real, `/uncollected/${householdId}`);
    return send(real, { by: 'coordinator', path, body: { note: 'never came' } });
  },
};

export const close: Step = {
  name: 'close',
  at: ['shared-out'],
  to: ['closed'],
  ask: (real) => send(real, { by: 'treasurer', path: ofBuy(real, '/closing') }),
};
