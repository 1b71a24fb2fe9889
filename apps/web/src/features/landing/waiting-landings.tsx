import { useQueryClient } from '@tanstack/react-query';
import { Link, useLocation } from '@tanstack/react-router';
import { actingHere } from '../../api/acting.ts';
import { useSending } from '../../api/use-sending.ts';
import { useHouse } from '../../ui/house.ts';
import { isRefused } from './queue.ts';
import { drain } from './send.ts';
import { placeOf, useBuysWritten, useQueue } from './store.ts';
import { useLandingText } from './words.ts';

/** What this phone has written down at a lorry and the book has not taken; sent from whatever page is open. */
export function WaitingLandings() {
  const buys = useBuysWritten(useHouse());
  return actingHere() ? null : buys.map((buy) => <OfBuy key={buy} buy={buy} />); // whoever acts for others lands nothing
}

function OfBuy({ buy }: { buy: string }) {
  const t = useLandingText();
  const house = useHouse();
  const queries = useQueryClient();
  const { pathname } = useLocation();
  const param = { storehouse: house.storehouse, buy };
  const place = placeOf({ ...house, buy });
  const queue = useQueue(place);
  const { written } = queue;
  useSending(place, written.length > 0, () => drain({ place, param, queries }));
  if (written.length === 0 || pathname.includes(`/${buy}/landing`)) return null; // where it stands in full
  return (
    <section className="stack">
      <p className="said watch-said" role="status">
        {isRefused(queue) ? t.waitsBehindRefused(written.length - 1) : t.waitsOfLorry(written.length)}
      </p>
      <Link className="btn" to="/s/$storehouse/buys/$buy/landing" params={param}>
        {t.toLanding}
      </Link>
    </section>
  );
}
