import { Link } from '@tanstack/react-router';
import type { ReactNode } from 'react';

/** A link to an address that is known only when the page is read, such as one that the API names. */
export function LooseLink({
  to,
  className,
  children,
}: {
  to: string;
  className?: string;
  children: ReactNode;
}) {
  return (
    <Link to={to as '/'} {...(className === undefined ? {} : { className })}>
      {children}
    </Link>
  );
}
