import { explainedByMoisture } from '@sheafbook/packing';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { type MoistureDraft, readingsTyped, tenthsTyped } from './moisture-typed.ts';
import { useMoistureText } from './words.ts';

/** Two readings of a meter, and what they explain of a difference before it is kept. */
export function MoistureFields({
  draft,
  onChange,
  weighing,
}: {
  draft: MoistureDraft;
  onChange: (part: Partial<MoistureDraft>) => void;
  /** What the book has and what the scale says; nothing while nobody has typed that. */
  weighing: { readonly bookedGrams: number; readonly weighedGrams: number } | null;
}) {
  const t = useMoistureText();
  const { format } = useHouse();
  const readings = readingsTyped(draft);
  const problemOf = (text: string) => (tenthsTyped(text) === undefined ? t.problem : undefined);
  const isHalf = readings === undefined && tenthsTyped(draft.was) === null;
  const explained = readings && weighing ? explainedByMoisture(weighing, readings) : null;
  const rest = weighing ? Math.abs(weighing.weighedGrams - weighing.bookedGrams - (explained ?? 0)) : 0;
  return (
    <details open={draft.is !== ''}>
      <summary>{t.asked}</summary>
      <div className="stack tight">
        <p className="soft">{t.says}</p>
        <div className="pair">
          <Field
            label={t.was}
            inputMode="decimal"
            value={draft.was}
            problem={problemOf(draft.was) ?? (isHalf ? t.both : undefined)}
            onChange={(event) => onChange({ was: event.target.value })}
          />
          <Field
            label={t.is}
            inputMode="decimal"
            value={draft.is}
            problem={problemOf(draft.is)}
            onChange={(event) => onChange({ is: event.target.value })}
          />
        </div>
        {explained === null ? null : (
          <p role="status">
            {explained === 0
              ? t.nothing
              : t.explained(format.count(Math.abs(explained)), explained < 0, format.count(rest))}
          </p>
        )}
      </div>
    </details>
  );
}
