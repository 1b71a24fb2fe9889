import type { ReactNode } from 'react';

/** One question with its answer, in the list of a day at a glance. */
export function Answer({ ask, children }: { ask: string; children: ReactNode }) {
  return (
    <div>
      <dt>{ask}</dt>
      <dd>{children}</dd>
    </div>
  );
}
