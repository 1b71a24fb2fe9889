import { readCode } from '@sheafbook/units';
import { useState } from 'react';
import { Form } from '../../ui/form.tsx';
import { CodeField, isSlip } from './code-field.tsx';
import { ScanMark } from './scan-mark.tsx';
import { useScanText } from './words.ts';

/** Finds a container or a bag by its label: with the camera, or by its code. */
export function FindLabel({ onCode }: { onCode: (code: string) => void }) {
  const t = useScanText();
  const [typed, setTyped] = useState('');
  const [isSent, setIsSent] = useState(false);
  const code = readCode(typed);
  return (
    <div className="stack">
      <ScanMark onCode={onCode} />
      <Form
        onSend={() => {
          setIsSent(code === undefined);
          if (code === undefined) return;
          setTyped('');
          onCode(code);
        }}
      >
        <CodeField
          label={t.code}
          value={typed}
          isWhole={isSent}
          onChange={(text) => {
            setIsSent(false);
            setTyped(text);
          }}
        />
        <button type="submit" className="btn" disabled={typed.trim() === '' || isSlip(typed)}>
          {t.find}
        </button>
      </Form>
    </div>
  );
}
