import { useId } from 'react';
import { useHouse } from '../../ui/house.ts';
import { useNamed } from '../../ui/use-named.ts';
import { useWidth } from '../../ui/use-width.ts';
import { type HillMonth, hillMonths, peaksOf, placeLabels, type Sum } from './hills.ts';
import { useRotationText } from './words.ts';
import './rotation.css';

const [HEIGHT, TOP, FOOT] = [190, 26, 40];
const LETTER_PX = 7.2; // of the page's sans at 13 px, with room to spare
const ROOM_FOR_A_MONTH_PX = 14;

/** What passes its day in each month; null where nothing else is asked about. */
type Props = { now: readonly Sum[]; other: readonly Sum[] | null };

/** Height at a month's middle is its grams, with straight lines between: the area is the total. Peaks are named. */
export function HillsPicture({ now, other }: Props) {
  const words = useRotationText();
  const { format } = useHouse();
  const months = hillMonths(now, other ?? [], format.today().slice(0, 7));
  const [box, width] = useWidth<HTMLElement>(576);
  const hatch = useId();
  const most = Math.max(...months.flatMap(({ grams, otherGrams }) => [grams, otherGrams]), 1);
  const step = width / (months.length + 1);
  const ground = HEIGHT - FOOT;
  const x = (at: number) => (at + 1) * step;
  const y = (grams: number) => ground - (grams / most) * (ground - TOP);
  const line = (of: 'grams' | 'otherGrams') =>
    `M0 ${ground}${months.map((month, at) => `L${x(at)} ${y(month[of])}`).join('')}L${width} ${ground}`;
  return (
    <figure ref={box} className="hills">
      <svg
        viewBox={`0 0 ${width} ${HEIGHT}`}
        width={width}
        height={HEIGHT}
        role="img"
        aria-label={words.riskTitle}
      >
        <pattern id={hatch} width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <rect width="6" height="6" fill="var(--cloth)" />
          <path d="M0 0V6" stroke="var(--ink)" strokeWidth="1" />
        </pattern>
        <path d={line('grams')} fill={`url(#${hatch})`} stroke="var(--ink)" strokeWidth="1.5" />
        {other !== null ? (
          <path
            d={line('otherGrams')}
            fill="none"
            stroke="var(--accent)"
            strokeWidth="2.5"
            strokeDasharray="6 4"
          />
        ) : null}
        <path d={`M0 ${ground}H${width}`} stroke="var(--ink)" />
        <Peaks months={months} x={x} y={y} width={width} />
        {months.map(({ month }, at) => (
          <g key={month} fontSize="13" fill="var(--soft)" textAnchor="middle">
            {step < ROOM_FOR_A_MONTH_PX ? null : (
              <text x={x(at)} y={ground + 16}>
                {format.month(`${month}-01`)}
              </text>
            )}
            {at === 0 || month.endsWith('-01') ? (
              <text x={Math.max(x(at), 16)} y={ground + 34} fill="var(--ink)">
                {at > 0 || !isCrowded(months) ? month.slice(0, 4) : ''}
              </text>
            ) : null}
          </g>
        ))}
      </svg>
      <figcaption>
        <span>
          <i className="hill-now" aria-hidden="true" />
          {words.ifNothing}
        </span>
        {other !== null ? (
          <span>
            <i className="hill-then" aria-hidden="true" />
            {words.ifSo}
          </span>
        ) : null}
      </figcaption>
    </figure>
  );

  /** The year of the first month would stand on that of the next January. */
  function isCrowded(all: readonly HillMonth[]): boolean {
    const january = all.findIndex(({ month }, at) => at > 0 && month.endsWith('-01'));
    return january > 0 && january * step < 40;
  }
}

type PeakProps = {
  months: readonly HillMonth[];
  x: (at: number) => number;
  y: (grams: number) => number;
  width: number;
};

/** Each peak in pounds and food, where there is room for it; the table tells the others. */
function Peaks({ months, x, y, width }: PeakProps) {
  const { format } = useHouse();
  const nameOf = useNamed();
  const says = (at: number) => {
    const { grams = 0, foods = [] } = months[at] ?? {};
    const [food, ...more] = foods.map(nameOf);
    return { mass: format.mass(grams), food: `${food ?? ''}${more.length > 0 ? ', …' : ''}` };
  };
  const labels = peaksOf(months.map(({ grams }) => grams)).map((at) => {
    const { mass, food } = says(at);
    return { at, x: x(at), width: (mass.length + 1 + food.length) * LETTER_PX };
  });
  return placeLabels(labels, width).map(({ at, x: middle }) => (
    <text
      key={at}
      x={middle}
      y={y(months[at]?.grams ?? 0) - 8}
      textAnchor="middle"
      fontSize="13"
      fill="var(--ink)"
    >
      <tspan fontWeight="700">{says(at).mass}</tspan> {says(at).food}
    </text>
  ));
}
