import { useQueryClient } from '@tanstack/react-query';
import { useEffect } from 'react';
import { useHouse } from '../../ui/house.ts';
import { type Booking, itemBookingsQuery, itemQuery, type Loan, loanQuery } from './queries.ts';

const SOON_MS = 24 * 3_600_000;

type Ahead = { readonly out: readonly Pick<Loan, 'id'>[]; readonly booked: readonly Booking[] };

/**
 * Reads ahead what is opened at the shed door, where there may be no signal: the loans that are out, the bookings of the
 * next day, and the two pages themselves.
 */
export function KeptAhead(of: Ahead) {
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const soon = of.booked.filter(
    ({ state, startsAt }) => state === 'booked' && Date.parse(startsAt) < Date.now() + SOON_MS,
  );
  const ids = JSON.stringify([of.out.map(({ id }) => id), [...new Set(soon.map(({ itemId }) => itemId))]]);
  useEffect(() => {
    const [loans, items] = JSON.parse(ids) as [string[], string[]];
    const ahead = { staleTime: 60_000 };
    for (const loan of loans) void queries.prefetchQuery({ ...loanQuery({ storehouse, loan }), ...ahead });
    for (const item of items) {
      void queries.prefetchQuery({ ...itemQuery({ storehouse, item }), ...ahead });
      void queries.prefetchQuery({ ...itemBookingsQuery({ storehouse, item }), ...ahead });
    }
    if (loans.length > 0) void import('./bring-back.tsx');
    if (items.length > 0) void import('./hand-out.tsx');
  }, [ids, storehouse, queries]);
  return null;
}
