import type { ReactNode } from 'react';

type WithWaitingProps = {
  readonly waiting: ReactNode;
  readonly isRefused: boolean;
  readonly children: ReactNode;
};

/**
 * What a phone has written down and not sent yet, beside what one works at. It stands below, so that no key moves from
 * under a thumb when the book answers; only what was refused, and so needs somebody, stands above.
 */
export function WithWaiting({ waiting, isRefused, children }: WithWaitingProps) {
  return (
    <>
      {isRefused ? waiting : null}
      {children}
      {isRefused ? null : waiting}
    </>
  );
}
