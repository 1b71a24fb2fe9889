import { readWallTime } from '@sheafbook/booking';
import { addDays, isWallTime } from '@sheafbook/units';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { ask } from '../../api/client.ts';
import { ApiProblem } from '../../api/problem.ts';
import { Check, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { Food } from '../buy/run-queries.ts';
import { FoodsThrough } from './foods-through.tsx';
import { LeftBehind } from './left-behind.tsx';
import { freeTimesQuery, type Item, inside, readAnew } from './queries.ts';
import { SpanFields } from './span-fields.tsx';
import { useEquipmentText } from './words.ts';

const SHOWN = 5;

/** When a thing is free, and booking it; of a taken time one may wait, or ask to be handed it straight on. */
export function BookForm({ item }: { item: Item }) {
  const words = useEquipmentText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, item: item.id };
  const { draft, change, forget } = useDraft(
    `booking.${item.id}`,
    {
      ...{ fromDay: addDays(format.today(), 1), fromTime: '09:00' },
      ...{ untilDay: addDays(format.today(), 1), untilTime: '18:00', byRelay: false },
      ...{ isFromSecond: false, isUntilSecond: false },
      through: [] as readonly Food[],
    },
    { rows: { through: { id: '', nameEn: '', nameEs: '' } } },
  );
  const { through } = draft;
  const foodIds = through.map(({ id }) => id);
  const fresh = () => {
    forget(); // the times stay on the screen, beside the sentence that says that they are booked
    return readAnew(queries);
  };
  const times = {
    from: `${draft.fromDay}T${draft.fromTime}`,
    until: `${draft.untilDay}T${draft.untilTime}`,
  };
  const isTwice = {
    from: comesTwice(times.from, format.timeZone),
    until: comesTwice(times.until, format.timeZone),
  };
  const asked = {
    ...{ ...times, foodIds },
    ...{
      isFromSecond: isTwice.from && draft.isFromSecond,
      isUntilSecond: isTwice.until && draft.isUntilSecond,
    },
  };
  const booking = useMutation({
    mutationFn: () =>
      ask(
        inside.equipment[':item'].bookings.$post({
          param,
          json: { ...asked, byRelay: draft.byRelay },
        }),
      ),
    onSuccess: fresh,
  });
  const waiting = useMutation({
    mutationFn: () => ask(inside.equipment[':item'].waiting.$post({ param, json: asked })),
    onSuccess: fresh,
  });
  const problems = problemsOf(waiting.error ?? booking.error);
  const isTaken = booking.error instanceof ApiProblem && booking.error.code === 'equipment-taken';
  return (
    <Form
      onSend={() => {
        waiting.reset();
        booking.mutate();
      }}
    >
      <h2>{words.bookTitle}</h2>
      <FreeTimes item={item} />
      <SpanFields span={draft} change={change} problems={problems} />
      {isTwice.from ? (
        <Check
          label={words.fromSecond}
          isOn={draft.isFromSecond}
          onChange={(isFromSecond) => change({ isFromSecond })}
        />
      ) : null}
      {isTwice.until ? (
        <Check
          label={words.untilSecond}
          isOn={draft.isUntilSecond}
          onChange={(isUntilSecond) => change({ isUntilSecond })}
        />
      ) : null}
      {item.touchesFood ? (
        <FoodsThrough
          foods={through}
          onChange={(through) => change({ through })}
          problem={problems.foodIds}
        />
      ) : null}
      {item.mayRelay ? (
        <Check label={words.byRelay} isOn={draft.byRelay} onChange={(byRelay) => change({ byRelay })} />
      ) : null}
      <ProblemSaid error={waiting.error ?? booking.error} />
      {booking.data ? (
        <p className="said well-said" role="status">
          {booking.data.state === 'asked' ? words.askedDone : words.bookedDone}
        </p>
      ) : null}
      {booking.data ? <LeftBehind booking={booking.data} /> : null}
      {waiting.data ? (
        <p className="said well-said" role="status">
          {words.waitsNow}
        </p>
      ) : null}
      <div className="actions">
        <button type="submit" className="btn go" disabled={booking.isPending}>
          {words.book}
        </button>
        {isTaken ? (
          <button type="button" className="btn" onClick={() => waiting.mutate()}>
            {words.waitInstead}
          </button>
        ) : null}
      </div>
    </Form>
  );
}

/** Whether the clock on the wall shows a time twice, on the night on which it goes back. */
const comesTwice = (wallTime: string, timeZone: string): boolean =>
  isWallTime(wallTime) && readWallTime(wallTime, timeZone).comes === 'twice';

function FreeTimes({ item }: { item: Item }) {
  const words = useEquipmentText();
  const { storehouse, format } = useHouse();
  const reading = useQuery(freeTimesQuery({ storehouse, item: item.id }, 60));
  return (
    <Loaded reading={reading}>
      {({ free, late, unfit }) => (
        <>
          <h3>{words.freeTimes}</h3>
          {free.length === 0 ? (
            <p>
              {unfit.length > 0
                ? words.unfit(unfit.flatMap(({ blockers }) => blockers.map(sayBlocker(words))).join(', '))
                : late[0]
                  ? words.outAndLate(format.instant(late[0].dueAt))
                  : words.neverFree}
            </p>
          ) : late.length > 0 ? (
            <p>{words.someLate(late.length)}</p>
          ) : null}
          <ul>
            {free.slice(0, SHOWN).map(({ startsAt, endsAt, unitNo }) => (
              <li key={`${startsAt} ${unitNo}`}>
                {words.freeFrom(format.instant(startsAt), format.instant(endsAt))}
              </li>
            ))}
          </ul>
        </>
      )}
    </Loaded>
  );
}

const sayBlocker =
  ({ blockers }: ReturnType<typeof useEquipmentText>) =>
  (blocker: string) =>
    blockers[blocker] ?? blocker;
