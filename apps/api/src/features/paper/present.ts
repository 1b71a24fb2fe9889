import type { PaperRow } from '@sheafbook/db/tables';
import { spellCode } from '@sheafbook/units';

export function presentPaper({ paper, withinId }: { paper: PaperRow; withinId: string | null }) {
  return {
    code: paper.paperCode,
    spelled: spellCode(paper.paperCode),
    paperNo: paper.paperNo,
    kind: paper.kind,
    buyId: paper.buyId,
    householdId: paper.householdId,
    subjectId: paper.subjectId,
    withinId,
    asOfEntryNo: paper.asOfEntryNo,
    printedAt: paper.printedAt.toISOString(),
    printedBy: paper.printedBy,
  };
}
