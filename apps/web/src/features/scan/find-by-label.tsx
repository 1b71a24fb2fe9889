import { lazy, Suspense } from 'react';
import { useScanText } from './words.ts';
import './scan.css';

const FindLabel = lazy(async () => ({ default: (await import('./find-label.tsx')).FindLabel }));
const ScanMark = lazy(async () => ({ default: (await import('./scan-mark.tsx')).ScanMark }));

type Props = { onCode: (code: string) => void };

/**
 * Finds a container or a bag among what its page lists, by its label: with the camera, or by its code, a slip told while it is
 * typed. It is a form of its own, so it stands beside other forms and not in them; it comes after its page.
 */
export function FindByLabel({ onCode }: Props) {
  const t = useScanText();
  return (
    <details className="by-label">
      <summary>{t.byLabel}</summary>
      <Suspense fallback={null}>
        <FindLabel onCode={onCode} />
      </Suspense>
    </details>
  );
}

/** The camera alone, above a field that takes other codes than those of labels too. */
export function LabelCamera({ onCode }: Props) {
  return (
    <div className="by-label">
      <Suspense fallback={null}>
        <ScanMark onCode={onCode} />
      </Suspense>
    </div>
  );
}
