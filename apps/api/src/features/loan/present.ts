import { presentBooking, presentWish } from '../booking/use-cases.ts';
import { presentUnit } from '../equipment/use-cases.ts';
import type { Desk, LoanOut } from './desk.ts';
import type { LoanRead, readSwap } from './use-cases.ts';

export function presentLoan({ loan, booking, item, unit, seat, householdName, parts }: LoanRead) {
  return {
    id: loan.loanId,
    bookingId: loan.bookingId,
    itemId: item.equipmentItemId,
    itemName: item.name,
    unitId: unit.equipmentUnitId,
    unitNo: unit.unitNo,
    unitCode: unit.unitCode,
    household: { id: loan.householdId, seat, name: householdName },
    outAt: loan.outAt.toISOString(),
    dueAt: loan.dueAt.toISOString(),
    inAt: loan.inAt?.toISOString() ?? null,
    takenBy: loan.takenBy,
    broughtBy: loan.broughtBy,
    conditionIn: loan.conditionIn,
    noteOut: loan.noteOut,
    noteIn: loan.noteIn,
    uses: booking.uses,
    depositMinorUnits: loan.depositMinorUnits,
    depositFrom: loan.depositFrom,
    feeMinorUnits: loan.feeMinorUnits,
    lateMinorUnits: loan.lateMinorUnits,
    isLateWaived: loan.isLateWaived,
    partsMinorUnits: loan.partsMinorUnits,
    damageMinorUnits: loan.damageMinorUnits,
    keptMinorUnits: loan.keptMinorUnits,
    refundMinorUnits: loan.refundMinorUnits,
    refundTo: loan.refundTo,
    relayedFromId: loan.relayedFromId,
    parts: parts.map(({ equipmentPartId, name, isCritical, valueMinorUnits, outPieces, inPieces }) => ({
      ...{ id: equipmentPartId, name, isCritical, valueMinorUnits, outPieces, inPieces },
    })),
  };
}

const presentOut = (row: LoanOut) => ({
  ...presentLoan(row),
  isLate: row.isLate,
  lateMinorUnitsNow: row.lateMinorUnits,
  blocks: row.blocks,
  next: row.next && presentBooking(row.next),
});

export const presentDesk = ({ items, states, out, bookings, waiting }: Desk) => ({
  out: out.map(presentOut),
  bookings: bookings.map(presentBooking),
  waiting: waiting.map(presentWish),
  units: states.map((state) => ({
    itemId: state.unit.equipmentItemId,
    itemName: items.find(({ equipmentItemId }) => equipmentItemId === state.unit.equipmentItemId)?.name ?? '',
    ...presentUnit(state),
  })),
});

export const presentSwap = ({ swap, freeTimes }: Awaited<ReturnType<typeof readSwap>>) => ({
  swap,
  freeTimes,
});
