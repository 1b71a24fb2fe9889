import { useMutation, useQueryClient } from '@tanstack/react-query';
import { ask } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import type { Kind } from '../shelf/queries.ts';
import { type GaugeUnit, milsSaid, milsTyped } from './mils-typed.ts';
import { inside, type Limit } from './queries.ts';
import { useSeamText } from './words.ts';

const FIGURES = [
  ...(['widthLeast', 'widthMost', 'thicknessLeast', 'thicknessMost'] as const),
  ...(['countersinkLeast', 'countersinkMost', 'lidPlate', 'bodyPlate'] as const),
];
const START = {
  ...{ widthLeast: '', widthMost: '', thicknessLeast: '', thicknessMost: '' },
  ...{ countersinkLeast: '', countersinkMost: '', lidPlate: '', bodyPlate: '' },
  ...{ kindId: '', overlapPercent: '', source: '', unit: 'mil' },
};

/** What the maker of a can allows: there are none of our own, and no seam is judged without them. */
export function LimitsForm({ kinds, limits }: { kinds: readonly Kind[]; limits: readonly Limit[] }) {
  const t = useSeamText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const cans = kinds.filter(({ kindCode }) => kindCode.startsWith('can-'));
  const { draft, change, reset } = useDraft('seam-limits', START);
  const kind = cans.find(({ id }) => id === draft.kindId) ?? cans[0];
  const unit: GaugeUnit = draft.unit === 'mm' ? 'mm' : 'mil';
  const nameOf = (one: Kind) => nameIn(format.language, one);
  const figure = (one: (typeof FIGURES)[number]) => milsTyped(draft[one], unit) ?? 0;
  const setting = useMutation({
    mutationFn: () =>
      ask(
        inside['seam-limits'][':kind'].$put({
          param: { storehouse, kind: kind?.id ?? '' },
          json: {
            ...{ widthLeast: figure('widthLeast'), widthMost: figure('widthMost') },
            ...{ thicknessLeast: figure('thicknessLeast'), thicknessMost: figure('thicknessMost') },
            ...{ countersinkLeast: figure('countersinkLeast'), countersinkMost: figure('countersinkMost') },
            ...{ lidPlate: figure('lidPlate'), bodyPlate: figure('bodyPlate') },
            ...{ overlapPercent: Number(draft.overlapPercent) || 0, source: draft.source },
          },
        }),
      ),
    onSuccess: async () => {
      reset();
      await queries.invalidateQueries({ queryKey: ['packing'] });
    },
  });
  const problems = problemsOf(setting.error);
  if (!kind) return null;
  return (
    <Form onSend={() => setting.mutate()}>
      <h2>{t.limits}</h2>
      <p>{t.limitsSay}</p>
      {limits.map((limit) => {
        const of = kinds.find(({ id }) => id === limit.containerKindId);
        const said = (mils: number) => milsSaid(mils, unit);
        return (
          <p key={limit.containerKindId}>
            <b>{of ? nameOf(of) : null}</b>{' '}
            {t.limitSaid({
              width: t.allowed(said(limit.widthLeast), said(limit.widthMost)),
              thickness: t.allowed(said(limit.thicknessLeast), said(limit.thicknessMost)),
              countersink: t.allowed(said(limit.countersinkLeast), said(limit.countersinkMost)),
              overlap: limit.overlapPercent,
              unit: t.units[unit],
              source: limit.source,
            })}
          </p>
        );
      })}
      <div className="pair">
        <Choice
          label={t.container}
          value={kind.id}
          options={cans.map((one) => ({ value: one.id, name: nameOf(one) }))}
          onChange={(kindId) => change({ kindId })}
        />
        <Choice
          label={t.unit}
          value={unit}
          options={Object.entries(t.units).map(([value, name]) => ({ value, name }))}
          onChange={(value) => change({ unit: value })}
        />
      </div>
      <div className="pair">
        {FIGURES.map((one) => (
          <Field
            key={one}
            label={t.figures[one]}
            inputMode="decimal"
            value={draft[one]}
            problem={
              draft[one] !== '' && milsTyped(draft[one], unit) === undefined
                ? t.measureProblem
                : problems[one]
            }
            onChange={(event) => change({ [one]: event.target.value })}
          />
        ))}
        <Field
          label={t.overlapPercent}
          inputMode="numeric"
          value={draft.overlapPercent}
          problem={problems.overlapPercent}
          onChange={(event) => change({ overlapPercent: event.target.value })}
        />
      </div>
      <Field
        label={t.source}
        hint={t.sourceHint}
        value={draft.source}
        problem={problems.source}
        onChange={(event) => change({ source: event.target.value })}
      />
      <ProblemSaid error={Object.keys(problems).length > 0 ? null : setting.error} />
      <button type="submit" className="btn" disabled={setting.isPending}>
        {t.keepLimits}
      </button>
    </Form>
  );
}
