import { useMemo, useState } from 'react';
import { en } from '../../text/en/said.ts';
import { es } from '../../text/es/said.ts';
import { useWords } from '../../text/taste.ts';
import { Field } from '../../ui/field.tsx';
import type { PadDraft } from './reading.ts';
import { readSaid, type SaidBag, saidWordsOf } from './said-bag.ts';
import { useLandingText } from './words.ts';

type SayBagProps = {
  pad: PadDraft;
  bagNo: number;
  change: (part: Partial<PadDraft>) => void;
  /** Keeps the bag as it was said; nothing happens while the scale shows nothing. */
  onKeep: (said: Partial<PadDraft>) => void;
};

/**
 * The count by voice, for wet hands (job map 16, delighter 6). The phone's own keyboard listens and writes: the page asks no
 * microphone and no other host. A slip of the bag's number is caught before anything is kept.
 */
export function SayBag({ pad, bagNo, change, onKeep }: SayBagProps) {
  const words = useWords({ en, es });
  const t = useLandingText();
  const [text, setText] = useState('');
  const known = useMemo(() => saidWordsOf(words), [words]);
  const said = readSaid(text, known);
  const problem =
    said.bagNo !== null && said.bagNo !== bagNo
      ? words.otherBag(said.bagNo, bagNo)
      : said.strange !== null
        ? words.notHeard(said.strange)
        : undefined;
  const heard = [
    said.bagNo === null ? null : words.bagIs(said.bagNo),
    said.condition === null ? null : t.conditions[said.condition],
    said.reading === null ? null : `${said.reading} ${said.unit ?? pad.unit}`,
  ].filter((part) => part !== null);
  const hear = (typed: string) => {
    setText(typed);
    const now = readSaid(typed, known);
    const part = padFrom(now);
    if (Object.keys(part).length > 0) change(part);
    const isSure = now.strange === null && (now.bagNo === null || now.bagNo === bagNo);
    if (!now.isKept || now.reading === null || !isSure) return;
    setText('');
    onKeep(part);
  };
  return (
    <details>
      <summary>{words.title}</summary>
      <Field
        label={words.label}
        hint={words.hint}
        value={text}
        autoComplete="off"
        problem={problem}
        onChange={(event) => hear(event.target.value)}
      />
      <p role="status" className="soft">
        {heard.length === 0 ? '' : words.heard(heard.join(', '))}
      </p>
    </details>
  );
}

const padFrom = ({ condition, reading, unit }: SaidBag): Partial<PadDraft> => ({
  ...(condition === null ? {} : { condition }),
  ...(reading === null ? {} : { text: reading }),
  ...(unit === null ? {} : { unit }),
});
