import { type InputHTMLAttributes, type ReactNode, useId } from 'react';
import { ApiProblem } from '../api/problem.ts';
import { useText } from '../text/taste.ts';
import { lettersNotOnPaper } from './paper-letters.ts';

export type Problems = Readonly<Record<string, string>>;

/** A refusal's words by the field that they are about. */
export function problemsOf(error: Error | null): Problems {
  if (!(error instanceof ApiProblem)) return {};
  return Object.fromEntries(error.fields.map(({ field, message }) => [field, message]));
}

type FieldProps = {
  label: string;
  problem?: string | undefined;
  hint?: string;
} & Omit<InputHTMLAttributes<HTMLInputElement>, 'id'>;

/** A field with its problem shown at it, in words that the reader of a screen hears too. */
export function Field({ label, problem, hint, ...input }: FieldProps) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        aria-invalid={problem ? true : undefined}
        aria-describedby={`${id}-hint ${id}-problem`}
        {...input}
      />
      <Notes id={id} problem={problem} hint={hint} />
    </div>
  );
}

/** A field for a name, which says so when a printed paper can't show its letters. */
export function NameField(props: FieldProps & { value: string }) {
  const t = useText();
  const letters = lettersNotOnPaper(props.value);
  return <Field {...props} {...(letters === '' ? {} : { hint: t.notOnPaper(letters) })} />;
}

export function Notes({
  id,
  problem,
  hint,
}: {
  id: string;
  problem: string | undefined;
  hint?: string | undefined;
}) {
  return (
    <>
      <span id={`${id}-hint`} className="soft" hidden={!hint}>
        {hint}
      </span>
      <span id={`${id}-problem`} className="problem" role="alert">
        {problem}
      </span>
    </>
  );
}

export function Choice({
  label,
  value,
  options,
  onChange,
  problem,
}: {
  label: string;
  value: string;
  options: readonly { value: string; name: string }[];
  onChange: (value: string) => void;
  problem?: string | undefined;
}) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        aria-invalid={problem ? true : undefined}
        aria-describedby={`${id}-hint ${id}-problem`}
        onChange={(event) => onChange(event.target.value)}
      >
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.name}
          </option>
        ))}
      </select>
      <Notes id={id} problem={problem} />
    </div>
  );
}

export function Check({
  label,
  isOn,
  onChange,
}: {
  label: ReactNode;
  isOn: boolean;
  onChange: (isOn: boolean) => void;
}) {
  return (
    <label className="check">
      <input type="checkbox" checked={isOn} onChange={(event) => onChange(event.target.checked)} />
      <span>{label}</span>
    </label>
  );
}
