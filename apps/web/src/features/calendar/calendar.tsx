import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { useTaste, useText } from '../../text/taste.ts';
import { Choice } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { Address } from './address.tsx';
import { Appointments } from './appointments.tsx';
import { FeedList } from './feed-list.tsx';
import { type AppointmentBody, appointmentsQuery, feedsApi } from './queries.ts';
import { useCalendarText } from './words.ts';

/** What has a day or an hour, and how to have it in one's own calendar. */
export function Calendar() {
  const t = useText();
  const words = useCalendarText();
  const { language } = useTaste();
  const { storehouse, format } = useHouse();
  useTitle(words.title);
  const reading = useQuery(appointmentsQuery({ storehouse }, language));
  return (
    <>
      <Link className="who no-print" to="/s/$storehouse/household" params={{ storehouse }}>
        <BackIcon />
        {t.household}
      </Link>
      <Loaded isPage reading={reading}>
        {({ appointments }) => {
          const ahead = appointments.filter((one) => isAhead(one, format.today()));
          return (
            <>
              <h1>{words.stands(ahead.filter(({ status }) => status !== 'cancelled').length)}</h1>
              <div className="cols">
                <section className="stack">
                  <h2>{words.ahead}</h2>
                  {ahead.length === 0 ? (
                    <p>{words.nothing}</p>
                  ) : (
                    <>
                      <p className="soft no-print">{words.saveWords}</p>
                      <Appointments appointments={ahead} />
                    </>
                  )}
                </section>
                <div className="stack no-print">
                  <Subscribe appointments={ahead} />
                  <FeedList />
                </div>
              </div>
            </>
          );
        }}
      </Loaded>
    </>
  );
}

/** What is still to come or is today; an hour counts until its end. */
function isAhead({ on, startsAt, endsAt }: AppointmentBody, todayOn: string): boolean {
  const last = endsAt ?? startsAt;
  return on === null ? last !== null && Date.parse(last) > Date.now() : on >= todayOn;
}

function Subscribe({ appointments }: { appointments: readonly AppointmentBody[] }) {
  const words = useCalendarText();
  const { language } = useTaste();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const [shown, setShown] = useState('mine');
  const items = new Map(
    appointments.flatMap(({ itemKind, itemId, itemName }) =>
      itemKind === null || itemId === null || itemName === null
        ? []
        : [[itemId, { kind: itemKind, name: itemName }] as const],
    ),
  );
  const making = useMutation({
    mutationFn: () => {
      const item = items.get(shown);
      const wish = item
        ? { scope: 'item' as const, item: { kind: item.kind, id: shown } }
        : { scope: shown === 'storehouse' ? ('storehouse' as const) : ('mine' as const) };
      return ask(feedsApi.$post({ param: { storehouse }, json: { ...wish, language } }));
    },
    onSuccess: () => queries.invalidateQueries({ queryKey: ['calendar-feeds'] }),
  });
  return (
    <NextStep title={words.subscribe}>
      <Form onSend={() => making.mutate()}>
        <p>{words.subscribeWords}</p>
        <Choice
          label={words.shows}
          value={shown}
          options={[
            { value: 'mine', name: words.mine },
            { value: 'storehouse', name: words.storehouse },
            ...[...items].map(([id, { name }]) => ({ value: id, name: words.onlyItem(name) })),
          ]}
          onChange={setShown}
        />
        <ProblemSaid error={making.error} />
        <div>
          <button type="submit" className="btn go" disabled={making.isPending}>
            {words.make}
          </button>
        </div>
      </Form>
      {making.data ? <Address feed={making.data} /> : null}
    </NextStep>
  );
}
