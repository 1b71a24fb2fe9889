import type { Missing, MissingCode } from '@sheafbook/ledger';
import { type Actor, hasDuty } from '../../platform/actor.ts';
import { maySeePledges } from '../pledge/use-cases.ts';

const WORDS: Readonly<Record<MissingCode, string>> = {
  'no-food-line': 'The buy has no food yet.',
  'no-quote': 'No food of the buy has a quote that stands.',
  'no-closing-day': 'Nobody has said when the gathering closes.',
  'quote-lapses-before-close': 'A quote lapses before the gathering closes.',
  'quote-lapsed': 'A quote has lapsed.',
  'fill-not-run': 'The bags have not been filled yet.',
  'fill-out-of-date': 'Pledges or quotes have changed since the bags were filled.',
  'nothing-allotted': 'Nobody would get anything.',
  'allotment-above-most': 'A pledge would get more than its most.',
  'price-above-ceiling': 'A pledge would pay more than its ceiling.',
  'supplier-minimum-not-met': 'A supplier’s minimum order is not reached.',
  'deposit-holder-not-told': 'A household whose deposit is held has not been told.',
  'no-reason': 'A reason is needed.',
  'second-login-missing': 'Coordinator and treasurer must both agree, with a login each.',
  'deposit-unpaid': 'A deposit has neither come in nor been waived.',
  'price-risen': 'The price has risen too far since the buy was fixed.',
  'line-not-counted': 'A food has not been counted at landing.',
  'bag-not-weighed': 'A bag has been neither weighed nor exempted.',
  'line-not-split': 'A food has not been split.',
  'mass-not-shared': 'Shares, common stock and loss do not come to what landed.',
  'invoice-missing': 'A supplier whose goods landed has not billed them yet.',
  'claim-open': 'A claim is neither granted nor refused yet.',
  'clearing-not-zero': 'The buy’s clearing account is not at 0.00.',
  'deposit-held': 'A deposit of the buy is still held.',
  'mass-unassigned': 'Some grams belong to nobody: split them, or release or throw away the bags on hold.',
  'cancellation-not-recorded': 'Nobody has written down that the supplier’s order was cancelled.',
  'bag-not-numbered': 'A bag that was counted has no number yet.',
  'charges-behind': 'A split, a claim or a bill came after the buy was shared out. Recharge the buy.',
};

const ABOUT_DEPOSITS: readonly MissingCode[] = ['deposit-holder-not-told', 'deposit-unpaid', 'deposit-held'];
const ABOUT_PLEDGES: readonly MissingCode[] = ['allotment-above-most', 'price-above-ceiling'];

export const isAboutDeposits = (code: MissingCode): boolean => ABOUT_DEPOSITS.includes(code);
export const isAboutPledges = (code: MissingCode): boolean => ABOUT_PLEDGES.includes(code);

/**
 * What a stage move lacks, in a member's words. Whose deposit is unpaid is for coordinator, treasurer and reviewer,
 * how much for the last two; whose pledge it is, for those who see pledges (job map 14).
 */
export function presentMissing(missing: readonly Missing[], actor: Actor) {
  return missing.map(({ code, count, ids, minorUnits, grams }) => {
    const isDeposit = isAboutDeposits(code);
    const seesWhose = isDeposit
      ? hasDuty(actor, 'coordinator', 'treasurer', 'reviewer')
      : !isAboutPledges(code) || maySeePledges(actor);
    const seesAmount = !isDeposit || hasDuty(actor, 'treasurer', 'reviewer');
    return {
      code,
      words: WORDS[code],
      ...(count === undefined ? {} : { count }),
      ...(ids === undefined || !seesWhose ? {} : { ids }),
      ...(minorUnits === undefined || !seesAmount ? {} : { minorUnits }),
      ...(grams === undefined ? {} : { grams }),
    };
  });
}
