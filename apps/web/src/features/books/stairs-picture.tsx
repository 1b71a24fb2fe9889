import { useHouse } from '../../ui/house.ts';
import { AsTable, Ledger } from '../../ui/pieces.tsx';
import { drawStairs, type Stair } from './stairs.ts';
import { useBooksText } from './words.ts';

const WIDTH = 1040;
const HEIGHT = 188;
const TOP = 18;

/** A buy's clearing account coming down to a doubly ruled 0.00, with the table behind it. */
export function StairsPicture(props: { name: string; stairs: readonly Stair[]; balanceMinorUnits: number }) {
  const t = useBooksText();
  const { format } = useHouse();
  const { name, stairs, balanceMinorUnits } = props;
  const nameOf = (stair: Stair) => stair.name ?? t.partsShort[stair.part] ?? stair.part;
  const { steps, groundY, stepWidth } = drawStairs(stairs, { width: WIDTH, height: HEIGHT, gap: 6 });
  const lastX = WIDTH - stepWidth / 2;
  return (
    <>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a frame that scrolls must be reachable by keyboard (axe: scrollable-region-focusable) */}
      <figure className="stairs" tabIndex={0} aria-label={t.clearingOf(name)}>
        <svg
          viewBox={`0 0 ${WIDTH} ${TOP + Math.max(groundY, HEIGHT) + 34}`}
          role="img"
          aria-label={t.stairsLabel(name, format.money(balanceMinorUnits))}
        >
          <g transform={`translate(0 ${TOP})`}>
            {steps.map((step, at) => {
              const stair = stairs[at];
              if (!stair) return null;
              const middle = step.x + step.width / 2;
              return (
                <g key={`${stair.part} ${stair.name}`}>
                  <rect className={step.tone} x={step.x} y={step.y} width={step.width} height={step.height} />
                  <path className="ground" d={`M${step.x + step.width} ${step.nextY}h6`} />
                  <text className="b halo" textAnchor="middle" x={middle} y={step.y - 5}>
                    {format.money(Math.abs(stair.amountMinorUnits))}
                  </text>
                  <text className="soft" textAnchor="middle" x={middle} y={groundY + 18}>
                    {nameOf(stair).slice(0, Math.floor(stepWidth / 7))}
                  </text>
                </g>
              );
            })}
            <path className="ground" d={`M0 ${groundY}H${WIDTH}`} />
            <text className="b end halo" textAnchor="middle" x={lastX} y={groundY - 5}>
              {format.money(balanceMinorUnits)}
            </text>
            <path className="ground" d={`M${lastX - 24} ${groundY + 5}h48m-48 4h48`} />
          </g>
        </svg>
      </figure>
      <AsTable>
        <Ledger
          caption={t.clearingOf(name)}
          columns={[
            { name: t.step },
            { name: t.part },
            { name: t.amount, isNumber: true },
            { name: t.left, isNumber: true },
          ]}
          rows={[
            ...stairs.map((stair) => ({
              key: `${stair.part} ${stair.name}`,
              cells: [
                nameOf(stair),
                t.parts[stair.part] ?? stair.part,
                format.money(stair.amountMinorUnits),
                format.money(stair.balanceMinorUnits),
              ],
            })),
            { key: 'sum', isSum: true, cells: [t.left, '', '', format.money(balanceMinorUnits)] },
          ]}
        />
      </AsTable>
    </>
  );
}
