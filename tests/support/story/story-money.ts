import type { Model } from './story-model.ts';
import type { Chance, Step } from './story-step.ts';
import { pick, type Real, send } from './story-world.ts';

const householdOf = ({ households }: Real, { who }: Chance) =>
  households[who % households.length]?.householdId;
const tillOf = ({ nth }: Chance) => (nth % 2 === 0 ? 'bank' : 'cash');
/** Money comes into the till that chance names, or goes out of it. */
const into = (model: Model, chance: Chance, minorUnits = chance.amount) => {
  model[tillOf(chance)] += minorUnits;
};

/** A command of the treasurer with an amount, and what it does to the tills. */
const money = (
  name: string,
  path: (real: Real) => string,
  body: (real: Real, chance: Chance) => Record<string, unknown>,
  believe?: Step['believe'],
): Step => ({
  name,
  ask: (real, chance) =>
    send(real, {
      by: 'treasurer',
      path: path(real),
      body: { minorUnits: chance.amount, ...body(real, chance) },
    }),
  ...(believe ? { believe } : {}),
});

const toHousehold = (real: Real, chance: Chance) => ({
  householdId: householdOf(real, chance),
  till: tillOf(chance),
});

export const pay = money('pay', () => '/payments', toHousehold, into);
export const payAgain = money(
  'pay, and known to be no duplicate',
  () => '/payments',
  (real, chance) => ({ ...toHousehold(real, chance), isKnownDuplicate: true }),
  into,
);
export const refund = money(
  'refund',
  () => '/refunds',
  toHousehold,
  (model, chance) => into(model, chance, -chance.amount),
);
export const deposit = money(
  'leave a deposit',
  ({ buy }) => `/buys/${buy.buyId}/deposits`,
  toHousehold,
  into,
);
export const depositFromBalance = money(
  'leave a deposit from the balance',
  ({ buy }) => `/buys/${buy.buyId}/deposits`,
  (real, chance) => ({ householdId: householdOf(real, chance), fromBalance: true }),
);
export const refundDeposit = money(
  'give a deposit back',
  ({ buy }) => `/buys/${buy.buyId}/deposits/refunds`,
  toHousehold,
  (model, chance) => into(model, chance, -chance.amount),
);
export const receiveFund = money(
  'give to the fund',
  () => '/fund-receipts',
  (_, chance) => ({ till: tillOf(chance) }),
  into,
);
export const spendFund = money(
  'spend from the fund',
  () => '/fund-spendings',
  (_, chance) => ({ till: tillOf(chance) }),
  (model, chance) => into(model, chance, -chance.amount),
);
export const chargeBank = money(
  'be charged by the bank',
  () => '/bank-charges',
  () => ({}),
  (model, { amount }) => {
    model.bank -= amount;
  },
);
export const bankCash = money(
  'bank the cash',
  () => '/cash-bankings',
  () => ({}),
  (model, { amount }) => {
    model.cash -= amount;
    model.bank += amount;
  },
);
export const paySupplier = money(
  'pay the supplier',
  () => '/supplier-payments',
  (real, chance) => ({
    supplierId: real.buy.supplierId,
    till: tillOf(chance),
    isPrepayment: chance.who % 2 === 0,
  }),
  (model, chance) => into(model, chance, -chance.amount),
);
export const coverHardship = money(
  'cover hardship',
  () => '/hardship-covers',
  (real, chance) => ({
    householdId: householdOf(real, chance),
    reason: 'a hard year',
  }),
);
export const writeOff = money(
  'write off',
  () => '/write-offs',
  (real, chance) => ({
    householdId: householdOf(real, chance),
    reason: 'moved away',
  }),
);

export const agreeToWriteOff: Step = {
  name: 'agree to a write-off',
  ask: async (real, { nth }) => {
    const id = pick(real, 'write-off', nth);
    return id === undefined
      ? undefined
      : send(real, { by: 'coordinator', path: `/write-offs/${id}/agreement` });
  },
};

export const openBalance: Step = {
  name: 'open a balance',
  ask: (real, chance) => {
    const { nth, amount } = chance;
    const householdId = householdOf(real, chance);
    const of = nth % 3 === 0 ? { of: 'bank' } : { of: 'household', householdId };
    const body = { ...of, balanceMinorUnits: nth % 2 === 0 ? amount : -amount, reason: 'the older book' };
    return send(real, { by: 'treasurer', path: '/opening-balances', body });
  },
  believe: (model, { nth, amount }) => {
    if (nth % 3 === 0) model.bank += nth % 2 === 0 ? amount : -amount;
  },
};

export const waive: Step = {
  name: 'waive a deposit',
  at: ['fixed'],
  ask: (real, chance) => {
    const body = { householdId: householdOf(real, chance), reason: 'a hard year' };
    return send(real, { by: 'treasurer', path: `/buys/${real.buy.buyId}/deposits/waivers`, body });
  },
};

/** Any entry of the book may be asked to be undone, the tidy ones and those that others stand on. */
export const reverse: Step = {
  name: 'reverse an entry',
  isOpaque: true,
  ask: async (real, { nth }) => {
    const { storehouseId } = real.storehouse;
    const rows = await real.app.admin<{ entry_id: string; what: string }[]>`
      select entry_id, what from book.entry where storehouse_id = ${storehouseId} order by entry_no`;
    const entry = rows[nth % rows.length];
    if (!entry) return undefined;
    real.log.push(`reverse “${entry.what}”`);
    const body = { reason: 'a slip' };
    return send(real, { by: 'treasurer', path: `/entries/${entry.entry_id}/reversal`, body });
  },
};

const dayBefore = ({ app }: Real, days: number) =>
  new Date(app.clock.now.getTime() - days * 86_400_000).toISOString().slice(0, 10);

export const endYear: Step = {
  name: 'end the year',
  ask: (real, { nth }) =>
    send(real, { by: 'treasurer', path: '/year-ends', body: { throughOn: dayBefore(real, nth % 3) } }),
};

export const closePeriod: Step = {
  name: 'close the books',
  ask: (real, { nth }) =>
    send(real, { by: 'treasurer', path: '/periods', body: { throughOn: dayBefore(real, 1 + (nth % 3)) } }),
};
