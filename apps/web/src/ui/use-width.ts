import { type RefObject, useEffect, useRef, useState } from 'react';

/** The width that a picture has on the page, so that its words stay as large as all others on a phone. */
export function useWidth<Box extends Element>(start: number): [RefObject<Box | null>, number] {
  const box = useRef<Box>(null);
  const [width, setWidth] = useState(start);
  useEffect(() => {
    if (!box.current) return;
    const watch = new ResizeObserver(([entry]) => {
      if (entry) setWidth(Math.max(240, Math.round(entry.contentRect.width)));
    });
    watch.observe(box.current);
    return () => watch.disconnect();
  }, []);
  return [box, width];
}
