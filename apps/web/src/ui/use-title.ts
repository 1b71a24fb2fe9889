import { useEffect } from 'react';

/** Names the page in the tab, so that a screen reader hears where a link led. */
export function useTitle(title: string): void {
  useEffect(() => {
    document.title = `${title} · Sheafbook`;
  }, [title]);
}
