import { useHouse } from '../../ui/house.ts';
import type { LinePlan, SessionFacts } from './queries.ts';
import { usePackingText } from './words.ts';

const WIDTH = 864;
const LANE = 72;
const HEAD = 28;
const TEXTURES = ['dots', 'hatch', 'bars', 'weave', 'plain'] as const;
const TICK_STEPS = [15, 30, 60, 120];

/**
 * The day as lanes, one a block of stations. A lane is as high as its seconds a can beside the slowest block's, so a full
 * lane is the bottleneck; the floor is what the day takes beside the cans.
 */
export function LineClock({
  line,
  startsAt,
  day,
}: {
  line: LinePlan;
  startsAt: string;
  day: Pick<SessionFacts, 'setupMinutes' | 'breakMinutes' | 'cleanDownMinutes'>;
}) {
  const t = usePackingText();
  const { format } = useHouse();
  const end = line.finishSeconds ?? 1;
  const x = (seconds: number) => (seconds / end) * WIDTH;
  const foods = [...new Set(line.runs.map(({ foodCode }) => foodCode))];
  const textureOf = (foodCode: string) => TEXTURES[foods.indexOf(foodCode) % TEXTURES.length] ?? 'plain';
  const height = HEAD + line.blocks.length * (LANE + 24);
  const step = TICK_STEPS.find((minutes) => end / 60 / minutes <= 8) ?? 240;
  const ticks = Array.from({ length: Math.floor(end / 60 / step) + 1 }, (_, at) => at * step * 60);
  const hour = (seconds: number) =>
    format.hour(new Date(Date.parse(startsAt) + seconds * 1000).toISOString());
  const namesOf = (stations: readonly string[]) =>
    stations.map((name) => t.stations[name as keyof typeof t.stations] ?? name).join(', ');
  return (
    <figure className="line-clock">
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reachable by keyboard (axe: scrollable-region-focusable) */}
      <section className="scroll" tabIndex={0} aria-label={t.plan}>
        <svg viewBox={`0 0 ${WIDTH} ${height}`} role="img" aria-label={t.clockLabel(hour(end))}>
          <Textures />
          {ticks.map((seconds) => (
            <g key={seconds}>
              <line className="hair" x1={x(seconds)} x2={x(seconds)} y1={HEAD - 8} y2={height} />
              <text x={x(seconds)} y={14} textAnchor={anchorAt(x(seconds))}>
                {hour(seconds)}
              </text>
            </g>
          ))}
          {line.blocks.map((block, at) => {
            const floor = HEAD + at * (LANE + 24) + LANE;
            const tall = (LANE - 16) * (block.cycleSeconds / (line.cycleSeconds ?? block.cycleSeconds));
            const isFull = block.stations.join() === line.bottleneck.join();
            return (
              <g key={block.stations.join()}>
                <text x={0} y={floor - LANE + 8}>
                  {t.laneName(namesOf(block.stations), format.count(Math.round(block.cycleSeconds)))}
                </text>
                <rect className="floor" x={0} y={floor - 4} width={WIDTH} height={4} />
                {line.runs.map((run) => (
                  <rect
                    key={run.wishId}
                    className={isFull ? 'run full' : 'run'}
                    fill={`url(#clock-${textureOf(run.foodCode)})`}
                    x={x(run.startsAtSecond)}
                    width={Math.max(x(run.endsAtSecond) - x(run.startsAtSecond), 2)}
                    y={floor - tall}
                    height={tall}
                  />
                ))}
                <line className="ink" x1={0} x2={WIDTH} y1={floor} y2={floor} />
              </g>
            );
          })}
        </svg>
      </section>
      <figcaption>
        <ul className="lanes">
          {line.blocks.map((block) => (
            <li key={block.stations.join()}>
              <b>{namesOf(block.stations)}</b>{' '}
              {t.lane(block.people, format.count(Math.round(block.cycleSeconds)))}
            </li>
          ))}
        </ul>
        <p className="soft">{t.besides(day.setupMinutes, day.breakMinutes, day.cleanDownMinutes)}</p>
      </figcaption>
    </figure>
  );
}

/** A label at an edge stays inside the picture. */
const anchorAt = (at: number) => (at < 24 ? 'start' : at > WIDTH - 24 ? 'end' : 'middle');

/** Textures tell foods apart in black and white, too. */
function Textures() {
  return (
    <defs>
      <pattern id="clock-dots" width="8" height="8" patternUnits="userSpaceOnUse">
        <rect width="8" height="8" className="cloth" />
        <circle cx="4" cy="4" r="1.6" className="grain" />
      </pattern>
      <pattern id="clock-hatch" width="8" height="8" patternUnits="userSpaceOnUse">
        <rect width="8" height="8" className="cloth" />
        <path d="M0 8 8 0" className="grain-line" />
      </pattern>
      <pattern id="clock-bars" width="8" height="8" patternUnits="userSpaceOnUse">
        <rect width="8" height="8" className="cloth" />
        <path d="M4 0V8" className="grain-line" />
      </pattern>
      <pattern id="clock-weave" width="8" height="8" patternUnits="userSpaceOnUse">
        <rect width="8" height="8" className="cloth" />
        <path d="M0 4H8M4 0V8" className="grain-line" />
      </pattern>
      <pattern id="clock-plain" width="8" height="8" patternUnits="userSpaceOnUse">
        <rect width="8" height="8" className="cloth" />
      </pattern>
    </defs>
  );
}
