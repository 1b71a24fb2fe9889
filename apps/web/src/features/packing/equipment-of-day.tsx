import { queryOptions, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { useState } from 'react';
import { ask, askOnce } from '../../api/client.ts';
import { Choice } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { type OfSession, ofSession, sessionApi } from './queries.ts';
import { useDayEquipmentText } from './words.ts';

type Body = InferResponseType<typeof sessionApi.equipment.$get, 200>;

const dayEquipmentQuery = (param: OfSession) =>
  queryOptions({
    queryKey: [...ofSession(param), 'equipment'],
    queryFn: () => ask(sessionApi.equipment.$get({ param })),
  });

/** Sealers, scales and dollies that the lead books for the whole day. */
export function EquipmentOfDay({ session, isOpen }: { session: string; isOpen: boolean }) {
  const t = useDayEquipmentText();
  const { storehouse } = useHouse();
  const param = { storehouse, session };
  const reading = useQuery(dayEquipmentQuery(param));
  return (
    <section className="stack">
      <h2>{t.title}</h2>
      <Loaded reading={reading}>
        {(body) => (
          <>
            <Booked param={param} body={body} isOpen={isOpen} />
            {isOpen ? <BookForm param={param} body={body} /> : null}
          </>
        )}
      </Loaded>
    </section>
  );
}

function Booked({ param, body, isOpen }: { param: OfSession; body: Body; isOpen: boolean }) {
  const t = useDayEquipmentText();
  const { format } = useHouse();
  const queries = useQueryClient();
  const giving = useMutation({
    mutationFn: (booking: string) =>
      ask(sessionApi.equipment[':booking'].$delete({ param: { ...param, booking } })),
    onSettled: () => queries.invalidateQueries({ queryKey: ofSession(param) }),
  });
  if (body.booked.length === 0) return <p className="soft">{t.nothing}</p>;
  return (
    <>
      <ul className="list">
        {body.booked.map(({ id, itemName, unitNo, unitCode, startsAt, endsAt, state, outUntil }) => (
          <li key={id} className="row place">
            <span>
              <b>{`${itemName} ${unitNo}`}</b>{' '}
              <span className="soft">
                {`${unitCode} · ${t.fromTo(format.instant(startsAt), format.hour(endsAt))}`}
              </span>
              {outUntil !== null && Date.parse(outUntil) < Date.now() ? (
                <>
                  <br />
                  <State kind="wrong" word={t.isLate} /> {t.lateSince(format.instant(outUntil))}
                </>
              ) : null}
            </span>
            {isOpen && state === 'booked' ? (
              <button
                type="button"
                className="btn"
                disabled={giving.isPending}
                onClick={() => giving.mutate(id)}
              >
                {t.giveBack}
                <span className="sr">: {`${itemName} ${unitNo}`}</span>
              </button>
            ) : null}
          </li>
        ))}
      </ul>
      <ProblemSaid error={giving.error} />
    </>
  );
}

function BookForm({ param, body }: { param: OfSession; body: Body }) {
  const t = useDayEquipmentText();
  const queries = useQueryClient();
  const bookable = body.items.filter(({ free, outranking }) => free + outranking > 0);
  const taken = body.items.filter(({ free, outranking }) => free + outranking === 0);
  const [chosen, setChosen] = useState('');
  const itemId = bookable.some(({ id }) => id === chosen) ? chosen : (bookable[0]?.id ?? '');
  const booking = useMutation({
    mutationFn: () =>
      askOnce(`session-equipment ${param.session}`, { itemId }, (headers) =>
        sessionApi.equipment.$post({ param, json: { itemId } }, { headers }),
      ),
    onSettled: () => queries.invalidateQueries({ queryKey: ofSession(param) }),
  });
  if (body.items.length === 0) return <p className="soft">{t.groupHasNone}</p>;
  return (
    <Form onSend={() => booking.mutate()}>
      {bookable.length === 0 ? null : (
        <>
          <Choice
            label={t.thing}
            value={itemId}
            options={bookable.map(({ id, name, free, outranking, lateFree }) => ({
              value: id,
              name:
                free === 0
                  ? t.outranks(name, outranking)
                  : lateFree > 0
                    ? t.freeLate(name, free, lateFree)
                    : t.free(name, free),
            }))}
            onChange={setChosen}
          />
          <div>
            <button type="submit" className="btn" disabled={booking.isPending}>
              {t.book}
            </button>
          </div>
        </>
      )}
      {taken.length === 0 ? null : (
        <p className="soft">{t.taken(taken.map(({ name }) => name).join(', '))}</p>
      )}
      {booking.data && booking.data.outranked > 0 ? (
        <p className="said watch-said" role="status">
          {t.gaveWay(booking.data.outranked)}
        </p>
      ) : null}
      <ProblemSaid error={booking.error} />
    </Form>
  );
}
