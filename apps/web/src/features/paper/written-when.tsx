import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { usePaperText } from './words.ts';

export type When = { readonly day: string; readonly time: string };

/** What a pen says of its own day and hour; undefined until both are there. */
export const writtenAtOf = ({ day, time }: When): string | undefined =>
  day !== '' && time !== '' ? `${day}T${time}` : undefined;

export function WrittenWhen({
  when,
  onChange,
  problem,
}: {
  when: When;
  onChange: (when: Partial<When>) => void;
  problem: string | undefined;
}) {
  const words = usePaperText();
  const { format } = useHouse();
  return (
    <div className="pair">
      <Field
        label={words.writtenDay}
        type="date"
        max={format.today()}
        value={when.day}
        onChange={(event) => onChange({ day: event.target.value })}
        problem={problem}
      />
      <Field
        label={words.writtenTime}
        type="time"
        value={when.time}
        onChange={(event) => onChange({ time: event.target.value })}
      />
    </div>
  );
}
