import { readCode } from '@sheafbook/units';
import { Field } from '../../ui/field.tsx';
import { useScanText } from './words.ts';

/** Signs of a container's code, its check among them. */
const SIGNS = 7;

/** Whether as many signs stand there as a code has, and they are none: a slip of the eye or the finger. */
export const isSlip = (typed: string): boolean =>
  typed.replaceAll(/[\s-]/g, '').length >= SIGNS && readCode(typed) === undefined;

type CodeFieldProps = {
  label: string;
  value: string;
  /** Nothing more comes: what is typed is no code even where it could have become one, as a bag's code with a slip could. */
  isWhole?: boolean;
  onChange: (typed: string) => void;
};

/** The code of a container or a bag as it stands on its label; a slip is told by the code itself, a container's while it is typed. */
export function CodeField({ label, value, isWhole = false, onChange }: CodeFieldProps) {
  const t = useScanText();
  return (
    <Field
      label={label}
      hint={t.codeHint}
      autoComplete="off"
      autoCapitalize="characters"
      spellCheck={false}
      value={value}
      onChange={(event) => onChange(event.target.value)}
      problem={isSlip(value) || (isWhole && readCode(value) === undefined) ? t.wrong : undefined}
    />
  );
}
