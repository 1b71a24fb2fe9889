import { type ComponentType, lazy, type ReactNode, Suspense } from 'react';
import { useOutside } from '../api/outside.ts';
import type { House } from './house.ts';
import { WithWaiting } from './with-waiting.tsx';

/** Where it can't be fetched, nothing stands in its place: a page that is read without a signal must not go with it. */
const WaitingOutside = lazy<ComponentType>(() =>
  import('./waiting-outside.tsx').catch(() => ({ default: () => null })),
);

/**
 * What was written down without a signal, at a shed door, a line, in a shop or at a lorry, is sent from whatever page is open
 * next. The part that does it is fetched once something waits; whoever writes fetches it ahead.
 */
export function FromOutside({ house, children }: { house: House; children: ReactNode }) {
  const outside = useOutside(house);
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
