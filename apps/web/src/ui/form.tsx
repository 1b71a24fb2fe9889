import type { ReactNode } from 'react';

type Props = { onSend: () => void; label?: string; isTight?: boolean; children: ReactNode };

/** A form that says itself what is missing, and sends without leaving the page. `label` names it where no heading does. */
export function Form({ onSend, label, isTight = false, children }: Props) {
  return (
    <form
      className={isTight ? 'stack tight' : 'stack'}
      noValidate
      aria-label={label}
      onSubmit={(event) => {
        event.preventDefault();
        onSend();
      }}
    >
      {children}
    </form>
  );
}
