import { Check } from '../../ui/field.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { usePackingText } from './words.ts';
import '../supplies/supplies.css';

/** What was ticked of a day's clean-down, on this phone, also without a signal. */
function useCleanDown(sessionId: string) {
  const { cleanDowns } = usePackingText();
  const { draft, change } = useDraft<{ readonly ticked: readonly string[] }>(`clean-down.${sessionId}`, {
    ticked: [],
  });
  const steps = Object.entries(cleanDowns).map(([id, name]) => ({
    id,
    name,
    isDone: draft.ticked.includes(id),
  }));
  const tick = (id: string, isOn: boolean) =>
    change({ ticked: isOn ? [...draft.ticked, id] : draft.ticked.filter((one) => one !== id) });
  return { steps, tick };
}

/** What is left of the clean-down by the ticks on this phone (job map 3.3, question 16). */
export const useCleanDownLeft = (sessionId: string): string[] =>
  useCleanDown(sessionId).steps.flatMap(({ isDone, name }) => (isDone ? [] : [name]));

/** The line is cleaned before the day is signed: a list to tick with wet hands (job map 7.9; common practice, no source). */
export function CleanDown({ sessionId }: { sessionId: string }) {
  const t = usePackingText();
  const { steps, tick } = useCleanDown(sessionId);
  const left = steps.filter(({ isDone }) => !isDone).length;
  return (
    <details>
      <summary>{t.cleanDownLeft(left)}</summary>
      <ul className="ticks">
        {steps.map(({ id, name, isDone }) => (
          <li key={id} className={isDone ? 'done' : undefined}>
            <Check label={name} isOn={isDone} onChange={(isOn) => tick(id, isOn)} />
          </li>
        ))}
      </ul>
      <p className="soft">{t.cleanDownKept}</p>
    </details>
  );
}
