import type { Answer, Caller, TestApp } from './app.ts';
import { bodyOf } from './buy.ts';
import type { TestStorehouse } from './storehouse.ts';

export type OfferedWish = {
  of?: 'household' | 'store';
  price?: { kind: 'gift' } | { kind: 'named'; minorUnitsEach: number } | { kind: 'cost' };
  closesAt?: string;
  windowHours?: number;
  goesToPantry?: boolean;
};

/** A gift that closes three weeks after the clock of `openTestApp`, unless a test says otherwise. */
export const offerBody = (containerIds: readonly string[], wish: OfferedWish = {}) => ({
  ...{ of: 'household', price: { kind: 'gift' }, closesAt: '2026-09-22T15:00:00Z', goesToPantry: false },
  ...{ containerIds, ...wish },
});

/** Offering, looking and taking in a storehouse. */
export function offersOf(app: TestApp, { path }: TestStorehouse) {
  const offer = (caller: Caller, containerIds: readonly string[], wish: OfferedWish = {}): Promise<Answer> =>
    caller.post(`${path}/offers`, offerBody(containerIds, wish));
  const claim = (caller: Caller, offerId: string, containerIds: readonly string[], minorUnits = 0) =>
    caller.post(`${path}/offers/${offerId}/claims`, { containerIds, minorUnits });
  const pass = (caller: Caller, offerId: string) => caller.post(`${path}/offers/${offerId}/pass`);
  const takeBack = (caller: Caller, offerId: string) => caller.post(`${path}/offers/${offerId}/withdrawal`);
  const look = (caller: Caller, offerId: string) => caller.get(`${path}/offers/${offerId}`);
  const all = async (caller: Caller) => bodyOf(await caller.get(`${path}/offers`));
  const after = (hours: number) => {
    app.clock.now = new Date(Date.parse('2026-09-01T15:00:00Z') + hours * 3_600_000);
  };
  return { offer, claim, pass, takeBack, look, all, after };
}

/** A body that is well formed for each route of an offer that takes one. */
export const offerBodies = (
  ids: Readonly<Record<string, string>>,
): Record<string, Record<string, unknown>> => ({
  'POST /offers': { ...offerBody([ids.container ?? '']), windowHours: 48, note: 'from the cellar' },
  'POST /offers/:offer/claims': { containerIds: [ids.container], minorUnits: 0 },
});
