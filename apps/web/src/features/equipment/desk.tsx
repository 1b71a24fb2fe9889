import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { Figures, State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { DeskScales } from '../scale/desk-scales.tsx';
import { Care } from './care.tsx';
import { HandToHand } from './hand-to-hand.tsx';
import { IsFree } from './is-free.tsx';
import { KeeperNext } from './keeper-next.tsx';
import { KeptAhead } from './kept-ahead.tsx';
import { type Booking, type Desk, deskQuery, inside, readAnew } from './queries.ts';
import { Veto } from './relay-answer.tsx';
import { useEquipmentText } from './words.ts';

/** The keeper's first page: what is out and late and whom it holds up, what is fetched next, what needs care, who waits. */
export function EquipmentDesk() {
  const words = useEquipmentText();
  const { storehouse, duties } = useHouse();
  const seesSeals = duties.includes('equipment_keeper') || duties.includes('coordinator');
  useTitle(words.desk);
  const reading = useQuery(deskQuery({ storehouse }));
  return (
    <Loaded isPage reading={reading}>
      {(desk) => (
        <>
          <KeptAhead out={desk.out} booked={desk.bookings} />
          <h1>{words.deskTitle(desk.out.length, desk.out.filter(({ isLate }) => isLate).length)}</h1>
          <KeeperNext desk={desk} />
          <div className="cols">
            <div className="stack">
              <Out desk={desk} />
              <Next desk={desk} />
              <IsFree />
            </div>
            <div className="stack">
              <HandToHand desk={desk} />
              <Care desk={desk} />
              <DeskScales />
              <Waits desk={desk} />
              <Peaks desk={desk} />
              <Link className="btn" to="/s/$storehouse/equipment/use" params={{ storehouse }}>
                {words.toUse}
              </Link>
              <Link className="btn" to="/s/$storehouse/equipment" params={{ storehouse }}>
                {words.title}
              </Link>
              {seesSeals ? (
                <Link className="btn" to="/s/$storehouse/packing/machines" params={{ storehouse }}>
                  {words.sealMachines}
                </Link>
              ) : null}
            </div>
          </div>
        </>
      )}
    </Loaded>
  );
}

function Out({ desk }: { desk: Desk }) {
  const words = useEquipmentText();
  const { storehouse, format } = useHouse();
  return (
    <section className="stack">
      <h2>{words.outTitle}</h2>
      {desk.out.length === 0 ? <p className="soft">{words.nothingOut}</p> : null}
      <ul className="list">
        {desk.out.map((loan) => (
          <li key={loan.id}>
            <Link
              to="/s/$storehouse/equipment/$item/loans/$loan"
              params={{ storehouse, item: loan.itemId, loan: loan.id }}
            >
              <span>
                <b>{`${loan.itemName} ${loan.unitNo}`}</b> {loan.household.name}
                <br />
                <span className="soft">
                  {[
                    words.outUntil(format.instant(loan.dueAt)),
                    loan.blocks && loan.next
                      ? words.holdsUp(
                          loan.next.household?.name ?? words.session,
                          format.instant(loan.next.startsAt),
                        )
                      : '',
                    loan.lateMinorUnitsNow > 0 ? words.lateSoFar(format.money(loan.lateMinorUnitsNow)) : '',
                    loan.depositMinorUnits > 0
                      ? words.depositBack(
                          format.money(Math.max(0, loan.depositMinorUnits - loan.lateMinorUnitsNow)),
                        )
                      : '',
                  ]
                    .filter(Boolean)
                    .join(' · ')}
                </span>
              </span>
              {loan.isLate ? <State kind="wrong" word={words.late} /> : null}
            </Link>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Next({ desk }: { desk: Desk }) {
  const words = useEquipmentText();
  const next = desk.bookings.filter(({ state }) => state !== 'out');
  return (
    <section className="stack">
      <h2>{words.nextTitle}</h2>
      {next.length === 0 ? <p className="soft">{words.nothingNext}</p> : null}
      <ul className="list">
        {next.map((booking) => (
          <NextOne key={booking.id} booking={booking} />
        ))}
      </ul>
    </section>
  );
}

const NO_SHOW_MS = 4 * 3_600_000;

function NextOne({ booking }: { booking: Booking }) {
  const words = useEquipmentText();
  const { storehouse, format, duties } = useHouse();
  const queries = useQueryClient();
  const free = useMutation({
    mutationFn: () =>
      ask(inside.bookings[':booking']['not-fetched'].$post({ param: { storehouse, booking: booking.id } })),
    onSettled: () => readAnew(queries),
  });
  const keeps = duties.includes('equipment_keeper') || duties.includes('coordinator');
  const isLost = booking.state === 'booked' && Date.parse(booking.startsAt) + NO_SHOW_MS <= Date.now();
  const who = booking.household?.name ?? (booking.purpose === 'session' ? words.session : words.service2);
  const text = (
    <span>
      <b>{`${booking.itemName} ${booking.unitNo}`}</b> {who}
      <br />
      <span className="soft">
        {[
          words.freeFrom(format.instant(booking.startsAt), format.instant(booking.endsAt)),
          booking.relayAgreedAt === null ? '' : words.relayAgreed,
          booking.state === 'asked' ? words.waitsForYes : '',
        ]
          .filter(Boolean)
          .join(' · ')}
      </span>
    </span>
  );
  return (
    <li>
      {keeps && booking.purpose === 'loan' && booking.state === 'booked' ? (
        <Link
          to="/s/$storehouse/equipment/$item/bookings/$booking"
          params={{ storehouse, item: booking.itemId, booking: booking.id }}
        >
          {text}
        </Link>
      ) : (
        <p>{text}</p>
      )}
      {keeps && isLost ? (
        <button type="button" className="btn" onClick={() => free.mutate()}>
          {words.notFetched}
        </button>
      ) : null}
      {keeps ? <Veto booking={booking} /> : null}
      <ProblemSaid error={free.error} />
    </li>
  );
}

function Waits({ desk }: { desk: Desk }) {
  const words = useEquipmentText();
  const { format } = useHouse();
  return (
    <section className="stack">
      <h2>{words.waitsTitle}</h2>
      {desk.waiting.length === 0 ? <p className="soft">{words.nobodyWaits}</p> : null}
      <ul className="list">
        {desk.waiting.map((wish) => (
          <li key={wish.id}>
            <p>
              <b>{wish.itemName}</b> {wish.household?.name}{' '}
              <span className="soft">
                {words.freeFrom(format.instant(wish.startsAt), format.instant(wish.endsAt))}
              </span>
            </p>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** How many pieces of a thing are wanted at one moment by what is out and booked, cleaning and travel with it. */
function Peaks({ desk }: { desk: Desk }) {
  const words = useEquipmentText();
  if (desk.peaks.length === 0) return null;
  return (
    <section className="stack">
      <h2>{words.peakTitle}</h2>
      <Figures
        rows={desk.peaks.map(({ itemName, units, mostAtOnce }) => ({
          name: itemName,
          value: words.peak(mostAtOnce, units),
        }))}
      />
    </section>
  );
}
