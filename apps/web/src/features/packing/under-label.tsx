import { spellCode } from '@sheafbook/units';
import { Field } from '../../ui/field.tsx';
import { useHouse } from '../../ui/house.ts';
import { ScanMark } from '../scan/scan-mark.tsx';
import { codesTyped } from './codes-typed.ts';
import { usePackingText } from './words.ts';

type UnderLabelProps = {
  typed: string;
  /** How many containers are logged at once; each has its own label. */
  count: number;
  /** The day that stands on labels made ahead. */
  sayOn: string;
  onChange: (typed: string) => void;
};

/** Whether what is typed names a label for each container, or none at all. */
export const labelsFit = (typed: string, count: number): boolean => {
  const codes = codesTyped(typed);
  return codes.length === 0 || (codes.length === count && !codes.includes(null));
};

/** The labels that stand on the containers already, made ahead: read by the camera or typed, a slip told at once. */
export function UnderLabel({ typed, count, sayOn, onChange }: UnderLabelProps) {
  const t = usePackingText();
  const { format } = useHouse();
  const todayOn = format.today();
  const isOtherDay = typed.trim() !== '' && sayOn !== todayOn;
  const codes = codesTyped(typed);
  const problem = codes.includes(null)
    ? t.labelSlip
    : labelsFit(typed, count)
      ? undefined
      : t.labelEach(count);
  const add = (code: string) =>
    onChange([...codes.flatMap((one) => one ?? []), code].map((one) => spellCode(one)).join(', '));
  return (
    <details open={typed !== ''}>
      <summary>{t.hasLabel}</summary>
      <div className="stack">
        <ScanMark onCode={add} />
        <Field
          label={t.labelOnIt}
          hint={t.labelOnItHint}
          autoComplete="off"
          autoCapitalize="characters"
          spellCheck={false}
          value={typed}
          onChange={(event) => onChange(event.target.value)}
          problem={problem}
        />
        {isOtherDay ? (
          <p className="said watch-said" role="status">
            {t.labelOtherDay(format.day(sayOn), format.day(todayOn))}
          </p>
        ) : null}
      </div>
    </details>
  );
}
