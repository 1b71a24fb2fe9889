import { useId } from 'react';
import { Notes } from '../../ui/field.tsx';

/** A field for a sentence or two, with its problem at it. */
export function LongField(at: {
  label: string;
  value: string;
  onChange: (value: string) => void;
  problem?: string | undefined;
  hint?: string;
}) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{at.label}</label>
      <textarea
        id={id}
        value={at.value}
        aria-invalid={at.problem ? true : undefined}
        aria-describedby={`${id}-hint ${id}-problem`}
        onChange={(event) => at.onChange(event.target.value)}
      />
      <Notes id={id} problem={at.problem} hint={at.hint} />
    </div>
  );
}
