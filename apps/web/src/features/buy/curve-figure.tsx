import { useId } from 'react';
import { useHouse } from '../../ui/house.ts';
import { useWidth } from '../../ui/use-width.ts';
import type { CurveOffer } from './curve.ts';
import { type Curve, type CurveLine, curveOf, pricesOf, type Span, ticksOf, type Wanted } from './curve.ts';
import { type Obstacle, placeNames } from './name-places.ts';
import { useRunText } from './words.ts';
import './run.css';

const HEIGHT = 300;
const TOP = 24;
const BOTTOM = 272;
const LEFT = 44;
const RIGHT = 8;

type FigureProps = {
  food: string;
  unit: 'lb' | 'kg';
  offers: readonly CurveOffer[];
  leadKey: string;
  wanted: Wanted;
};

/** What a unit lands at, quote by quote, against the mass: it falls with each bag, and leaps at breaks and free freight. */
export function CurveFigure({ food, unit, offers, leadKey, wanted }: FigureProps) {
  const words = useRunText();
  const { format } = useHouse();
  const [box, width] = useWidth<HTMLElement>(576);
  const hatch = useId();
  const curve = curveOf(offers, leadKey, wanted);
  const prices = pricesOf(curve);
  const x = scaleOf(curve.span, { from: LEFT, to: width - RIGHT });
  const y = scaleOf(prices, { from: BOTTOM, to: TOP });
  const mass = (units: number) => `${format.count(units)} ${unit}`;
  return (
    <figure ref={box} className="curve">
      <p className="mark soft" aria-hidden="true">
        {words.perUnitLanded(unit)}
      </p>
      <svg
        viewBox={`0 0 ${width} ${HEIGHT}`}
        width={width}
        height={HEIGHT}
        role="img"
        aria-label={words.curveLabel(food)}
      >
        <defs>
          <pattern
            id={hatch}
            width="5"
            height="5"
            patternUnits="userSpaceOnUse"
            patternTransform="rotate(45)"
          >
            <path d="M0 0V5" stroke="var(--edge)" strokeWidth="1" />
          </pattern>
          <clipPath id={`${hatch}-plot`}>
            <rect x={LEFT} y={TOP - 8} width={width - LEFT - RIGHT} height={BOTTOM - TOP + 8} />
          </clipPath>
        </defs>
        <Grid {...{ curve, prices, width, x, y, unit }} />
        {curve.deadZones.map(({ from, to }) => (
          <rect
            key={from}
            x={x(from)}
            y={TOP + 14}
            width={x(Math.min(to, curve.span.to)) - x(from)}
            height={BOTTOM - TOP - 14}
            fill={`url(#${hatch})`}
            opacity=".45"
          />
        ))}
        <g clipPath={`url(#${hatch}-plot)`}>
          {curve.lines.map((line, at) => (
            <Steps key={line.key} line={line} at={at} x={x} y={y} />
          ))}
        </g>
        <Marks {...{ wanted, mass, x, span: curve.span, hasDead: curve.deadZones.length > 0, width }} />
        <Jumps {...{ curve, wanted, x, y, unit, width }} />
        <Names
          {...{ curve, x, y, width }}
          avoid={[
            ...(wanted.wanted > 0 ? [{ x: x(wanted.wanted) - 3, y: TOP, width: 6, isWall: true }] : []),
            ...jumpsAhead(curve, wanted).map((jump) => ({
              x: Math.min(x(jump.toUnits) + 8, width - RIGHT - 116),
              y: y(jump.price) - 8,
              width: 116,
              isWall: false,
            })),
          ]}
        />
      </svg>
    </figure>
  );
}

type Scale = (value: number) => number;
const scaleOf =
  (values: Span, pixels: Span): Scale =>
  (value) =>
    Math.round(
      (pixels.from + ((value - values.from) / (values.to - values.from)) * (pixels.to - pixels.from)) * 10,
    ) / 10;

function Grid(at: { curve: Curve; prices: Span; width: number; x: Scale; y: Scale; unit: string }) {
  const { curve, prices, width, x, y, unit } = at;
  const { format } = useHouse();
  const fit = width < 460 ? 2 : 1; // on a phone every second figure has room
  const masses = ticksOf(curve.span).filter((_, position) => position % fit === 0);
  return (
    <>
      {ticksOf(prices).map((price) => (
        <g key={price}>
          <path d={`M${LEFT} ${y(price)}H${width - RIGHT}`} stroke="var(--hair)" />
          <text className="s" x={LEFT - 8} y={y(price) + 5} textAnchor="end">
            {format.count(price)}
          </text>
        </g>
      ))}
      {masses
        .filter((units) => x(units) < width - 24)
        .map((units) => (
          <g key={units}>
            <path d={`M${x(units)} ${BOTTOM + 3}v5`} stroke="var(--edge)" />
            <text className="s" x={x(units)} y={HEIGHT - 5} textAnchor="middle">
              {format.count(units)} {unit}
            </text>
          </g>
        ))}
    </>
  );
}

/** The leading quote in ink; the others thin, every second dashed. */
function Steps({ line, at, x, y }: { line: CurveLine; at: number; x: Scale; y: Scale }) {
  const path = line.steps
    .map(({ fromUnits, toUnits, price }, step) =>
      step === 0 ? `M${x(fromUnits)} ${y(price)}H${x(toUnits)}` : `V${y(price)}H${x(toUnits)}`,
    )
    .join('');
  return (
    <path
      d={path}
      fill="none"
      stroke={line.isLead ? 'var(--ink)' : 'var(--soft)'}
      strokeWidth={line.isLead ? 2.5 : 1.5}
      strokeDasharray={!line.isLead && at % 2 === 0 ? '5 4' : undefined}
    />
  );
}

function Marks(at: {
  wanted: Wanted;
  mass: (units: number) => string;
  x: Scale;
  span: Span;
  hasDead: boolean;
  width: number;
}) {
  const words = useRunText();
  const { wanted, mass, x, span, hasDead, width } = at;
  const isIn = (units: number) => units > span.from && units < span.to;
  const here = x(wanted.wanted);
  const isLeft = here > width * 0.45;
  return (
    <>
      {hasDead ? (
        <text className="s halo" x={width - RIGHT} y={TOP + 8} textAnchor="end">
          {words.hatched}
        </text>
      ) : null}
      {wanted.wanted > 0 ? (
        <>
          <path d={`M${here} ${TOP - 14}V${BOTTOM}`} stroke="var(--thread)" strokeWidth="1.5" />
          <text
            className="b halo thread"
            x={here + (isLeft ? -6 : 6)}
            y={TOP - 8}
            textAnchor={isLeft ? 'end' : 'start'}
          >
            {words.pledgedMark(mass(wanted.wanted))}
          </text>
        </>
      ) : null}
      {[
        { units: wanted.least, name: words.leastMark(mass(wanted.least)) },
        { units: wanted.most, name: words.mostMark(mass(wanted.most)) },
      ]
        .filter(({ units }) => units > 0 && units !== wanted.wanted && isIn(units))
        .map(({ units, name }) => (
          <g key={name}>
            <path d={`M${x(units)} ${BOTTOM}v-8`} stroke="var(--ink)" strokeWidth="2" />
            <text className="s halo" x={clamp(x(units), width)} y={BOTTOM - 13} textAnchor="middle">
              {name}
            </text>
          </g>
        ))}
    </>
  );
}

const clamp = (at: number, width: number) => Math.min(Math.max(at, LEFT + 36), width - RIGHT - 40);

const jumpsAhead = (curve: Curve, wanted: Wanted) =>
  curve.jumps.filter((jump) => jump.toUnits > wanted.wanted && jump.toUnits <= curve.span.to);

/** What the order would land at on each jump that is still ahead. */
function Jumps(at: { curve: Curve; wanted: Wanted; x: Scale; y: Scale; unit: 'lb' | 'kg'; width: number }) {
  const words = useRunText();
  const { format } = useHouse();
  const { curve, wanted, x, y, unit, width } = at;
  return jumpsAhead(curve, wanted).map((jump) => {
    const price = format.perUnit({ minorUnits: jump.totalMinorUnits, grams: jump.grams }, unit);
    const isLast = x(jump.toUnits) > width - 124;
    return (
      <g key={jump.bags}>
        <circle cx={x(jump.toUnits)} cy={y(jump.price)} r="4" fill="var(--ink)" />
        <text
          className="b halo"
          x={isLast ? width - RIGHT : x(jump.toUnits) + 8}
          y={y(jump.price) - 8}
          textAnchor={isLast ? 'end' : 'start'}
        >
          {words.jumpMark(jump.bags, price)}
        </text>
      </g>
    );
  });
}

/** Each name stands where its line is farthest from the others, so that it is plain which one is meant. */
function Names(at: { curve: Curve; x: Scale; y: Scale; width: number; avoid: readonly Obstacle[] }) {
  const { curve, x, y, width, avoid } = at;
  const plot = { left: LEFT + 4, right: width - RIGHT, top: TOP - 4, bottom: BOTTOM - 30 };
  const paths = curve.lines.map((line) =>
    line.steps.map((step) => ({ from: x(step.fromUnits), to: x(step.toUnits), y: y(step.price) })),
  );
  const places = placeNames(
    paths,
    curve.lines.map(({ name, isLead }) => name.length * (isLead ? 8 : 7.4)),
    { plot, avoid },
  );
  return curve.lines.map((line, position) => {
    const place = places[position];
    return place ? (
      <text key={line.key} className={line.isLead ? 'b halo' : 's halo'} x={place.x} y={place.y}>
        {line.name}
      </text>
    ) : null;
  });
}
