import { ABSORBER_SIZES, ABSORBER_WINDOW, judgeOpenPack } from '@sheafbook/packing';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import { ask, askOnce } from '../../api/client.ts';
import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { type LogBody, ofSession, sessionApi } from './queries.ts';
import type { Log } from './use-log.ts';
import { usePackingText } from './words.ts';

const KIND = {
  fresh: 'well',
  'jar-them-now': 'watch',
  'past-window': 'wrong',
  stop: 'wrong',
  discard: 'wrong',
} as const;

/** How long the open pack of absorbers may stand open still, with "jar them now" before it is too late. */
export function AbsorberClock({ log, body }: { log: Log; body: LogBody }) {
  const t = usePackingText();
  const { format } = useHouse();
  const now = useNow();
  const open = body.packs.findLast(({ shutAt }) => shutAt === null);
  return (
    <section className="stack">
      <h2>{t.absorbers}</h2>
      {open ? (
        <>
          <p role="status">
            <State
              kind={KIND[judgeOpenPack(secondsSince(open.openedAt, now))]}
              word={t.packStates[judgeOpenPack(secondsSince(open.openedAt, now))]}
            />
          </p>
          <p>
            {t.packOpen(
              open.packets,
              format.hour(open.openedAt),
              format.hour(
                new Date(Date.parse(open.openedAt) + ABSORBER_WINDOW.windowSeconds * 1000).toISOString(),
              ),
            )}
          </p>
          <ShutPack log={log} packId={open.id} />
        </>
      ) : (
        <OpenPack log={log} />
      )}
    </section>
  );
}

const secondsSince = (iso: string, now: number) => Math.max(0, (now - Date.parse(iso)) / 1000);

/** The wall clock, told anew every few seconds while a pack stands open. */
function useNow(): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 5000);
    return () => clearInterval(timer);
  }, []);
  return now;
}

function OpenPack({ log }: { log: Log }) {
  const t = usePackingText();
  const queries = useQueryClient();
  const {
    draft: { size, packets },
    change,
    reset,
  } = useDraft(`absorber-pack.${log.param.session}`, { size: '300', packets: '25' });
  const { param } = log;
  const opening = useMutation({
    mutationFn: () => {
      const json = { sizeMillilitres: Number(size), packets: Number(packets) };
      return askOnce(`pack.${param.session}`, json, (headers) =>
        sessionApi['absorber-packs'].$post({ param, json }, { headers }),
      );
    },
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ofSession(param) });
    },
  });
  return (
    <>
      <p className="soft">{t.openPackSays}</p>
      <div className="pair">
        <Choice
          label={t.packSize}
          value={size}
          options={ABSORBER_SIZES.map((value) => ({ value: String(value), name: `${value} cc` }))}
          onChange={(size) => change({ size })}
        />
        <Field
          label={t.packets}
          inputMode="numeric"
          value={packets}
          onChange={(event) => change({ packets: event.target.value })}
        />
      </div>
      <button type="button" className="btn" disabled={opening.isPending} onClick={() => opening.mutate()}>
        {t.openPack}
      </button>
      <ProblemSaid error={opening.error} />
    </>
  );
}

function ShutPack({ log, packId }: { log: Log; packId: string }) {
  const t = usePackingText();
  const queries = useQueryClient();
  const {
    draft: { left },
    change,
    reset,
  } = useDraft(`absorber-left.${packId}`, { left: '0' });
  const { param } = log;
  const shutting = useMutation({
    mutationFn: () =>
      ask(
        sessionApi['absorber-packs'][':pack'].shutting.$post({
          param: { ...param, pack: packId },
          json: { packetsLeft: Number(left) },
        }),
      ),
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ofSession(param) });
    },
  });
  return (
    <>
      <div className="pair">
        <Field
          label={t.packetsLeft}
          inputMode="numeric"
          value={left}
          onChange={(event) => change({ left: event.target.value })}
        />
        <button type="button" className="btn" disabled={shutting.isPending} onClick={() => shutting.mutate()}>
          {t.shutPack}
        </button>
      </div>
      <ProblemSaid error={shutting.error} />
    </>
  );
}
