import { tenthsPercent } from '@sheafbook/booking';
import type { ItemUse, Use } from './use-cases.ts';

export const presentUse = ({ fromOn, toOn, items }: Use) => ({ fromOn, toOn, items: items.map(presentOne) });

const presentOne = ({
  item,
  pieces,
  hours,
  late,
  uses,
  costMinorUnits,
  eachMinorUnits,
  waited,
}: ItemUse) => ({
  itemId: item.equipmentItemId,
  itemName: item.name,
  pieces,
  /** In use, of the hours that its pieces were there. */
  usedHours: hours.some,
  thereHours: hours.of,
  usedTenthsPercent: tenthsPercent(hours),
  /** Of the loans that fell due. */
  lateLoans: late.some,
  dueLoans: late.of,
  lateTenthsPercent: tenthsPercent(late),
  uses,
  /** Repairs and parts paid in those days, less what borrowers paid for them. */
  costMinorUnits,
  costPerUseMinorUnits: eachMinorUnits,
  /** What became of wishes on the waiting list; the book keeps no refusal that nobody put on it. */
  waited,
});
