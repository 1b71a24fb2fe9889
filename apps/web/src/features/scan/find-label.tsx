import { readCode } from '@sheafbook/units';
import { useState } from 'react';
import { Form } from '../../ui/form.tsx';
import { CodeField } from './code-field.tsx';
import { ScanMark } from './scan-mark.tsx';
import { useScanText } from './words.ts';

/** Finds a container by its label: with the camera, or by its code. */
export function FindLabel({ onCode }: { onCode: (code: string) => void }) {
  const t = useScanText();
  const [typed, setTyped] = useState('');
  const code = readCode(typed);
  return (
    <div className="stack">
      <ScanMark onCode={onCode} />
      <Form
        onSend={() => {
          if (code === undefined) return;
          setTyped('');
          onCode(code);
        }}
      >
        <CodeField label={t.code} value={typed} onChange={setTyped} />
        <button type="submit" className="btn" disabled={code === undefined}>
          {t.find}
        </button>
      </Form>
    </div>
  );
}
