import { Field } from '../../ui/field.tsx';
import { useEquipmentText } from './words.ts';

export type Ticked = Readonly<Record<string, string>>;
export type Countable = { readonly id: string; readonly name: string; readonly most: number };

/** Each part with how many of it are there: whole already, so that only what lacks is typed. */
export function Ticks({
  parts,
  ticked,
  onChange,
}: {
  parts: readonly Countable[];
  ticked: Ticked;
  onChange: (ticked: Ticked) => void;
}) {
  const words = useEquipmentText();
  return (
    <>
      {parts.map(({ id, name, most }) => (
        <Field
          key={id}
          label={words.howMany(name, most)}
          inputMode="numeric"
          value={ticked[id] ?? String(most)}
          onChange={(event) => onChange({ ...ticked, [id]: event.target.value })}
          problem={isCount(ticked[id] ?? String(most)) ? undefined : words.numberProblem}
        />
      ))}
    </>
  );
}

const isCount = (text: string): boolean => /^\d{1,4}$/.test(text.trim());

/** What the API takes, or nothing while a count is no number. */
export function ticksOf(parts: readonly Countable[], ticked: Ticked) {
  const typed = parts.map(({ id, most }) => ({ partId: id, text: ticked[id] ?? String(most) }));
  if (!typed.every(({ text }) => isCount(text))) return null;
  return typed.map(({ partId, text }) => ({ partId, pieces: Number(text.trim()) }));
}
