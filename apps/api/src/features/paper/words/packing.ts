import { loanEn, loanEs } from './loan-slip.ts';
import { tagEn, tagEs } from './quarantine-tag.ts';
import { runEn, runEs } from './run-sheet.ts';
import { seamEn, seamEs } from './seam-log.ts';

/** The papers of a packing day and of what is lent. */
export const packingEn = { run: runEn, seam: seamEn, loan: loanEn, tag: tagEn };
export const packingTitlesEn = {
  'run-sheet': runEn.title,
  'seam-log': seamEn.title,
  'loan-slip': loanEn.title,
  'quarantine-tag': tagEn.title,
};
export const packingEs: typeof packingEn = { run: runEs, seam: seamEs, loan: loanEs, tag: tagEs };
export const packingTitlesEs: typeof packingTitlesEn = {
  'run-sheet': runEs.title,
  'seam-log': seamEs.title,
  'loan-slip': loanEs.title,
  'quarantine-tag': tagEs.title,
};
