import { netOfGross } from '@sheafbook/packing';
import { useQuery } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { Check, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { useNamed } from '../../ui/use-named.ts';
import type { LogAct } from '../packing/log-act.ts';
import type { LogQueue } from '../packing/use-log.ts';
import type { Kind } from '../shelf/queries.ts';
import { taresQuery } from './queries.ts';
import { tareHere, tareTyped } from './tare-here.ts';
import { useTareText } from './words.ts';

/** What of a pour's draft says how it is weighed: the kinds that stand on the scale full, and what the next one weighs empty. */
export const GROSS_START = { gross: '', own: '' };
type GrossDraft = typeof GROSS_START;
type PourJson = Extract<LogAct, { kind: 'pour' }>['json'];

/** How a kind is weighed at this line: its food alone, or full, less one tare or less what each weighs empty. */
export function useGross(log: LogQueue, kind: Kind | undefined, draft: GrossDraft) {
  const { storehouse } = useHouse();
  const { data } = useQuery(taresQuery({ storehouse }));
  const isGross = kind !== undefined && draft.gross.split(' ').includes(kind.id);
  const tare = tareHere(kind?.id, data?.tares ?? [], log.waiting);
  const isEach = isGross && !tare?.isAlike;
  const tareGrams = isEach ? tareTyped(draft.own) : tare?.meanGrams;
  return {
    ...{ isGross, isEach, tare },
    /** The net of what the scale shows; null where the container alone weighs as much, undefined while nobody can tell. */
    netOf: (typed: number | undefined): number | null | undefined => {
      if (!isGross) return typed;
      return typed === undefined || tareGrams === undefined ? undefined : netOfGross(typed, tareGrams);
    },
    /** What the scale shows of so much food. */
    grossOf: (grams: number): number | undefined => (tareGrams === undefined ? undefined : grams + tareGrams),
    tareGrams: isGross ? tareGrams : undefined,
    /** How so many containers of a net were weighed, as it goes on the wire. */
    weighed: (grams: number, times: number): Pick<PourJson, 'weighed'> => {
      if (!isGross || tareGrams === undefined) return {};
      const grossGrams = Array.from({ length: times }, () => grams + tareGrams);
      return isEach
        ? { weighed: { how: 'own-tare', grossGrams, tareGrams: grossGrams.map(() => tareGrams) } }
        : { weighed: { how: 'tare-of-kind', grossGrams, tareGrams } };
    },
  };
}
type Gross = ReturnType<typeof useGross>;

/** Whether the container stands on the scale with its food, and what is taken off then. */
export function GrossChoice({
  gross,
  kind,
  draft,
  session,
  onChange,
}: {
  gross: Gross;
  kind: Kind | undefined;
  draft: GrossDraft;
  session: string;
  onChange: (part: Partial<GrossDraft>) => void;
}) {
  const t = useTareText();
  const { storehouse, format } = useHouse();
  const nameOf = useNamed();
  if (!kind) return null;
  const others = draft.gross.split(' ').filter((id) => id !== '' && id !== kind.id);
  const { isGross, isEach, tare } = gross;
  const isWrong = draft.own !== '' && gross.tareGrams === undefined;
  return (
    <div className="stack tight">
      <Check
        label={t.isGross(nameOf(kind))}
        isOn={isGross}
        onChange={(isOn) => onChange({ gross: (isOn ? [...others, kind.id] : others).join(' '), own: '' })}
      />
      {isGross && !isEach && tare ? <p className="soft">{t.takenOff(format.count(tare.meanGrams))}</p> : null}
      {isEach ? (
        <>
          <p className="said watch-said">
            {tare ? t.eachByItself(tare.spreadGrams) : t.noTare}{' '}
            <Link to="/s/$storehouse/packing/$session/tares" params={{ storehouse, session }}>
              {t.title}
            </Link>
          </p>
          <Field
            label={t.ownTare}
            inputMode="numeric"
            value={draft.own}
            onChange={(event) => onChange({ own: event.target.value })}
            problem={isWrong ? t.readingProblem : undefined}
          />
        </>
      ) : null}
    </div>
  );
}

/** How a container in the book was weighed, where it stood on the scale with its food. */
export function GrossSaid({
  pour: { grossGrams, tareGrams, grams },
}: {
  pour: { grossGrams: number | null; tareGrams: number | null; grams: number };
}) {
  const t = useTareText();
  const { format } = useHouse();
  if (grossGrams === null || tareGrams === null) return null;
  return (
    <span className="soft block">
      {t.net(format.count(grossGrams), format.count(tareGrams), format.count(grams))}
    </span>
  );
}

/** What will go into the book, before it is sent: gross less tare. */
export function NetSaid({ gross, typed, times }: { gross: Gross; typed: number | undefined; times: number }) {
  const t = useTareText();
  const { format } = useHouse();
  const net = gross.netOf(typed);
  const { tareGrams } = gross;
  if (!gross.isGross || typed === undefined || tareGrams === undefined) return null;
  if (net === null || net === undefined)
    return (
      <p className="said" role="alert">
        {t.tareAbove(format.count(tareGrams), format.count(typed))}
      </p>
    );
  return (
    <p role="status">
      {t.net(format.count(typed), format.count(tareGrams), format.count(net))}
      {times > 1 ? ` ${t.inAll(times, format.count(net * times))}` : null}
    </p>
  );
}
