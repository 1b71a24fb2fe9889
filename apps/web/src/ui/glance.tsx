import type { ReactNode } from 'react';
import './glance.css';

/** Questions with their answers, as they are asked at a first page. */
export const Glance = ({ children }: { children: ReactNode }) => <dl className="glance">{children}</dl>;

/** One question with its answer. */
export function Answer({ ask, children }: { ask: string; children: ReactNode }) {
  return (
    <div>
      <dt>{ask}</dt>
      <dd>{children}</dd>
    </div>
  );
}
