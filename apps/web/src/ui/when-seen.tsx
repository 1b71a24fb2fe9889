import { type ReactNode, useEffect, useRef, useState } from 'react';

const seen = new Set<string>();

/**
 * Stays away until its place comes into view: what it needs is fetched by whoever reads that far. Whoever comes back to the
 * page finds it there, so that the page is as long as it was left.
 */
export function WhenSeen({ name, children }: { name: string; children: ReactNode }) {
  const place = useRef<HTMLDivElement>(null);
  const [isSeen, setSeen] = useState(seen.has(name));
  useEffect(() => {
    const watch = new IntersectionObserver(([at]) => {
      if (!at?.isIntersecting) return;
      seen.add(name);
      setSeen(true);
    });
    if (place.current) watch.observe(place.current);
    return () => watch.disconnect();
  }, [name]);
  return isSeen ? children : <div ref={place} />;
}
