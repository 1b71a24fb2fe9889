import type { ReactNode } from 'react';
import { useText } from '../text/taste.ts';
import { Sheaf } from './icons.tsx';
import { LanguageChoice } from './language-choice.tsx';
import { useTitle } from './use-title.ts';

/** The pages before the storehouse's door: one column, its question first. */
export function Door({ title, children }: { title: string; children: ReactNode }) {
  const t = useText();
  useTitle(title);
  return (
    <div className="door-page">
      <div className="weave" />
      <div className="door">
        <header className="head">
          <span className="who">
            <Sheaf />
            {t.sheafbook}
          </span>
          <LanguageChoice />
        </header>
        <main className="body">
          <h1>{title}</h1>
          {children}
        </main>
      </div>
    </div>
  );
}
