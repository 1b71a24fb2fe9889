import { readCode } from '@sheafbook/units';
import { useEffect, useState } from 'react';
import { Camera, fetchReader } from './camera.tsx';
import { useScanText } from './words.ts';

/** Reads the code of a label with the camera. Where there is none, typing it stays. */
export function ScanMark({ onCode }: { onCode: (code: string) => void }) {
  const t = useScanText();
  const [isOpen, setIsOpen] = useState(false);
  const [problem, setProblem] = useState('');
  useEffect(() => {
    fetchReader().catch(() => undefined); // without a signal: again when the camera is opened
  }, []);
  const close = (said: string) => {
    setIsOpen(false);
    setProblem(said);
  };
  const press = () => {
    if (isOpen) return close('');
    // Browsers hand the camera only to pages that nobody on the way can change.
    if (navigator.mediaDevices === undefined) return close(t.needsHttps);
    setProblem('');
    setIsOpen(true);
  };
  const read = (text: string) => {
    const code = readCode(text);
    if (code === undefined) return setProblem(t.noCode);
    close('');
    onCode(code);
  };
  return (
    <div className="stack">
      <button type="button" className="btn" aria-expanded={isOpen} onClick={press}>
        {isOpen ? t.stop : t.scan}
      </button>
      {isOpen ? <Camera onText={read} onRefused={() => close(t.notAllowed)} /> : null}
      {problem === '' ? null : (
        <p className="said watch-said" role="alert">
          {problem}
        </p>
      )}
    </div>
  );
}
