import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { Check } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { CostLinks } from '../settlement/cost-links.tsx';
import { OwnCosts } from '../settlement/own-costs.tsx';
import { BookTime } from './book-time.tsx';
import { EquipmentOfDay } from './equipment-of-day.tsx';
import { ofSession, type SessionPage, sessionApi, sessionQuery } from './queries.ts';
import { HelpersQueues } from './queue-taps.tsx';
import { WishesForm } from './wishes-form.tsx';
import { usePackingText } from './words.ts';
import './packing.css';

/** One packing day, as a household sees it: what it wants packed, its time, and whether one comes to help. */
export function Session() {
  const { session } = useParams({ from: '/s/$storehouse/packing/$session' });
  const { storehouse } = useHouse();
  const reading = useQuery(sessionQuery({ storehouse, session }));
  return (
    <Loaded isPage reading={reading}>
      {(page) => <SessionBody page={page} />}
    </Loaded>
  );
}

function SessionBody({ page }: { page: SessionPage }) {
  const t = usePackingText();
  const { storehouse, format, duties, household } = useHouse();
  const { session, slots } = page;
  useTitle(session.name);
  const leads = duties.includes('packing_lead') || duties.includes('coordinator');
  const own = slots.find(({ isOwn }) => isOwn);
  const isOpen = session.stage === 'open';
  const params = { storehouse, session: session.id };
  return (
    <>
      <Link className="who" to="/s/$storehouse/packing" params={{ storehouse }}>
        <BackIcon />
        {t.packing}
      </Link>
      <h1>{t.dayStands(session.name, format.instant(session.startsAt), format.hour(session.endsAt))}</h1>
      <p>
        {[session.place, t.stages[session.stage as keyof typeof t.stages]].filter(Boolean).join(' · ')}
        {session.endedBecause === '' ? null : <span className="block">{session.endedBecause}</span>}
      </p>
      {leads ? <LeadLinks params={params} stage={session.stage} /> : null}
      {leads || duties.includes('treasurer') ? <CostLinks {...{ params, stage: session.stage }} /> : null}
      {household === null ? null : (
        <>
          <WishesForm page={page} isOpen={isOpen} />
          {page.wishes.length === 0 ? null : <BookTime page={page} own={own} />}
        </>
      )}
      {household === null ? null : <OwnCosts session={session.id} />}
      {isOpen ? <Hand page={page} /> : null}
      {session.stage === 'running' && page.hand?.isComing && !leads ? <HelpersQueues day={session} /> : null}
      {leads ? <EquipmentOfDay session={session.id} isOpen={isOpen} /> : null}
    </>
  );
}

function LeadLinks({ params, stage }: { params: { storehouse: string; session: string }; stage: string }) {
  const t = usePackingText();
  const queries = useQueryClient();
  const starting = useMutation({
    mutationFn: () => ask(sessionApi.start.$post({ param: params })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['packing'] }),
  });
  return (
    <section className="stack">
      <div className="actions">
        <Link className="btn" to="/s/$storehouse/packing/$session/plan" params={params}>
          {t.toPlan}
        </Link>
        {stage === 'open' || stage === 'running' ? (
          <Link className="btn" to="/s/$storehouse/packing/$session/labels" params={params}>
            {t.labelsAhead}
          </Link>
        ) : null}
        {stage === 'open' || stage === 'running' ? (
          <Link className="btn" to="/s/$storehouse/packing/$session/tares" params={params}>
            {t.toTares}
          </Link>
        ) : null}
        {stage === 'open' ? (
          <button
            type="button"
            className="btn"
            disabled={starting.isPending}
            onClick={() => starting.mutate()}
          >
            {t.start}
          </button>
        ) : (
          <Link className="btn go" to="/s/$storehouse/packing/$session/log" params={params}>
            {t.toLog}
          </Link>
        )}
      </div>
      {stage === 'open' ? (
        <>
          <p className="soft">{t.startSays}</p>
          <p>
            <Link to="/s/$storehouse/packing/$session/change" params={params}>
              {t.changeDay}
            </Link>
          </p>
        </>
      ) : null}
      <ProblemSaid error={starting.error} />
    </section>
  );
}

type HandSaid = NonNullable<SessionPage['hand']>;
const NOT_COMING: HandSaid = {
  ...{ isComing: false, maySeam: false, mayLift: true },
  ...{ seatedOnly: false, isUnder16: false },
};

/** Coming to help, with what one can and can't do there. */
function Hand({ page }: { page: SessionPage }) {
  const t = usePackingText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const param = { storehouse, session: page.session.id };
  const [ticked, setTicked] = useState<HandSaid | null>(null); // a tick shows at once, the book's answer after it
  const saying = useMutation({
    mutationFn: (json: HandSaid) => ask(sessionApi.hand.$put({ param, json })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ofSession(param) }),
    onSettled: (_answer, _error, said) => setTicked((now) => (now === said ? null : now)),
  });
  const hand = ticked ?? page.hand ?? NOT_COMING;
  const say = (change: Partial<HandSaid>) => {
    const said = { ...hand, ...change };
    setTicked(said);
    saying.mutate(said);
  };
  return (
    <section className="stack">
      <h2>{t.help}</h2>
      <p>{t.coming(page.coming)}</p>
      <Check label={t.iCome} isOn={hand.isComing} onChange={(isComing) => say({ isComing })} />
      {hand.isComing ? (
        <>
          <Check
            label={t.isUnder16}
            isOn={hand.isUnder16}
            onChange={(isUnder16) => say(isUnder16 ? { isUnder16, maySeam: false } : { isUnder16 })}
          />
          {hand.isUnder16 ? (
            <p className="said watch-said">{t.youngSays}</p>
          ) : (
            <Check label={t.maySeam} isOn={hand.maySeam} onChange={(maySeam) => say({ maySeam })} />
          )}
          <Check label={t.mayLift} isOn={hand.mayLift} onChange={(mayLift) => say({ mayLift })} />
          <Check label={t.seatedOnly} isOn={hand.seatedOnly} onChange={(seatedOnly) => say({ seatedOnly })} />
          <p className="said watch-said">{t.liftCaution}</p>
        </>
      ) : null}
      <ProblemSaid error={saying.error} />
    </section>
  );
}
