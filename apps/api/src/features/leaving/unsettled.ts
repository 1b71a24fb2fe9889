import { formatMoney } from '@sheafbook/units';
import type { Duty } from '../../platform/actor.ts';

/** Something that keeps a household from leaving. Money above zero is owed by it, below zero to it. */
export type Unsettled =
  | { readonly what: 'balance'; readonly minorUnits: number }
  | {
      readonly what: 'deposit';
      readonly minorUnits: number;
      readonly buyId: string | null;
      readonly buyName: string | null;
      /** What it was left for, when it is a loan’s. */
      readonly thing: string | null;
    }
  | {
      readonly what: 'open-buy';
      readonly buyId: string;
      readonly buyName: string;
      readonly stage: string;
      readonly because: string;
    }
  | {
      readonly what: 'uncollected';
      readonly bagId: string;
      readonly bagCode: string;
      readonly food: string;
      readonly foodEs: string;
      readonly grams: number;
    }
  | {
      readonly what: 'on-hold';
      readonly vesselId: string;
      readonly code: string;
      readonly food: string;
      readonly foodEs: string;
      readonly grams: number;
    }
  | { readonly what: 'on-loan' | 'booked'; readonly bookingId: string; readonly thing: string }
  | {
      readonly what: 'packing-day';
      readonly sessionId: string;
      readonly sessionName: string;
      readonly stage: string;
    }
  | { readonly what: 'last-of-duty'; readonly duty: Duty; readonly personId: string };

/** Says in a member's words what is still to be done. Amounts are left out for whoever may not see the balance. */
export function sayUnsettled(item: Unsettled, money: { currency: string; isShown: boolean }): string {
  const amount = (minorUnits: number) =>
    money.isShown ? ` ${formatMoney(Math.abs(minorUnits), money.currency, 'en')} ${money.currency}` : '';
  switch (item.what) {
    case 'balance':
      return item.minorUnits > 0
        ? `The household owes${amount(item.minorUnits)}. It is to be paid first.`
        : `The household is owed${amount(item.minorUnits)}. It is to be paid back first.`;
    case 'deposit':
      return `A deposit${money.isShown ? ' of' : ''}${amount(item.minorUnits)} is held${depositFor(item.buyName ?? item.thing)}.`;
    case 'open-buy':
      return `${item.buyName} is ${item.stage}: ${OPEN_BUY[item.because] ?? 'it must be closed first.'}`;
    case 'uncollected':
      return `${item.grams} g of ${item.food} in bag ${item.bagCode} wait to be fetched.`;
    case 'on-hold':
      return `${item.grams} g of ${item.food} in ${item.code} are on hold.`;
    case 'on-loan':
      return `${item.thing} is still out with the household. It is to be brought back first.`;
    case 'booked':
      return `${item.thing} is booked for the household. Give the booking back first.`;
    case 'packing-day':
      return item.stage === 'open'
        ? `${item.sessionName} is to pack for the household. Take back what it wants packed there, and its time.`
        : `${item.sessionName} packed for the household and is not settled. Wait for what it costs.`;
    case 'last-of-duty':
      return `Somebody else must become ${item.duty.replaceAll('_', ' ')} first.`;
  }
}

const depositFor = (what: string | null): string => (what === null ? '' : ` for ${what}`);

const OPEN_BUY: Readonly<Record<string, string>> = {
  pledge: 'withdraw the pledge, or wait until the buy is closed.',
  allotment: 'a share is promised; withdraw, or wait until the buy is closed.',
  withdrawal: 'what a withdrawal after ordering costs is charged when it is shared out.',
};
