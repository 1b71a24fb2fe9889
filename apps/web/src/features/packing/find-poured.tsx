import { spellCode } from '@sheafbook/units';
import { useState } from 'react';
import { useHouse } from '../../ui/house.ts';
import { useNamed } from '../../ui/use-named.ts';
import { FindLabel } from '../scan/find-label.tsx';
import type { LogBody } from './queries.ts';
import { usePackingText } from './words.ts';

/** Tells by its label which of the day's containers one has in hand. It needs no signal: the log is on the phone. */
export function FindPoured({ body }: { body: LogBody }) {
  const t = usePackingText();
  const [code, setCode] = useState('');
  if (body.pours.length === 0) return null;
  return (
    <section className="stack">
      <h2>{t.findTitle}</h2>
      <FindLabel onCode={setCode} />
      <div role="status">{code === '' ? null : <Found code={code} pours={body.pours} />}</div>
    </section>
  );
}

function Found({ code, pours }: { code: string } & Pick<LogBody, 'pours'>) {
  const t = usePackingText();
  const { format } = useHouse();
  const nameOf = useNamed();
  const pour =
    pours.find((one) => one.code === code && !one.isUndone) ?? pours.find((one) => one.code === code);
  if (!pour) return <p>{t.notPoured(spellCode(code))}</p>;
  const { serial, line, food, household, grams, kind } = pour;
  return (
    <p>
      <b>{spellCode(code)}</b> {pour.isUndone ? t.foundUndone(serial) : t.found(serial, line)}
      <span className="soft block">
        {[nameOf(food), nameOf(kind), household, `${format.count(grams)} g`].join(', ')}
      </span>
    </p>
  );
}
