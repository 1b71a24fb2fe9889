import { INTAKE_WORDS, type IntakeAnswers, judgeIntake } from '@sheafbook/keeping';
import { spellCode } from '@sheafbook/units';
import type { TakenIn } from './queries.ts';
import type { TookIn } from './use-cases.ts';

/** Words stand in both languages, so that an answer that is kept can be shown in either. */
const presentJudgement = ({ verdict, reasons }: ReturnType<typeof judgeIntake>) => ({
  verdict,
  reasons: reasons.map((code) => ({ code, say: INTAKE_WORDS[code] })),
});

export const presentTookIn = (took: TookIn) => ({
  lotId: took.intake.lotId,
  entryId: took.entry.entryId,
  ...presentJudgement(took.judgement),
  grams: took.containers.length * took.gramsEach,
  containers: took.containers.map(({ containerId, containerCode }) => ({
    id: containerId,
    code: containerCode,
    spelled: spellCode(containerCode),
    grams: took.gramsEach,
  })),
  warnings: took.warnings,
});

export function presentIntakes(rows: readonly TakenIn[]) {
  return {
    intakes: rows.map(({ intake, lot, food }) => {
      const { packedBy, packedHow, summers, harm, pests, opened } = intake;
      const answers = { packedBy, packedHow, summers, harm, pests, opened } as IntakeAnswers;
      return {
        lotId: lot.lotId,
        food: { code: food.foodCode, nameEn: food.nameEn, nameEs: food.nameEs },
        packedOn: lot.madeOn,
        mark: lot.supplierMark,
        answers,
        ...presentJudgement(judgeIntake(answers)),
        allergensMet: intake.allergensMet,
        note: intake.note,
        takenAt: intake.takenAt.toISOString(),
      };
    }),
  };
}
