import type { PaperRow } from '@sheafbook/db/tables';
import { spellCode } from '@sheafbook/units';

export function presentPaper(paper: PaperRow) {
  return {
    code: paper.paperCode,
    spelled: spellCode(paper.paperCode),
    paperNo: paper.paperNo,
    kind: paper.kind,
    buyId: paper.buyId,
    householdId: paper.householdId,
    subjectId: paper.subjectId,
    asOfEntryNo: paper.asOfEntryNo,
    printedAt: paper.printedAt.toISOString(),
    printedBy: paper.printedBy,
  };
}
