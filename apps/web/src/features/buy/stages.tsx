import { useText } from '../../text/taste.ts';
import { useRunText } from './words.ts';
import './run.css';

const STAGES = ['planning', 'gathering', 'fixed', 'ordered', 'landed', 'shared-out', 'closed'];

/** The stages of a buy from left to right: done, here, to come. */
export function Stages({ stage }: { stage: string }) {
  const t = useText();
  const words = useRunText();
  const here = STAGES.indexOf(stage);
  if (here < 0) return null;
  return (
    <ol className="stages" aria-label={words.stagesOf}>
      {STAGES.map((one, at) => (
        <li
          key={one}
          className={at < here ? 'done' : undefined}
          aria-current={at === here ? 'step' : undefined}
        >
          <Mark isDone={at < here || stage === 'closed'} isHere={at === here} />
          <span className="stage-word">{t.stages[one]}</span>
          {at === here ? (
            <span className="stage-count soft" aria-hidden="true">
              {words.stageAt(at + 1, STAGES.length)}
            </span>
          ) : null}
        </li>
      ))}
    </ol>
  );
}

function Mark({ isDone, isHere }: { isDone: boolean; isHere: boolean }) {
  if (isDone)
    return (
      <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
        <circle cx="8" cy="8" r="7" fill="var(--ink)" />
        <path d="M4.5 8.3 7 10.8l4.5-5" stroke="var(--ground)" strokeWidth="1.8" fill="none" />
      </svg>
    );
  return (
    <svg viewBox="0 0 16 16" width="16" height="16" aria-hidden="true">
      <circle
        cx="8"
        cy="8"
        r="6.5"
        fill="none"
        stroke={isHere ? 'var(--ink)' : 'var(--edge)'}
        strokeWidth={isHere ? 2 : 1.2}
      />
      {isHere ? <circle cx="8" cy="8" r="3" fill="var(--ink)" /> : null}
    </svg>
  );
}
