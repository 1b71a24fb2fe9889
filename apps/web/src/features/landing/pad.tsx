import { type KeyboardEvent, useState } from 'react';
import type { Condition } from './queue.ts';
import { press, type ScaleUnit } from './scale.ts';
import { useLandingText } from './words.ts';

const FIRST: readonly Condition[] = ['dry', 'torn', 'wet'];
const FURTHER: readonly Condition[] = ['infested', 'odour', 'wrong'];
const ROWS = [
  ['7', '8', '9'],
  ['4', '5', '6'],
  ['1', '2', '3'],
  ['.', '0', 'rub'],
] as const;
const KEY_LOOKS: Readonly<Record<string, string>> = { rub: '⌫' };

type PadProps = {
  text: string;
  condition: Condition;
  onText: (text: string) => void;
  onCondition: (condition: Condition) => void;
};

/** Twelve keys as on the scale, and in their right column how the bag looks; its last key turns the column over. */
export function Pad({ text, condition, onText, onCondition }: PadProps) {
  const t = useLandingText();
  const [isTurned, setIsTurned] = useState(FURTHER.includes(condition));
  const column = isTurned ? FURTHER : FIRST;
  const hidden = !column.includes(condition);
  return (
    <fieldset className="keys">
      <legend className="sr">{t.pad}</legend>
      {ROWS.map((row, at) => {
        const look = column[at];
        return [
          ...row.map((key) => (
            <button
              key={key}
              type="button"
              className="enamel"
              aria-label={key === 'rub' ? t.rubOut : key === '.' ? t.point : key}
              onClick={() => onText(press(text, key))}
            >
              {KEY_LOOKS[key] ?? key}
            </button>
          )),
          look === undefined ? (
            <button
              key="turn"
              type="button"
              className="enamel word"
              aria-pressed={hidden}
              onClick={() => setIsTurned(!isTurned)}
            >
              {hidden ? `${t.conditions[condition]} …` : isTurned ? t.fewer : t.more}
            </button>
          ) : (
            <button
              key={look}
              type="button"
              className="enamel word"
              aria-pressed={condition === look}
              onClick={() => onCondition(look)}
            >
              {t.conditions[look]}
            </button>
          ),
        ];
      })}
    </fieldset>
  );
}

type ReadingProps = {
  text: string;
  unit: ScaleUnit;
  problem: string;
  onText: (text: string) => void;
  onUnit: (unit: ScaleUnit) => void;
};

/** The number as it stands on the scale; a real keyboard types into it as the pad does. */
export function Reading({ text, unit, problem, onText, onUnit }: ReadingProps) {
  const t = useLandingText();
  const other: ScaleUnit = unit === 'kg' ? 'lb' : 'kg';
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape') onText('');
  };
  return (
    <div>
      <div className="reading">
        <input
          aria-label={t.onTheScale}
          inputMode="none"
          autoComplete="off"
          placeholder="0"
          value={text}
          aria-invalid={problem ? true : undefined}
          aria-describedby="reading-problem"
          onKeyDown={onKeyDown}
          onChange={(event) => onText(event.target.value.slice(0, 20))}
        />
        <span className="unit">{unit}</span>
        <button type="button" className="btn" aria-label={t.weighIn(other)} onClick={() => onUnit(other)}>
          {other}
        </button>
      </div>
      <span id="reading-problem" className="problem wrong" role="alert">
        {problem}
      </span>
    </div>
  );
}
