import { useHouse } from '../../ui/house.ts';
import { type ScaleUnit, scaleBar } from './scale.ts';

const WIDTH = 350;

/** The grain in the bag to scale, what is missing of it in broken madder, and what the bag declares as a double line. */
export function ScaleFigure(bag: { declaredGrams: number; weighedGrams: number; unit: ScaleUnit }) {
  const { format } = useHouse();
  const { weighed, declared, shortFrom, ticks } = scaleBar(bag);
  const px = (share: number) => share * WIDTH;
  return (
    <svg viewBox={`-1 0 ${WIDTH + 2} 36`} aria-hidden="true">
      <rect x="0" y="2" width={px(Math.min(1, weighed))} height="14" fill="var(--ink)" />
      {shortFrom === null ? null : (
        <rect
          x={px(shortFrom)}
          y="2.5"
          width={px(declared - shortFrom)}
          height="13"
          fill="none"
          stroke="var(--wrong)"
          strokeWidth="1.5"
          strokeDasharray="3 2"
        />
      )}
      <path
        d={`M${px(declared) - 3} 0v18M${px(declared)} 0v18`}
        stroke={weighed > declared ? 'var(--ground)' : 'var(--ink)'}
      />
      {ticks.map(({ at, label }) => (
        <g key={at}>
          <path d={`M${px(at)} 18v5`} stroke="var(--edge)" />
          {label === null ? null : (
            <text
              x={px(at)}
              y="35"
              className="s"
              textAnchor={at === 0 ? 'start' : at === 1 ? 'end' : 'middle'}
            >
              {label === ticks.findLast((tick) => tick.label !== null)?.label
                ? `${format.count(Number(label))} ${bag.unit}`
                : format.count(Number(label))}
            </text>
          )}
        </g>
      ))}
    </svg>
  );
}
