import { ProblemSaid } from '../../ui/problem-said.tsx';
import type { Taking } from './use-taking.ts';
import { useRotationText } from './words.ts';

/** What the last taking did, and the way back. */
export function TakenSaid({ taken, taking, undoing }: Taking) {
  const words = useRotationText();
  return (
    <>
      <div role="status" hidden={taken === null}>
        {taken === null ? null : (
          <>
            <p className="said well-said">{taken.says}</p>
            {taken.warning === null ? null : <p className="said watch-said">{taken.warning}</p>}
            <button
              type="button"
              className="btn"
              disabled={undoing.isPending}
              onClick={() => undoing.mutate(taken.entryId)}
            >
              {words.undo}
            </button>
          </>
        )}
      </div>
      <ProblemSaid error={taking.error ?? undoing.error} />
    </>
  );
}
