import { type ComponentType, type LazyExoticComponent, lazy, type ReactNode, Suspense } from 'react';
import { actingHere } from '../api/acting.ts';
import { usePlaces, useWaiting } from '../api/outbox.ts';
import { counterPlace } from '../features/equipment/counter-place.ts';
import { useBuysWaiting } from '../features/landing/store.ts';
import { linePlaces } from '../features/packing/line-place.ts';
import { boughtPlace } from '../features/supplies/bought-place.ts';
import type { House } from './house.ts';
import { WithWaiting } from './with-waiting.tsx';

const WaitingLoans = lazy(async () => {
  const { WaitingLoans } = await import('../features/equipment/waiting-loans.tsx');
  return { default: WaitingLoans };
});
const WaitingLines = lazy(async () => {
  const { WaitingLines } = await import('../features/packing/waiting-lines.tsx');
  return { default: WaitingLines };
});
const WaitingPurchases = lazy(async () => {
  const { WaitingPurchases } = await import('../features/supplies/waiting-purchases.tsx');
  return { default: WaitingPurchases };
});
const WaitingLandings = lazy(async () => {
  const { WaitingLandings } = await import('../features/landing/waiting-landings.tsx');
  return { default: WaitingLandings };
});

type Refusable = { readonly refusal: string | null };
const hasRefused = (waiting: readonly Refusable[]): boolean =>
  waiting.some(({ refusal }) => refusal !== null);

/**
 * What was written down without a signal, at a shed door, a line, in a shop or at a lorry, is sent from whatever page is open
 * next. The parts that do it are fetched once something waits; whoever writes fetches them ahead.
 */
export function FromOutside({ house, children }: { house: House; children: ReactNode }) {
  const loans = useWaiting<never>(counterPlace(house));
  const purchases = useWaiting<never>(boughtPlace(house));
  const lines = usePlaces(linePlaces(house));
  const lorries = useBuysWaiting(house);
  const landings = actingHere() ? [] : lorries; // whoever acts for a household lands nothing
  const parts: Part[] = [
    { name: 'loans', count: loans.length, isRefused: hasRefused(loans), Shown: WaitingLoans },
    { name: 'lines', count: lines.length, isRefused: lines.some(isRefused), Shown: WaitingLines },
    {
      ...{ name: 'purchases', count: purchases.length, isRefused: hasRefused(purchases) },
      Shown: WaitingPurchases,
    },
    { name: 'landings', count: landings.length, isRefused: landings.some(isRefused), Shown: WaitingLandings },
  ];
  const waiting = parts.filter(({ count }) => count > 0);
  return (
    <WithWaiting
      isRefused={waiting.some(isRefused)}
      waiting={waiting.map(({ name, Shown }) => (
        <Suspense key={name}>
          <Shown />
        </Suspense>
      ))}
    >
      {children}
    </WithWaiting>
  );
}

type Part = {
  readonly name: string;
  readonly count: number;
  readonly isRefused: boolean;
  readonly Shown: LazyExoticComponent<ComponentType>;
};
const isRefused = (one: { readonly isRefused: boolean }): boolean => one.isRefused;
