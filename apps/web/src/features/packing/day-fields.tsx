import { instantOfWallTime, isWallTime, parseMoney, wallTimeInZone } from '@sheafbook/units';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import type { SessionFacts } from './queries.ts';
import { usePackingText } from './words.ts';

export const NEW_DAY = {
  name: '',
  place: '',
  on: '',
  from: '09:00',
  until: '13:00',
  lines: '1',
  people: '6',
  fee: '0',
  setup: '30',
  rest: '15',
  clean: '45',
};
export type DayDraft = typeof NEW_DAY;

type Format = ReturnType<typeof useHouse>['format'];

/** A day as it stands, as its form shows it. */
export function dayDraftOf(session: SessionFacts, format: Format): DayDraft {
  const [on = '', from = ''] = wallTimeInZone(Date.parse(session.startsAt), format.timeZone).split('T');
  return {
    ...{ name: session.name, place: session.place, on, from: from.slice(0, 5) },
    until: wallTimeInZone(Date.parse(session.endsAt), format.timeZone).slice(11, 16),
    lines: String(session.lines),
    people: String(session.peopleALine),
    fee: format.money(session.lineFeeMinorUnits),
    setup: String(session.setupMinutes),
    rest: String(session.breakMinutes),
    clean: String(session.cleanDownMinutes),
  };
}

/** What the API takes; null where the day, an hour or the fee is none. */
export function dayFactsOf(draft: DayDraft, { timeZone, currency }: Format) {
  const startsAt = instantOf(draft.on, draft.from, timeZone);
  const endsAt = instantOf(draft.on, draft.until, timeZone);
  const fee = parseMoney(draft.fee, currency);
  if (startsAt === null || endsAt === null || !('minorUnits' in fee)) return null;
  return {
    ...{ name: draft.name, place: draft.place, startsAt, endsAt, lineFeeMinorUnits: fee.minorUnits },
    ...{ lines: Number(draft.lines), peopleALine: Number(draft.people) },
    ...{ setupMinutes: Number(draft.setup), breakMinutes: Number(draft.rest) },
    cleanDownMinutes: Number(draft.clean),
  };
}

function instantOf(on: string, at: string, timeZone: string): string | null {
  const wall = `${on}T${at}`;
  return isWallTime(wall) ? new Date(instantOfWallTime(wall, timeZone)).toISOString() : null;
}

type DayFieldsProps = {
  draft: DayDraft;
  change: (part: Partial<DayDraft>) => void;
  problems: Readonly<Record<string, string>>;
  isAsked: boolean;
};

/** What a packing day is: its name, place and hours, its lines and hands, and what it takes beside the containers. */
export function DayFields({ draft, change, problems, isAsked }: DayFieldsProps) {
  const t = usePackingText();
  const { format } = useHouse();
  const typing = (name: keyof DayDraft) => ({
    value: draft[name],
    onChange: (event: { target: { value: string } }) => change({ [name]: event.target.value }),
  });
  const fee = parseMoney(draft.fee, format.currency);
  return (
    <>
      <div className="pair">
        <Field label={t.name} {...typing('name')} problem={problems.name} />
        <Field label={t.place} {...typing('place')} problem={problems.place} />
      </div>
      <Field
        label={t.on}
        type="date"
        min={format.today()}
        {...typing('on')}
        problem={isAsked && draft.on === '' ? t.dayProblem : problems.startsAt}
      />
      <div className="pair">
        <Field label={t.from} type="time" {...typing('from')} />
        <Field label={t.until} type="time" {...typing('until')} problem={problems.endsAt} />
      </div>
      <div className="pair">
        <Field label={t.lines} inputMode="numeric" {...typing('lines')} problem={problems.lines} />
        <Field label={t.people} inputMode="numeric" {...typing('people')} problem={problems.peopleALine} />
      </div>
      <Field
        label={t.fee(format.currency)}
        inputMode="decimal"
        {...typing('fee')}
        problem={isAsked && !('minorUnits' in fee) ? t.moneyProblem : problems.lineFeeMinorUnits}
      />
      <div className="pair">
        <Field label={t.setup} inputMode="numeric" {...typing('setup')} problem={problems.setupMinutes} />
        <Field label={t.rest} inputMode="numeric" {...typing('rest')} problem={problems.breakMinutes} />
        <Field label={t.clean} inputMode="numeric" {...typing('clean')} problem={problems.cleanDownMinutes} />
      </div>
    </>
  );
}
