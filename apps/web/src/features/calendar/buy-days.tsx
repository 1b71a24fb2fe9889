import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useTaste } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Appointments } from './appointments.tsx';
import { appointmentsQuery } from './queries.ts';
import { useCalendarText } from './words.ts';

/** The days of one buy, to be taken along into any calendar. */
export function BuyDays({ buy }: { buy: string }) {
  const words = useCalendarText();
  const { language } = useTaste();
  const { storehouse } = useHouse();
  const reading = useQuery(appointmentsQuery({ storehouse }, language));
  return (
    <details className="no-print">
      <summary>{words.inBuy}</summary>
      <div className="stack">
        <p className="soft">{words.saveWords}</p>
        <Loaded reading={reading}>
          {({ appointments }) => (
            <Appointments appointments={appointments.filter(({ itemId }) => itemId === buy)} />
          )}
        </Loaded>
        <p>
          <Link to="/s/$storehouse/calendar" params={{ storehouse }}>
            {words.toCalendar}
          </Link>
        </p>
      </div>
    </details>
  );
}
