import { bulkOf, levelGrams, shakenGrams } from '@sheafbook/foods';
import { fraction } from '@sheafbook/units';
import { Choice, Field, type Problems } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { nameIn } from '../../ui/name-in.ts';
import { gramsTyped } from './mass-typed.ts';
import type { Kind } from './queries.ts';
import { readTreating, TreatmentFields } from './treatment-fields.tsx';
import { useShelfText } from './words.ts';

export type FillDraft = {
  kindId: string;
  count: string;
  each: string;
  packedOn: string;
  treatment: string;
  moisture: string;
};
export const NO_FILL: FillDraft = {
  kindId: '',
  count: '1',
  each: '',
  packedOn: '',
  treatment: '',
  moisture: '',
};

/** What was typed, read; null while some of it cannot be. */
export function readFill(draft: FillDraft, at: { unit: 'lb' | 'kg'; kinds: readonly Kind[]; today: string }) {
  const kind = at.kinds.find(({ id }) => id === draft.kindId) ?? at.kinds[0];
  const count = /^\d+$/.test(draft.count.trim()) ? Number(draft.count) : 0;
  const gramsEach = gramsTyped(draft.each, at.unit);
  const packedOn = draft.packedOn === '' ? at.today : draft.packedOn;
  const isWhole = kind !== undefined && count >= 1 && count <= 500 && gramsEach !== undefined;
  const treating = readTreating(draft);
  return isWhole && treating ? { kind, count, gramsEach, packedOn, ...treating } : null;
}

/** Kind, number and mass of containers filled alike. */
export function FillFields({
  draft,
  change,
  kinds,
  bulkMicrograms,
  isAsked,
  problems,
}: {
  draft: FillDraft;
  change: (part: Partial<FillDraft>) => void;
  kinds: readonly Kind[];
  bulkMicrograms: number | null;
  isAsked: boolean;
  problems: Problems;
}) {
  const words = useShelfText();
  const { format } = useHouse();
  const kind = kinds.find(({ id }) => id === draft.kindId) ?? kinds[0];
  const food = bulkOf({ bulkMicrogramsPerMillilitre: bulkMicrograms });
  const volume = fraction(kind?.capacityMicrolitres ?? 1, 1000);
  const [level, most] = [levelGrams(food, volume), shakenGrams(food, volume)];
  const isCountWrong = isAsked && !/^\d+$/.test(draft.count.trim());
  const isEachWrong = isAsked && gramsTyped(draft.each, format.massUnit) === undefined;
  return (
    <>
      <Choice
        label={words.kind}
        value={kind?.id ?? ''}
        options={kinds.map((one) => ({ value: one.id, name: nameIn(format.language, one) }))}
        onChange={(kindId) => change({ kindId })}
      />
      <div className="pair">
        <Field
          label={words.count}
          inputMode="numeric"
          value={draft.count}
          onChange={(event) => change({ count: event.target.value })}
          problem={isCountWrong ? words.countProblem : problems.count}
        />
        <Field
          label={words.each}
          inputMode="decimal"
          hint={
            level === null || most === null
              ? words.eachUnknown
              : words.eachHint(format.mass(level), format.mass(most))
          }
          value={draft.each}
          onChange={(event) => change({ each: event.target.value })}
          problem={isEachWrong ? words.massProblem : problems.gramsEach}
        />
        <Field
          label={words.packedOn}
          type="date"
          max={format.today()}
          value={draft.packedOn === '' ? format.today() : draft.packedOn}
          onChange={(event) => change({ packedOn: event.target.value })}
          problem={problems.packedOn && words.dayProblem}
        />
      </div>
      <TreatmentFields draft={draft} change={change} problems={problems} />
    </>
  );
}
