import { type SeamFault, seamFaultsOf } from '@sheafbook/packing';
import { Link } from '@tanstack/react-router';
import { Check, Choice, Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { State } from '../../ui/pieces.tsx';
import type { CheckMade } from '../packing/log-act.ts';
import { penTime } from '../packing/pen-time.ts';
import type { LogQueue } from '../packing/use-log.ts';
import { usePackingText } from '../packing/words.ts';
import type { Kind } from '../shelf/queries.ts';
import { type GaugeUnit, milsSaid, milsTyped } from './mils-typed.ts';
import type { Limit, Watch } from './queries.ts';
import { useSeamText } from './words.ts';

const MEASURES = ['widthMils', 'thicknessMils', 'countersinkMils', 'coverHookMils', 'bodyHookMils'] as const;
type Measure = (typeof MEASURES)[number];
export const START = {
  ...{ machineId: '', line: '1', serial: '', kindId: '', how: '', occasion: 'due', gauge: '', unit: 'mil' },
  ...{ widthMils: '', thicknessMils: '', countersinkMils: '', coverHookMils: '', bodyHookMils: '' },
  ...{ looksGood: false, note: '', pen: '', madeAt: '' },
};
const TAKEN_ANEW = {
  ...{ widthMils: '', thicknessMils: '', countersinkMils: '', coverHookMils: '', bodyHookMils: '' },
  ...{ looksGood: false, note: '', serial: '', pen: '', madeAt: '' },
};

/** A check that was not taken, as it was typed. It keeps the hour at which it was made: a later one would vouch for more. */
export const draftOf = (check: CheckMade): Partial<Draft> => ({
  ...{ machineId: check.machineId, line: String(check.line), serial: String(check.serial ?? '') },
  ...{ kindId: check.containerKindId, how: check.how, occasion: check.occasion ?? 'due', unit: 'mil' },
  ...{ gauge: check.gauge ?? '', looksGood: check.looksGood, note: check.note ?? '', pen: '' },
  madeAt: check.checkedAt ?? '',
  ...Object.fromEntries(MEASURES.map((one) => [one, String(check.measures?.[one] ?? '')])),
});

/**
 * What the maker does not allow of what was typed, told at once, also without a signal; nothing until all of it is typed.
 * Null for a width that no seam has.
 */
function faultsTyped(draft: Draft, unit: GaugeUnit, limit: Limit): SeamFault[] | null {
  const read = MEASURES.map((one) => milsTyped(draft[one], unit) ?? 0);
  const [widthMils = 0, thicknessMils = 0, countersinkMils = 0, coverHookMils = 0, bodyHookMils = 0] = read;
  if (read.some((mils) => mils <= 0)) return [];
  return seamFaultsOf({ widthMils, thicknessMils, countersinkMils, coverHookMils, bodyHookMils }, limit);
}

type FormProps = {
  watch: Watch;
  kinds: readonly Kind[];
  serial: number | null;
  log: LogQueue;
  form: { readonly draft: Draft; readonly change: (part: Partial<Draft>) => void };
  onDone: () => void;
};

/** One check, step by step: which container, how it was looked at, what the gauge read, and whether it looks good. */
export function CheckForm({ watch, kinds, serial, log, form: { draft, change }, onDone }: FormProps) {
  const t = useSeamText();
  const said = usePackingText();
  const { storehouse, format } = useHouse();
  const machine = watch.machines.find(({ id }) => id === draft.machineId) ?? watch.machines[0];
  const lineWatch = watch.lines.find(({ machine: { id } }) => id === machine?.id);
  const kind =
    kinds.find(({ id }) => id === (draft.kindId || lineWatch?.lastKindId)) ??
    kinds.find(({ kindCode }) => kindCode === 'can-no-10') ??
    kinds[0];
  const isSeamer = machine?.kind === 'can-seamer';
  const hows = isSeamer ? (['teardown', 'visual'] as const) : (['squeeze', 'visual'] as const);
  const how = hows.find((one) => one === draft.how) ?? hows[0];
  const limit = watch.limits.find(({ containerKindId }) => containerKindId === kind?.id);
  const unit: GaugeUnit = draft.unit === 'mm' ? 'mm' : 'mil';
  const serialTyped = serial === null ? draft.serial : String(serial);
  const { penAt, isAhead } = penTime(draft.pen, format.timeZone);
  const needsLimits = how === 'teardown' && !limit;
  const faults = how === 'teardown' && limit ? faultsTyped(draft, unit, limit) : [];
  const submit = () => {
    if (!machine || !kind) return;
    const read = Object.fromEntries(MEASURES.map((one) => [one, milsTyped(draft[one], unit) ?? 0]));
    log.write({
      kind: 'check',
      json: {
        ...{ machineId: machine.id, sessionId: watch.session.id, line: Number(draft.line) || 1 },
        ...{
          serial: /^\d+$/.test(serialTyped.trim()) ? Number(serialTyped) : null,
          containerKindId: kind.id,
        },
        ...{ how, looksGood: draft.looksGood, note: draft.note, gauge: draft.gauge },
        occasion: (serial === null ? draft.occasion : 'suspect') as CheckMade['occasion'],
        measures: how === 'teardown' ? (read as Record<Measure, number>) : null,
        checkedAt: penAt?.toISOString() ?? (draft.madeAt || new Date().toISOString()),
      },
    });
    change(TAKEN_ANEW);
    onDone();
  };
  return (
    <form
      className="stack"
      id="check"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <h2>{serial === null ? t.writeCheck : t.openSerial(serial)}</h2>
      <div className="pair">
        <Choice
          label={t.machine}
          value={machine?.id ?? ''}
          options={watch.machines.map(({ id, name }) => ({ value: id, name }))}
          onChange={(machineId) => change({ machineId, how: '' })}
        />
        <Choice
          label={t.container}
          value={kind?.id ?? ''}
          options={kinds.map((one) => ({
            value: one.id,
            name: nameIn(format.language, one),
          }))}
          onChange={(kindId) => change({ kindId })}
        />
      </div>
      <div className="pair">
        <Field
          label={t.line}
          inputMode="numeric"
          value={draft.line}
          onChange={(event) => change({ line: event.target.value })}
        />
        <Field
          label={t.serial}
          inputMode="numeric"
          hint={t.serialHint}
          value={serialTyped}
          readOnly={serial !== null}
          onChange={(event) => change({ serial: event.target.value })}
        />
      </div>
      <div className="pair roomy">
        <Choice
          label={t.how}
          value={how}
          options={hows.map((value) => ({ value, name: t.hows[value] }))}
          onChange={(value) => change({ how: value })}
        />
        {serial === null ? (
          <Choice
            label={t.occasion}
            value={draft.occasion}
            options={Object.entries(t.occasions).map(([value, name]) => ({ value, name }))}
            onChange={(occasion) => change({ occasion })}
          />
        ) : null}
      </div>
      <p className="said watch-said">{t.cautions[how]}</p>
      {needsLimits ? (
        <p className="said">
          {t.noLimits}{' '}
          <Link to="/s/$storehouse/packing/machines" params={{ storehouse }}>
            {t.writeLimits}
          </Link>
        </p>
      ) : null}
      {how === 'teardown' && limit ? (
        <Measures {...{ draft, change, unit, limit }} isTooNarrow={faults === null} />
      ) : null}
      <p role="status">
        {faults === null || faults.length === 0 ? null : (
          <State
            kind="wrong"
            word={t.outOfLimits(faults.map(({ measure }) => t.faults[measure]).join(', '))}
          />
        )}
      </p>
      <Check label={t.looks[how]} isOn={draft.looksGood} onChange={(looksGood) => change({ looksGood })} />
      <Field label={t.note} value={draft.note} onChange={(event) => change({ note: event.target.value })} />
      <Field
        label={said.pen}
        type="time"
        hint={said.penHint}
        value={draft.pen}
        problem={isAhead ? said.penAhead : undefined}
        onChange={(event) => change({ pen: event.target.value })}
      />
      <button
        type="submit"
        className="btn go"
        disabled={
          isAhead ||
          needsLimits ||
          faults === null ||
          (how === 'teardown' && MEASURES.some((one) => milsTyped(draft[one], unit) === undefined))
        }
      >
        {draft.looksGood ? t.writeIt : t.writeFailed}
      </button>
      {serial === null ? null : (
        <button type="button" className="btn" onClick={onDone}>
          {t.notThis}
        </button>
      )}
    </form>
  );
}

type Draft = typeof START;
type MeasuresProps = {
  draft: Draft;
  change: (part: Partial<Draft>) => void;
  unit: GaugeUnit;
  limit: Limit;
  /** No wider than its plates, which no seam is. */
  isTooNarrow: boolean;
};

/** What the gauge read, each beside what the maker allows. */
function Measures({ draft, change, unit, limit, isTooNarrow }: MeasuresProps) {
  const t = useSeamText();
  const range = (least: number, most: number) => t.allowed(milsSaid(least, unit), milsSaid(most, unit));
  const problemOf = (one: Measure) => {
    if (draft[one] !== '' && milsTyped(draft[one], unit) === undefined) return t.measureProblem;
    return isTooNarrow && one === 'widthMils' ? t.tooNarrow : undefined;
  };
  const hints: Record<Measure, string> = {
    widthMils: range(limit.widthLeast, limit.widthMost),
    thicknessMils: range(limit.thicknessLeast, limit.thicknessMost),
    countersinkMils: range(limit.countersinkLeast, limit.countersinkMost),
    coverHookMils: t.overlapFrom(limit.overlapPercent),
    bodyHookMils: t.overlapFrom(limit.overlapPercent),
  };
  return (
    <fieldset className="stack">
      <legend>{t.measured}</legend>
      <p className="soft">{t.limitsFrom(limit.source)}</p>
      <div className="pair roomy">
        <Choice
          label={t.unit}
          value={unit}
          options={Object.entries(t.units).map(([value, name]) => ({ value, name }))}
          onChange={(value) => change({ unit: value })}
        />
        <Field
          label={t.gauge}
          value={draft.gauge}
          onChange={(event) => change({ gauge: event.target.value })}
        />
      </div>
      <div className="pair">
        {MEASURES.map((one) => (
          <Field
            key={one}
            label={t.measures[one]}
            inputMode="decimal"
            hint={hints[one]}
            value={draft[one]}
            problem={problemOf(one)}
            onChange={(event) => change({ [one]: event.target.value })}
          />
        ))}
      </div>
    </fieldset>
  );
}
