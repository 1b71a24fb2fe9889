import { useLocation } from '@tanstack/react-router';
import { PurchasesHere } from './purchases-here.tsx';

/** The pages with the form show what waits above it. */
const SHOWS_IT = /\/(shopping|supplies)$/;

/** The same on any other page; sent from whatever page is open. */
export function WaitingPurchases() {
  const { pathname } = useLocation();
  return SHOWS_IT.test(pathname) ? null : <PurchasesHere />;
}
