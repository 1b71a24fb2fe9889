import type { EquipmentItemRow, PackingSessionRow } from '@sheafbook/db/tables';
import { averageCost } from '@sheafbook/ledger';
import { oxygenTaken, type SessionCost, settleSession } from '@sheafbook/packing';
import { assert, sumOf } from '@sheafbook/units';
import { fieldProblem } from '../../platform/problem.ts';
import type { LoggedPour } from '../pour-log/queries.ts';
import type { SupplyOnHand } from '../supply/queries.ts';
import { filledToSupply } from './proposal.ts';
import type { SettlementWish } from './schema.ts';

type Sundry = SettlementWish['sundries'][number];

/** One cost of a session as it will be posted, and what it is shared by. */
export type Cost = SessionCost & {
  readonly what: string;
  readonly supplyId: string | null;
  readonly pieces: number | null;
  readonly itemId: string | null;
  readonly paidBy: Sundry['paidBy'] | null;
  /** How many containers of each household took a part, where it is not shared by them alone. */
  readonly containers?: readonly number[];
};

/** A household that filled containers at a session. */
export type Filler = { readonly householdId: string; readonly name: string; readonly containers: number };

const standing = (pours: readonly LoggedPour[]) => pours.filter(({ pour }) => pour.undoneEntryId === null);

/** Households by seat, with the containers that stand in the log. */
export function fillersOf(pours: readonly LoggedPour[]): Filler[] {
  const own = standing(pours).toSorted((a, b) => a.household.seat - b.household.seat);
  return [...new Set(own.map(({ pour }) => pour.householdId))].map((householdId) => {
    const of = own.filter(({ pour }) => pour.householdId === householdId);
    return { householdId, name: of[0]?.household.name ?? '', containers: of.length };
  });
}

/** Whose containers took a supply, by how many: those of its kind, those with its treatment, or all. */
function tookOf({ supply }: SupplyOnHand, pours: readonly LoggedPour[], fillers: readonly Filler[]) {
  const takes = ({ pour, kind }: LoggedPour): boolean => {
    if (supply.containerKindId !== null) return kind.containerKindId === supply.containerKindId;
    if (supply.kind === 'absorber') return pour.treatment === 'oxygen-absorber';
    return supply.kind !== 'dry-ice' || pour.treatment === 'dry-ice';
  };
  const took = standing(pours).filter(takes);
  return fillers.map(({ householdId }) => took.filter(({ pour }) => pour.householdId === householdId));
}

/**
 * Containers share a supply alike, but for absorbers: those weigh by the oxygen that the packets of their size take up in
 * each container, or by all its packets where the day's plan has none of that size.
 */
function weightsOf(row: SupplyOnHand, took: readonly (readonly LoggedPour[])[], sizes: readonly number[]) {
  if (row.supply.kind !== 'absorber' || row.supply.containerKindId !== null)
    return took.map((own) => own.length);
  const taken = (sizeMillilitres: number | null) =>
    took.map((own) => oxygenTaken(own.map(filledToSupply), { sizes, sizeMillilitres }));
  const ofSize = taken(row.supply.sizeMillilitres);
  return ofSize.some((millilitres) => millilitres > 0) ? ofSize : taken(null);
}

type Day = {
  readonly session: PackingSessionRow;
  readonly pours: readonly LoggedPour[];
  readonly supplies: readonly SupplyOnHand[];
  readonly items: readonly EquipmentItemRow[];
};

/** Every cost of a day, in the order in which it is shown: supplies, what was spoilt, the line, what was lent, the rest. */
export function listCosts(wish: SettlementWish, day: Day): Cost[] {
  const fillers = fillersOf(day.pours);
  const plain = { supplyId: null, pieces: null, itemId: null, paidBy: null };
  // Where nobody filled anything there is nobody to share with.
  const borneBy = fillers.length > 0 ? ('containers' as const) : ('storehouse' as const);
  const used = wish.supplies.map((line, at) => costsOfSupply(line, at, { ...day, fillers, borneBy }));
  const lineFee = day.session.lineFeeMinorUnits * sumOf(fillers.map(({ containers }) => containers));
  return [
    ...used.flatMap(({ use }) => use),
    ...used.flatMap(({ spoilt }) => spoilt),
    ...(lineFee > 0 ? [{ ...plain, name: 'line-fee' as const, what: '', minorUnits: lineFee, borneBy }] : []),
    ...wish.equipmentFees.map(({ itemId, minorUnits }, at) => {
      const item = day.items.find(({ equipmentItemId }) => equipmentItemId === itemId);
      if (!item)
        throw fieldProblem(
          'thing-not-found',
          `equipmentFees.${at}.itemId`,
          'There is no such thing to lend.',
        );
      return { ...plain, name: 'equipment-fee' as const, what: item.name, itemId, minorUnits, borneBy };
    }),
    ...wish.sundries.map(({ what, minorUnits, paidBy }) => ({
      ...{ ...plain, name: 'sundries' as const, what, minorUnits, paidBy, borneBy },
    })),
  ];
}

const sizesOf = (supplies: readonly SupplyOnHand[]): number[] =>
  supplies.flatMap(({ supply }) => supply.sizeMillilitres ?? []);

function costsOfSupply(
  line: SettlementWish['supplies'][number],
  at: number,
  day: Day & { readonly fillers: readonly Filler[]; readonly borneBy: SessionCost['borneBy'] },
): { use: Cost[]; spoilt: Cost[] } {
  const row = day.supplies.find(({ supply }) => supply.supplyId === line.supplyId);
  if (!row) throw fieldProblem('thing-not-found', `supplies.${at}.supplyId`, 'There is no such supply.');
  const { supply, onHandPieces } = row;
  const all = line.usedPieces + line.spoiltPieces + line.spoiltByMachinePieces;
  if (all > onHandPieces)
    throw fieldProblem(
      'not-enough-left',
      `supplies.${at}.usedPieces`,
      `The book has ${onHandPieces} of ${supply.name}; ${all} are said to be used. Write down what was bought, or count it.`,
    );
  let left = { pieces: onHandPieces, minorUnits: row.worthMinorUnits };
  const took = tookOf(row, day.pours, day.fillers);
  const weights = weightsOf(row, took, sizesOf(day.supplies));
  const containers = took.map((own) => own.length);
  const cost = (pieces: number, name: 'supplies' | 'scrap', borneBy: SessionCost['borneBy']): Cost[] => {
    if (pieces === 0) return [];
    const minorUnits = averageCost({ ...left, wanted: pieces });
    left = { pieces: left.pieces - pieces, minorUnits: left.minorUnits - minorUnits };
    const about = { what: supply.name, supplyId: supply.supplyId, pieces, itemId: null, paidBy: null };
    return [{ ...about, name, minorUnits, borneBy, weights, containers }];
  };
  return {
    use: cost(line.usedPieces, 'supplies', day.borneBy),
    spoilt: [
      ...cost(line.spoiltPieces, 'scrap', day.borneBy),
      ...cost(line.spoiltByMachinePieces, 'scrap', 'storehouse'),
    ],
  };
}

/** A cost with the part of each household, in the order of the fillers. */
export type SharedCost = Cost & {
  readonly shares: readonly {
    readonly householdId: string;
    readonly containers: number;
    readonly minorUnits: number;
  }[];
};

/** Shares the costs out; each line adds up to its cost, and charges and the storehouse's part to all of them. */
export function shareCosts(costs: readonly Cost[], fillers: readonly Filler[]) {
  const { charges, storehouseMinorUnits } = settleSession(costs, fillers);
  const borne = costs.filter(({ borneBy, minorUnits }) => borneBy === 'containers' && minorUnits > 0);
  const shared: SharedCost[] = costs.map((cost) => {
    const line = borne.indexOf(cost);
    if (line < 0) return { ...cost, shares: [] };
    const isTaken = cost.containers?.some((count) => count > 0);
    const containers = isTaken ? cost.containers : fillers.map((filler) => filler.containers);
    return {
      ...cost,
      shares: charges.map(({ householdId, lines }, at) => ({
        ...{ householdId, containers: containers?.[at] ?? 0, minorUnits: lines[line]?.minorUnits ?? 0 },
      })),
    };
  });
  const totalMinorUnits = sumOf(costs.map(({ minorUnits }) => minorUnits));
  const charged = sumOf(charges.map(({ minorUnits }) => minorUnits));
  assert(charged + storehouseMinorUnits === totalMinorUnits, 'charges add up to what was spent');
  return { costs: shared, charges, storehouseMinorUnits, totalMinorUnits };
}
