import type { SplitRow } from '@sheafbook/db/tables';
import type { FrozenSplit } from '@sheafbook/sharing';
import { seesAllShares } from './policy.ts';
import type { SplitSheet } from './use-cases.ts';

const TIE_BREAK = 'The odd gram and the odd cent go to the largest remainder, then to the lower seat.';

type KeptAnswer = Omit<FrozenSplit, 'claims'> & { readonly pieceCount: number; readonly isFewest: boolean };

/** The split sheet (job map section 13, paper 5). A member sees their own row, and how far apart the shares lie. */
export function presentSplit(sheet: SplitSheet) {
  const { actor, split, line, food, shares, range, losses } = sheet;
  const answer = split.answer as KeptAnswer;
  const sees = seesAllShares(actor);
  const visible = shares.filter((share) => sees || share.ownerId === actor.householdId);
  const sum = (grams: (share: (typeof shares)[number]) => number) =>
    shares.reduce((total, share) => total + grams(share), 0);
  return {
    id: split.splitId,
    buyId: split.buyId,
    lineId: line.buyLineId,
    foodCode: food.foodCode,
    roundNo: split.roundNo,
    rule: split.rule,
    sentence: answer.sentence,
    stepGrams: answer.stepUnits,
    landedGrams: answer.availableUnits,
    lotIds: [...new Set(sheet.pieces.map((piece) => piece.lotId))],
    losses: losses.map(({ lotId, cause, grams }) => ({ lotId, cause, grams })),
    claimedGrams: sum((share) => share.claimGrams),
    awardedGrams: sum((share) => share.awardGrams),
    ratioRange: range,
    pieceCount: answer.pieceCount,
    isFewestPieces: answer.isFewest,
    tieBreak: TIE_BREAK,
    madeBy: split.madeBy,
    madeAt: split.madeAt.toISOString(),
    undoneAt: split.undoneAt?.toISOString() ?? null,
    shares: visible.map((share) => presentShare(sheet, share, answer)).toSorted((a, b) => a.seat - b.seat),
  };
}

function presentShare(
  { owners, pieces, charges }: SplitSheet,
  share: SplitSheet['shares'][number],
  answer: KeptAnswer,
) {
  const { ownerId } = share;
  return {
    ownerId,
    isCommonStock: ownerId === owners.commonId,
    seat: owners.seatOf(ownerId),
    name: owners.nameOf(ownerId),
    claimGrams: share.claimGrams,
    exactAward: share.exactAward,
    awardGrams: share.awardGrams,
    gotSpareGram: answer.awards.some((award) => award.ownerId === ownerId && award.gotSpareUnit),
    carryChangeGrams: share.carryChangeGrams,
    pieces: pieces
      .filter((piece) => piece.ownerId === ownerId)
      .map(({ bagId, bagCode, bagNo, grams }) => ({ bagId, bagCode, bagNo, grams })),
    charges: charges
      .filter((charge) => charge.ownerId === ownerId)
      .map(({ costLine, minorUnits }) => ({ costLine, minorUnits })),
  };
}

export const presentRerun = ({ split, isSame }: { split: SplitRow; isSame: boolean }) => ({
  id: split.splitId,
  rule: split.rule,
  methodVersion: split.methodVersion,
  isSame,
});
