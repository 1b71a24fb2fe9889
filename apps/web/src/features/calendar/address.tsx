import { useState } from 'react';
import { Field } from '../../ui/field.tsx';
import type { NewFeedBody } from './queries.ts';
import { useCalendarText } from './words.ts';

/** The address is shown this once, to be opened here or carried to where it is read. */
export function Address({ feed }: { feed: NewFeedBody }) {
  const words = useCalendarText();
  const [isCopied, setIsCopied] = useState(false);
  const canCopy = 'clipboard' in navigator; // not over plain HTTP
  return (
    <div className="stack" role="status">
      <p>{words.made}</p>
      <Field label={words.address} readOnly value={feed.address} onFocus={(event) => event.target.select()} />
      <div className="actions">
        <a className="btn" href={feed.webcal}>
          {words.open}
        </a>
        {canCopy ? (
          <button
            type="button"
            className="btn"
            onClick={() => void navigator.clipboard.writeText(feed.address).then(() => setIsCopied(true))}
          >
            {words.copy}
          </button>
        ) : null}
        {isCopied ? <span>{words.copied}</span> : null}
      </div>
    </div>
  );
}
