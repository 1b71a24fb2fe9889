import { useQueryClient } from '@tanstack/react-query';
import { Link, useLocation } from '@tanstack/react-router';
import { sendWaiting, throwAway, useWaiting, type Waiting } from '../../api/outbox.ts';
import { useSending } from '../../api/use-sending.ts';
import { useHouse } from '../../ui/house.ts';
import { counterPlace } from './counter-place.ts';
import { type LoanAct, sendLoanAct } from './loan-act.ts';
import { readAnew } from './queries.ts';
import { type EquipmentWords, useEquipmentText } from './words.ts';

/**
 * What this phone has written down at the shed door and the book has not taken, on every page of the storehouse; it is sent
 * from whatever page is open, as soon as somebody answers.
 */
export function WaitingLoans() {
  const words = useEquipmentText();
  const house = useHouse();
  const queries = useQueryClient();
  const place = counterPlace(house);
  const waiting = useWaiting<LoanAct>(place);
  const open = waiting.filter(({ refusal }) => refusal === null);
  const refused = waiting.filter(({ refusal }) => refusal !== null);
  useSending(place, open.length > 0, async () => {
    const count = await sendWaiting<LoanAct>(place, (act, key) => sendLoanAct(house.storehouse, act, key));
    if (count > 0) await readAnew(queries);
  });
  return (
    <section className="stack" aria-live="polite">
      {open.length === 0 ? null : (
        <>
          <p className="said watch-said">{words.waits(open.length)}</p>
          <ul className="list">
            {open.map((one) => (
              <li key={one.id}>
                <Told one={one} />
              </li>
            ))}
          </ul>
        </>
      )}
      {refused.length === 0 ? null : (
        <>
          <p className="said">{words.refused(refused.length)}</p>
          <ul className="list">
            {refused.map((one) => (
              <li key={one.id} className="stack">
                <Told one={one} />
                <p>{one.refusal}</p>
                <div className="actions">
                  <LookAgain act={one.act} />
                  <button type="button" className="btn" onClick={() => throwAway(place, one.id)}>
                    {words.throwAway}
                  </button>
                </div>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Told({ one: { act, at } }: { one: Waiting<LoanAct> }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  return (
    <span>
      {sayAct(words, act)}
      <span className="soft block">{format.instant(at)}</span>
    </span>
  );
}

function sayAct(words: EquipmentWords, act: LoanAct): string {
  if (act.kind === 'back') return words.actBack(act.thing, act.json.broughtBy);
  const { takenBy } = act.json;
  return act.kind === 'on' ? words.actOn(act.thing, takenBy) : words.actOut(act.thing, takenBy);
}

/** The page at which it was written, unless it is open already. */
function LookAgain({ act: { kind, itemId, of } }: { act: LoanAct }) {
  const words = useEquipmentText();
  const { storehouse } = useHouse();
  const isOpen = useLocation().pathname.endsWith(of);
  if (isOpen) return null;
  return kind === 'back' ? (
    <Link
      className="btn"
      to="/s/$storehouse/equipment/$item/loans/$loan"
      params={{ storehouse, item: itemId, loan: of }}
    >
      {words.lookAgain}
    </Link>
  ) : (
    <Link
      className="btn"
      to="/s/$storehouse/equipment/$item/bookings/$booking"
      params={{ storehouse, item: itemId, booking: of }}
    >
      {words.lookAgain}
    </Link>
  );
}
