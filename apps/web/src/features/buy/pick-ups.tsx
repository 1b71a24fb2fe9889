import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { api, ask, askOnce } from '../../api/client.ts';
import { pickUpsQuery } from '../../api/queries.ts';
import { useText } from '../../text/taste.ts';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { ByPen } from '../paper/by-pen.tsx';
import type { BuyLineBody, PickUpsBody } from './buy-body.ts';
import { instantIn } from './instant-in.ts';

const inside = api.storehouses[':storehouse'];
type PickUp = PickUpsBody['pickUps'][number];

/** What waits for the household of a shared-out buy, when it is fetched, and who signed for it. */
export function PickUps({
  buy,
  lines,
  isOpen,
}: {
  buy: string;
  lines: readonly BuyLineBody[];
  isOpen: boolean;
}) {
  const t = useText();
  const { storehouse, household } = useHouse();
  const pickUps = useQuery(pickUpsQuery({ storehouse, buy }));
  return (
    <section className="stack">
      <h2>{t.pickUp}</h2>
      <Loaded reading={pickUps}>
        {({ pickUps: found, waiting }) => {
          const own = found.filter(({ householdId }) => householdId === household);
          const mine = waiting.filter(({ householdId }) => householdId === household);
          const open = own.find(({ collectedAt }) => collectedAt === null);
          return (
            <>
              <Waiting pieces={mine} lines={lines} />
              {own.map((pickUp) => (
                <Appointment key={pickUp.id} pickUp={pickUp} buy={buy} mayFetch={isOpen && mine.length > 0} />
              ))}
              {isOpen && mine.length > 0 && !open ? (
                <>
                  <Plan buy={buy} />
                  <Sign buy={buy} />
                </>
              ) : null}
            </>
          );
        }}
      </Loaded>
    </section>
  );
}

function Waiting({ pieces, lines }: { pieces: PickUpsBody['waiting']; lines: readonly BuyLineBody[] }) {
  const t = useText();
  const { format } = useHouse();
  if (pieces.length === 0) return <p>{t.nothingToFetch}</p>;
  const foodOf = (lineId: string) => {
    const food = lines.find(({ id }) => id === lineId)?.food;
    return nameIn(format.language, food);
  };
  return (
    <Ledger
      caption={t.waitsForYou}
      columns={[{ name: t.food }, { name: t.bag }, { name: t.mass, isNumber: true }]}
      rows={pieces.map((piece) => ({
        key: `${piece.bagId} ${piece.lineId}`,
        cells: [
          foodOf(piece.lineId),
          piece.isOnHold ? t.onHold(piece.bagCode) : piece.bagCode,
          format.mass(piece.grams),
        ],
      }))}
    />
  );
}

function Appointment({ pickUp, buy, mayFetch }: { pickUp: PickUp; buy: string; mayFetch: boolean }) {
  const t = useText();
  const { format } = useHouse();
  if (pickUp.collectedAt !== null)
    return (
      <>
        <p>{t.fetched(format.instant(pickUp.collectedAt), pickUp.signedBy ?? '')}</p>
        <ByPen buy={buy} subject={pickUp.id} />
      </>
    );
  return (
    <>
      {pickUp.startsAt && pickUp.endsAt ? (
        <p>{t.appointment(format.instant(pickUp.startsAt), format.instant(pickUp.endsAt))}</p>
      ) : null}
      {mayFetch ? <Sign buy={buy} /> : null}
    </>
  );
}

/** One's own food, with an appointment or without. */
function Sign({ buy }: { buy: string }) {
  const t = useText();
  const { storehouse, personName } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { signedBy },
    change,
    reset,
  } = useDraft(`sign.${buy}`, { signedBy: personName });
  const param = { storehouse, buy };
  const signing = useMutation({
    mutationFn: () =>
      askOnce(`fetch.${buy}`, { signedBy }, (headers) =>
        inside.buys[':buy'].collections.$post({ param, json: { signedBy } }, { headers }),
      ),
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ['buy', param] });
    },
  });
  return (
    <Form onSend={() => signing.mutate()}>
      <p className="soft">{t.signWords}</p>
      <Field
        label={t.signedBy}
        value={signedBy}
        onChange={(event) => change({ signedBy: event.target.value })}
        problem={problemsOf(signing.error).signedBy && t.nameNeeded}
      />
      {signing.error ? <ProblemSaid error={signing.error} /> : null}
      <div>
        <button type="submit" className="btn" disabled={signing.isPending}>
          {t.signFetched}
        </button>
      </div>
    </Form>
  );
}

function Plan({ buy }: { buy: string }) {
  const t = useText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const {
    draft: { day, from, to },
    change,
    reset,
  } = useDraft(`pick-up.${buy}`, { day: format.today(), from: '10:00', to: '11:00' });
  const planning = useMutation({
    mutationFn: () => {
      const json = {
        startsAt: instantIn(format.timeZone, `${day}T${from}`),
        endsAt: instantIn(format.timeZone, `${day}T${to}`),
      };
      return ask(inside.buys[':buy']['pick-ups'].$post({ param: { storehouse, buy }, json }));
    },
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ['buy', { storehouse, buy }] });
    },
  });
  const problems = problemsOf(planning.error);
  return (
    <Form onSend={() => planning.mutate()}>
      <div className="pair">
        <Field
          label={t.day}
          type="date"
          required
          value={day}
          onChange={(event) => change({ day: event.target.value })}
        />
        <Field
          label={t.fromHour}
          type="time"
          required
          value={from}
          onChange={(event) => change({ from: event.target.value })}
          problem={problems.startsAt}
        />
        <Field
          label={t.toHour}
          type="time"
          required
          value={to}
          onChange={(event) => change({ to: event.target.value })}
          problem={problems.endsAt && t.hourProblem}
        />
      </div>
      {planning.error && Object.keys(problems).length === 0 ? <ProblemSaid error={planning.error} /> : null}
      <div>
        <button type="submit" className="btn" disabled={planning.isPending || !day || !from || !to}>
          {t.planPickUp}
        </button>
      </div>
    </Form>
  );
}
