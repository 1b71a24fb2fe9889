import { useWaiting } from '../api/outbox.ts';
import { counterPlace } from '../features/equipment/counter-place.ts';
import { WaitingLoans } from '../features/equipment/waiting-loans.tsx';
import { WaitingLandings } from '../features/landing/waiting-landings.tsx';
import { WaitingLines } from '../features/packing/waiting-lines.tsx';
import { WaitingPhotos } from '../features/photo/waiting-photos.tsx';
import { WaitingPurchases } from '../features/supplies/waiting-purchases.tsx';
import { useHouse } from './house.ts';

/** Everything that this phone has written down and the book has not taken. */
export default function WaitingOutside() {
  const loans = useWaiting<never>(counterPlace(useHouse()));
  return (
    <>
      {loans.length === 0 ? null : <WaitingLoans />}
      <WaitingLines />
      <WaitingPurchases />
      <WaitingLandings />
      <WaitingPhotos />
    </>
  );
}
