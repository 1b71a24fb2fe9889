import { useTaste } from '../../text/taste.ts';
import { useHouse } from '../../ui/house.ts';
import type { AppointmentBody } from './queries.ts';
import { useCalendarText } from './words.ts';

/** Appointments, each a link to its file for any calendar program. */
export function Appointments({ appointments }: { appointments: readonly AppointmentBody[] }) {
  const words = useCalendarText();
  const { language } = useTaste();
  const { storehouse } = useHouse();
  const whenOf = useWhen();
  return (
    <ul className="list">
      {appointments.map((one) => (
        <li key={one.id}>
          <a
            href={`/api/storehouses/${storehouse}/appointments/${one.id}/file?language=${language}`}
            download
          >
            <span>
              <b>{one.summary}</b>
              <br />
              <span className="soft">
                {[whenOf(one), one.place, one.isOwn ? words.own : '', words.states[one.status] ?? '']
                  .filter((part) => part !== '')
                  .join(' · ')}
              </span>
            </span>
            <span className="num no-print">{words.save}</span>
          </a>
        </li>
      ))}
    </ul>
  );
}

function useWhen() {
  const words = useCalendarText();
  const { format } = useHouse();
  return ({ on, startsAt, endsAt }: AppointmentBody): string => {
    if (on !== null) return format.day(on);
    if (startsAt === null) return '';
    const from = format.instant(startsAt);
    return endsAt === null ? from : words.until(from, format.instant(endsAt));
  };
}
