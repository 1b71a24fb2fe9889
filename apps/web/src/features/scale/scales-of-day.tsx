import { Answer } from '../../ui/glance.tsx';
import type { Scale } from './queries.ts';
import { Standing } from './standing.tsx';
import { useScaleText } from './words.ts';

/** Question 18 of whoever leads packing: whether the day's scales are checked. */
export function ScaleAnswer({ scales }: { scales: readonly Scale[] }) {
  const t = useScaleText();
  return (
    <Answer ask={t.checked}>
      {scales.length === 0 ? t.noneBooked : null}
      {scales.map((scale) => (
        <span key={scale.unitId} className="block">
          <Standing scale={scale} />
        </span>
      ))}
    </Answer>
  );
}

/** What keeps a line from weighing on its scale; nothing where it is true. */
export function ScaleWarning({ scale }: { scale: Scale | null }) {
  const t = useScaleText();
  if (scale?.verdict === 'true') return null;
  return (
    <p className={scale?.verdict === 'off' ? 'said' : 'said watch-said'} role="note">
      {scale === null ? t.noneBooked : <Standing scale={scale} />}
    </p>
  );
}

/** The same for all lines of a day that pack something, each scale once. */
export function ScaleWarnings({ lines }: { lines: readonly { containers: number; scale: Scale | null }[] }) {
  const scales = lines.filter(({ containers }) => containers > 0).map(({ scale }) => scale);
  const once = scales.filter((scale, at) => scales.findIndex((one) => one?.unitId === scale?.unitId) === at);
  return once.map((scale) => <ScaleWarning key={scale?.unitId ?? ''} scale={scale} />);
}
