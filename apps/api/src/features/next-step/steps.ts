import type { BuyRow, OrderConsentRow } from '@sheafbook/db/tables';
import type { BuyStage } from '@sheafbook/ledger';
import { dayInZone } from '@sheafbook/units';
import { type Actor, DUTIES, type Duty } from '../../platform/actor.ts';
import { mayRunBuys } from '../buy/use-cases.ts';
import { mayShareOut } from '../charge/use-cases.ts';
import { mayClose } from '../close/use-cases.ts';
import { mayFix } from '../fill/use-cases.ts';
import { mayEndLanding } from '../landing/use-cases.ts';
import { mayAgreeAs } from '../order/use-cases.ts';

type Consents = readonly OrderConsentRow[];

/** The one way on from a stage: who may take it, by the policy of its own command, and where that command is. */
export type Step = {
  readonly to: BuyStage;
  readonly words: string;
  readonly may: (actor: Actor, consents: Consents) => boolean;
  readonly path: string;
  readonly bodyFor: (actor: Actor, consents: Consents) => Readonly<Record<string, string>> | null;
};

const STEPS: Readonly<Partial<Record<string, Step>>> = {
  planning: {
    to: 'gathering',
    words: 'Open the buy for pledges.',
    may: mayRunBuys,
    path: 'stage',
    bodyFor: () => ({ to: 'gathering' }),
  },
  gathering: {
    to: 'fixed',
    words: 'Fix the buy: its bags are filled, the grams promised and the deposits asked for.',
    may: mayFix,
    path: 'fixing',
    bodyFor: () => ({}),
  },
  fixed: {
    to: 'ordered',
    words: 'Agree to order. Coordinator and treasurer both do, with a login each.',
    may: (actor, consents) => mayAgreeAs(actor, consents) !== null,
    path: 'order-consents',
    bodyFor: (actor, consents) => {
      const duty = mayAgreeAs(actor, consents);
      return duty ? { duty } : {};
    },
  },
  ordered: {
    to: 'landed',
    words: 'Land the buy: count every food, number every bag, and end the landing.',
    may: mayEndLanding,
    path: 'landing',
    bodyFor: () => null,
  },
  landed: {
    to: 'shared-out',
    words: 'Share the buy out: every cost is charged to the cent.',
    may: mayShareOut,
    path: 'sharing-out',
    bodyFor: () => null,
  },
  'shared-out': {
    to: 'closed',
    words: 'Close the buy, at 0.00 and with no gram left over.',
    may: mayClose,
    path: 'closing',
    bodyFor: () => null,
  },
};

export const stepFrom = (stage: string): Step | null => STEPS[stage] ?? null;

/** The duties that may take a step now, asked of its own policy with each duty alone. */
export function whoMay(step: Step, actor: Actor, consents: Consents): Duty[] {
  const somebodyWith = (duty: Duty): Actor => ({ ...actor, personId: '', duties: new Set([duty]) });
  return DUTIES.filter((duty) => step.may(somebodyWith(duty), consents));
}

/** By when a step is planned: the day, and the instant where the plan names one. */
export type Due = { readonly dueOn: string | null; readonly dueAt: Date | null };

export function dueOf(buy: BuyRow, { timeZone }: Actor): Due {
  if (buy.stage === 'planning' || buy.stage === 'gathering')
    return dueAtInstant(buy.gatheringClosesAt, timeZone);
  if (buy.stage === 'fixed') return { dueOn: buy.orderOn, dueAt: null };
  return { dueOn: buy.stage === 'ordered' ? buy.landingOn : null, dueAt: null };
}

export const dueAtInstant = (at: Date, timeZone: string): Due => ({
  dueOn: dayInZone(at.getTime(), timeZone),
  dueAt: at,
});
