import type { SmallTestRow } from '@sheafbook/db/tables';
import {
  cautionOf,
  FINDING_WORDS,
  FINDINGS,
  type Finding,
  INSPECTION_RULES,
  type InspectionDue,
  type Judgement,
  OUTCOME_WORDS,
  OUTCOMES,
  type Outcome,
  SMALL_TEST_WORDS,
  type SmallTest,
  sproutPercent,
} from '@sheafbook/keeping';
import { spellCode } from '@sheafbook/units';
import type { Looked, ToldLook, Watched } from './queries.ts';
import type { Inspected } from './use-cases.ts';

/** Words stand in both languages, so that an answer that is kept can be shown in either. */
export function presentRules() {
  return {
    findings: FINDINGS.map((code) => {
      const { best, caution, shows } = INSPECTION_RULES[code];
      return {
        code,
        ...FINDING_WORDS[code],
        best,
        shows,
        caution: caution === null ? null : cautionOf(caution),
      };
    }),
    outcomes: OUTCOMES.map((code) => ({ code, ...OUTCOME_WORDS[code] })),
  };
}

const presentLooked = ({ container, kind, food, grams, lastOn }: Looked) => ({
  id: container.containerId,
  code: container.containerCode,
  spelled: spellCode(container.containerCode),
  isCommon: container.householdId === null,
  kind: { code: kind.kindCode, nameEn: kind.nameEn, nameEs: kind.nameEs },
  food: { code: food.foodCode, nameEn: food.nameEn, nameEs: food.nameEs },
  packedOn: container.packedOn,
  openedOn: container.openedOn,
  lastInspectedOn: lastOn,
  grams,
});

const presentInspection = (row: ToldLook) => ({
  id: row.inspectionId,
  how: row.how,
  findings: (row.findings as Finding[]).map((code) => ({ code, ...FINDING_WORDS[code] })),
  best: row.best,
  outcome: { code: row.outcome as Outcome, ...OUTCOME_WORDS[row.outcome as Outcome] },
  kernels: row.damagedKernels === null ? null : { damaged: row.damagedKernels, sampleGrams: row.sampleGrams },
  note: row.note,
  entryId: row.entryId,
  inspectedOn: row.inspectedOn,
  isOwn: row.isOwn,
});

const presentJudgement = ({ best, allowed, deciding, cautions }: Judgement) => ({
  best,
  allowed,
  why: deciding.map((code) => ({ code, say: FINDING_WORDS[code].why })),
  cautions: cautions.map(cautionOf),
});

/** Of others' containers only how many are on watch, not whose. */
export function presentInspected({ inspection, judgement, looked, beside }: Inspected) {
  return {
    inspection: presentInspection({ ...inspection, isOwn: true }),
    judgement: presentJudgement(judgement),
    container: presentLooked(looked),
    onWatch: beside.length,
  };
}

export const presentContainer = presentLooked;

export const presentInspections = (read: {
  looked: Looked;
  inspections: readonly ToldLook[];
  tests: readonly SmallTestRow[];
}) => ({
  container: presentLooked(read.looked),
  inspections: read.inspections.map(presentInspection),
  ...presentTests(read.tests),
});

export const presentTests = (tests: readonly SmallTestRow[]) => ({
  tests: tests.map(({ smallTestId, kind, laid, sprouted, note, testedOn }) => ({
    ...{ id: smallTestId, kind: kind as SmallTest, note, testedOn },
    seeds:
      laid === null || sprouted === null ? null : { laid, sprouted, percent: sproutPercent(sprouted, laid) },
    tells: SMALL_TEST_WORDS[kind as SmallTest],
  })),
});

export function presentToInspect(read: {
  of: 'household' | 'common';
  due: readonly InspectionDue<{ looked: Looked } & InspectionDue['row']>[];
  watches: readonly Watched[];
}) {
  return {
    of: read.of,
    due: read.due.map(({ row, why, dueOn }) => ({ container: presentLooked(row.looked), why, dueOn })),
    watches: read.watches.map(({ watch, ...looked }) => ({
      container: presentLooked(looked),
      finding: { code: watch.finding, ...FINDING_WORDS[watch.finding as Finding] },
      isSameWindow: watch.isSameWindow,
      since: watch.since.toISOString(),
    })),
  };
}
