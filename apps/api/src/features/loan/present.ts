import type { Desk } from './desk.ts';
import type { LoanRead, readSwap } from './use-cases.ts';

export function presentLoan({ loan, booking, item, unit, seat, householdName, outAgainAt, parts }: LoanRead) {
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
    /** When the piece went to the next borrower: from then on no photo tells anything of this loan. */
    outAgainAt: outAgainAt?.toISOString() ?? null,
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

const presentOut = (row: Desk['out'][number]) => ({
  ...presentLoan(row),
  isLate: row.isLate,
  lateMinorUnitsNow: row.lateMinorUnits,
  blocks: row.blocks,
  next: row.next,
});

export const presentDesk = ({ out, bookings, waiting, peaks, units }: Desk) => ({
  ...{ out: out.map(presentOut), bookings, waiting, peaks, units },
});

export const presentSwap = ({ swap, freeTimes }: Awaited<ReturnType<typeof readSwap>>) => ({
  swap,
  freeTimes,
});
