import { type ReactNode, useEffect, useRef, useState } from 'react';

/** Stays away until its place comes into view: what it needs is fetched by whoever reads that far. */
export function WhenSeen({ children }: { children: ReactNode }) {
  const place = useRef<HTMLDivElement>(null);
  const [isSeen, setSeen] = useState(false);
  useEffect(() => {
    const watch = new IntersectionObserver(([at]) => at?.isIntersecting && setSeen(true));
    if (place.current) watch.observe(place.current);
    return () => watch.disconnect();
  }, []);
  return isSeen ? children : <div ref={place} />;
}
