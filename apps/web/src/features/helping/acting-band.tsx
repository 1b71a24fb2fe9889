import { type Acting, stopActing } from '../../api/acting.ts';
import { useHelpingText } from './words.ts';

/** Stands over every page while somebody acts for a neighbour, with the one tap that ends it. */
export function ActingBand({ acting, helper }: { acting: Acting; helper: string }) {
  const words = useHelpingText();
  return (
    <div className="said watch-said row place">
      <p>{words.band(acting.householdName, helper)}</p>
      <button type="button" className="btn" onClick={() => stopActing(acting)}>
        {words.stop}
      </button>
    </div>
  );
}

/** The right ran out, or was ended, while the tab still acted. */
export function ActingEnded({ acting }: { acting: Acting }) {
  const words = useHelpingText();
  return (
    <main className="body empty">
      <h1>{words.ended}</h1>
      <p>{words.endedWords}</p>
      <button type="button" className="btn go" onClick={() => stopActing(acting)}>
        {words.stop}
      </button>
    </main>
  );
}
