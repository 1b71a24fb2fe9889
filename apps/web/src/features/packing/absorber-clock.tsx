import { ABSORBER_SIZES, ABSORBER_WINDOW, judgeOpenPack } from '@sheafbook/packing';
import { useEffect, useState } from 'react';
import { Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { State } from '../../ui/pieces.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { LogBody } from './queries.ts';
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
  const open = openPackOf(log, body);
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
          <ShutPack log={log} openedAt={open.openedAt} />
        </>
      ) : (
        <OpenPack log={log} />
      )}
    </section>
  );
}

/** The pack that stands open by the book and by what this phone has not sent yet: the clock runs without a signal, too. */
function openPackOf(log: Log, body: LogBody): { openedAt: string; packets: number } | undefined {
  const byBook = body.packs.findLast(({ shutAt }) => shutAt === null);
  return log.waiting.reduce<{ openedAt: string; packets: number } | undefined>(
    (open, { at, act, refusal }) => {
      if (refusal !== null) return open;
      if (act.kind === 'pack') return { openedAt: act.json.openedAt ?? at, packets: act.json.packets };
      return act.kind === 'shut' ? undefined : open;
    },
    byBook,
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
  const {
    draft: { size, packets },
    change,
    reset,
  } = useDraft(`absorber-pack.${log.param.session}`, { size: '300', packets: '25' });
  const open = () => {
    const json = { sizeMillilitres: Number(size), packets: Number(packets) };
    log.write({ kind: 'pack', json: { ...json, openedAt: new Date().toISOString() } });
    reset();
  };
  return (
    <>
      <p className="soft">{t.openPackSays}</p>
      <div className="pair">
        <Choice
          label={t.packSize}
          value={size}
          options={ABSORBER_SIZES.map((value) => ({ value: String(value), name: `${value} ml` }))}
          onChange={(size) => change({ size })}
        />
        <Field
          label={t.packets}
          inputMode="numeric"
          value={packets}
          onChange={(event) => change({ packets: event.target.value })}
        />
      </div>
      <button type="button" className="btn" disabled={!(Number(packets) > 0)} onClick={open}>
        {t.openPack}
      </button>
    </>
  );
}

function ShutPack({ log, openedAt }: { log: Log; openedAt: string }) {
  const t = usePackingText();
  const {
    draft: { left },
    change,
    reset,
  } = useDraft(`absorber-left.${log.param.session}.${openedAt}`, { left: '0' });
  const isCount = /^\d+$/.test(left.trim());
  const shut = () => {
    log.write({ kind: 'shut', json: { packetsLeft: Number(left), shutAt: new Date().toISOString() } });
    reset();
  };
  return (
    <div className="pair">
      <Field
        label={t.packetsLeft}
        inputMode="numeric"
        value={left}
        onChange={(event) => change({ left: event.target.value })}
      />
      <button type="button" className="btn" disabled={!isCount} onClick={shut}>
        {t.shutPack}
      </button>
    </div>
  );
}
