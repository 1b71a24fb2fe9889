import { Link, useLocation } from '@tanstack/react-router';
import { usePlaces } from '../../api/outbox.ts';
import { useHouse } from '../../ui/house.ts';
import { linePlaces } from './line-place.ts';
import { useLogQueue } from './use-log.ts';
import { WaitingActs } from './waiting-acts.tsx';
import { usePackingText } from './words.ts';

/** What this phone has written down at the lines and the book has not taken; sent from whatever page is open. */
export function WaitingLines() {
  return usePlaces(linePlaces(useHouse())).map((session) => <OfSession key={session} session={session} />);
}

/** The pages of the line show what waits beside what one works at. */
const SHOWS_IT = ['log', 'seals', 'tares'];

function OfSession({ session }: { session: string }) {
  const t = usePackingText();
  const { storehouse, duties } = useHouse();
  const leads = duties.includes('packing_lead') || duties.includes('coordinator');
  const log = useLogQueue(session);
  const { pathname } = useLocation();
  if (SHOWS_IT.some((page) => pathname.endsWith(`/${session}/${page}`))) return null;
  return (
    <section className="stack">
      <WaitingActs log={log} />
      {leads ? (
        <Link className="btn" to="/s/$storehouse/packing/$session/log" params={{ storehouse, session }}>
          {t.toLog}
        </Link>
      ) : (
        <Link className="btn" to="/s/$storehouse/packing/$session" params={{ storehouse, session }}>
          {t.toDay}
        </Link>
      )}
    </section>
  );
}
