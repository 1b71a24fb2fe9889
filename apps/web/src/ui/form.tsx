import type { ReactNode } from 'react';

type Props = { onSend: () => void; isTight?: boolean; children: ReactNode };

/** A form that says itself what is missing, and sends without leaving the page. */
export function Form({ onSend, isTight = false, children }: Props) {
  return (
    <form
      className={isTight ? 'stack tight' : 'stack'}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onSend();
      }}
    >
      {children}
    </form>
  );
}
