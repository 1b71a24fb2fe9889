import { useHouse } from '../../ui/house.ts';
import { Ledger } from '../../ui/pieces.tsx';
import { useCostName } from './own-costs.tsx';
import { useSettlementText } from './words.ts';

type Shown = {
  readonly totalMinorUnits: number;
  readonly storehouseMinorUnits: number;
  readonly costs: readonly {
    readonly kind: string;
    readonly what: string;
    readonly pieces: number | null;
    readonly minorUnits: number;
  }[];
  readonly households: readonly {
    readonly householdId: string;
    readonly household: string;
    readonly minorUnits: number;
  }[];
};

/** Every cost, and what each household pays of them: before posting and after it. */
export function SharedCosts({ shown }: { shown: Shown }) {
  const t = useSettlementText();
  const { format } = useHouse();
  const nameOf = useCostName();
  const charged = shown.totalMinorUnits - shown.storehouseMinorUnits;
  return (
    <>
      <Ledger
        caption={t.costs}
        columns={[{ name: t.cost }, { name: t.sum, isNumber: true }]}
        rows={[
          ...shown.costs.map((cost, at) => ({
            key: `${at} ${cost.kind}`,
            cells: [
              cost.pieces === null ? nameOf(cost) : `${format.count(cost.pieces)} × ${nameOf(cost)}`,
              format.money(cost.minorUnits),
            ],
          })),
          { key: 'sum', isSum: true, cells: [t.all, format.money(shown.totalMinorUnits)] },
        ]}
      />
      {shown.storehouseMinorUnits > 0 ? <p>{t.borne(format.money(shown.storehouseMinorUnits))}</p> : null}
      <Ledger
        caption={t.pays}
        columns={[{ name: t.household }, { name: t.pays, isNumber: true }]}
        rows={[
          ...shown.households.map(({ householdId, household, minorUnits }) => ({
            key: householdId,
            cells: [household, format.money(minorUnits)],
          })),
          { key: 'sum', isSum: true, cells: [t.all, format.money(charged)] },
        ]}
      />
      <p className="soft">{t.tie}</p>
    </>
  );
}
