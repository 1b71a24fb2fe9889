import { POUR_BOUNDS } from '@sheafbook/packing';
import { useHouse } from '../../ui/house.ts';
import type { LoggedPour } from './queries.ts';
import { usePackingText } from './words.ts';

const [WIDTH, HEIGHT] = [360, 120];
const MIDDLE = 76;

/** The last pours beside what was wanted; the band is what a scoop may be off. */
export function Drift({ pours, targetGrams }: { pours: readonly LoggedPour[]; targetGrams: number }) {
  const t = usePackingText();
  const { format } = useHouse();
  if (pours.length === 0 || targetGrams === 0) return null;
  const most = Math.max(
    POUR_BOUNDS.singleGrams * 2,
    ...pours.map((pour) => Math.abs(pour.grams - targetGrams)),
  );
  const y = (off: number) => MIDDLE - (off / most) * 56;
  const x = (at: number) => 24 + (at * (WIDTH - 48)) / Math.max(pours.length - 1, 7);
  const offs = pours.map((pour) => pour.grams - targetGrams);
  return (
    <svg
      className="drift"
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={t.driftLabel(offs.map((off) => t.signed(off)).join(', '))}
    >
      <rect
        className="band"
        x={0}
        width={WIDTH}
        y={y(POUR_BOUNDS.singleGrams)}
        height={y(-POUR_BOUNDS.singleGrams) - y(POUR_BOUNDS.singleGrams)}
      />
      <line className="zero" x1={0} x2={WIDTH} y1={MIDDLE} y2={MIDDLE} />
      {pours.map((pour, at) => {
        const off = pour.grams - targetGrams;
        return (
          <g key={pour.serial} className={Math.abs(off) > POUR_BOUNDS.singleGrams ? 'over' : undefined}>
            <line className="stem" x1={x(at)} x2={x(at)} y1={MIDDLE} y2={y(off)} />
            <circle className="dot" cx={x(at)} cy={y(off)} r={5} />
            <text x={x(at)} y={y(off) - (off >= 0 ? 9 : -18)} textAnchor="middle">
              {t.signed(off)}
            </text>
          </g>
        );
      })}
      <text x={WIDTH - 4} y={HEIGHT - 4} textAnchor="end">
        {t.wanted(format.count(targetGrams))}
      </text>
    </svg>
  );
}
