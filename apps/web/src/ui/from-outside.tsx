import { useLocation } from '@tanstack/react-router';
import { type ComponentType, lazy, type ReactNode, Suspense, useEffect, useMemo } from 'react';
import { useOutside } from '../api/outside.ts';
import type { House } from './house.ts';
import { useOnline } from './use-online.ts';
import { WithWaiting } from './with-waiting.tsx';

const load = () => import('./waiting-outside.tsx');
/** Where it can't be fetched, nothing stands in its place: a page that is read without a signal must not go with it. */
const fetched = () => lazy<ComponentType>(() => load().catch(() => ({ default: () => null })));

/** Where things are written down without a signal. */
const OUTSIDE = /\/(packing|equipment|landing|claims)(\/|$)/;

/**
 * What was written down without a signal, at a shed door, a line, in a shop or at a lorry, is sent from whatever page is open
 * next. The part that does it is fetched once something waits, and ahead where something may come to wait.
 */
export function FromOutside({ house, children }: { house: House; children: ReactNode }) {
  const outside = useOutside(house);
  const { pathname } = useLocation();
  const isOutside = OUTSIDE.test(pathname);
  const isOnline = useOnline();
  // biome-ignore lint/correctness/useExhaustiveDependencies: what could not be fetched is tried again once the signal changes
  const WaitingOutside = useMemo(fetched, [isOnline]);
  useEffect(() => {
    if (isOutside) load().catch(() => undefined);
  }, [isOutside]);
  return (
    <WithWaiting
      isRefused={outside === 'refused'}
      waiting={
        outside === 'nothing' ? null : (
          <Suspense>
            <WaitingOutside />
          </Suspense>
        )
      }
    >
      {children}
    </WithWaiting>
  );
}
