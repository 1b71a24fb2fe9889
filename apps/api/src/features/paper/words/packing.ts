import { giftEn, giftEs, offerEn, offerEs } from './giving.ts';
import { handoverEn, handoverEs } from './handover.ts';
import { inspectionSheetEn, inspectionSheetEs } from './inspection-sheet.ts';
import { loanEn, loanEs } from './loan-slip.ts';
import { tagEn, tagEs } from './quarantine-tag.ts';
import { recallEn, recallEs } from './recall-notice.ts';
import { runEn, runEs } from './run-sheet.ts';
import { seamEn, seamEs } from './seam-log.ts';
import { eatFirstListEn, eatFirstListEs, shelfListEn, shelfListEs } from './shelf-lists.ts';
import { yearReviewEn, yearReviewEs } from './year-review.ts';

/** The papers of a packing day, of what is lent, and of what is offered and given. */
export const packingEn = {
  run: runEn,
  seam: seamEn,
  loan: loanEn,
  tag: tagEn,
  recall: recallEn,
  shelfList: shelfListEn,
  eatFirst: eatFirstListEn,
  gift: giftEn,
  offer: offerEn,
  handover: handoverEn,
  yearReview: yearReviewEn,
  inspection: inspectionSheetEn,
};
export const packingTitlesEn = {
  'run-sheet': runEn.title,
  'seam-log': seamEn.title,
  'loan-slip': loanEn.title,
  'quarantine-tag': tagEn.title,
  'recall-notice': recallEn.title,
  'shelf-list': shelfListEn.title,
  'eat-first-list': eatFirstListEn.title,
  'gift-manifest': giftEn.title,
  'gift-year': giftEn.yearTitle,
  'offer-notice': offerEn.noticeTitle,
  'transfer-slip': offerEn.slipTitle,
  handover: handoverEn.title,
  'year-review': yearReviewEn.title,
  'inspection-sheet': inspectionSheetEn.title,
};
export const packingEs: typeof packingEn = {
  run: runEs,
  seam: seamEs,
  loan: loanEs,
  tag: tagEs,
  recall: recallEs,
  shelfList: shelfListEs,
  eatFirst: eatFirstListEs,
  gift: giftEs,
  offer: offerEs,
  handover: handoverEs,
  yearReview: yearReviewEs,
  inspection: inspectionSheetEs,
};
export const packingTitlesEs: typeof packingTitlesEn = {
  'run-sheet': runEs.title,
  'seam-log': seamEs.title,
  'loan-slip': loanEs.title,
  'quarantine-tag': tagEs.title,
  'recall-notice': recallEs.title,
  'shelf-list': shelfListEs.title,
  'eat-first-list': eatFirstListEs.title,
  'gift-manifest': giftEs.title,
  'gift-year': giftEs.yearTitle,
  'offer-notice': offerEs.noticeTitle,
  'transfer-slip': offerEs.slipTitle,
  handover: handoverEs.title,
  'year-review': yearReviewEs.title,
  'inspection-sheet': inspectionSheetEs.title,
};
