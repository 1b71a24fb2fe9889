import type { ProblemCode } from './problem-catalogue.ts';

/**
 * What a constraint's refusal means to a person. A use case checks first and says more; the constraint catches the
 * race, and both lead to the same code. `tests/tidy` holds that each named constraint stands here or in
 * INTERNAL_CONSTRAINTS.
 */
export const CONSTRAINT_PROBLEMS: Readonly<Record<string, ProblemCode>> = {
  account_never_below_zero: 'not-enough-left',
  account_never_above_zero: 'not-enough-left',
  equipment_item_name_once: 'already-there',
  import_file_once: 'import-not-as-seen',
  import_no_once: 'busy-retry',
  account_closed_at_zero: 'account-closed',
  amount_exact_in_a_double: 'amount-too-large',
  entry_in_open_period: 'period-closed',
  entry_reversed_once: 'already-reversed',
  login_email_once: 'email-taken',
  person_login_once: 'already-a-member',
  household_name_once: 'already-there',
  household_seat_once: 'busy-retry',
  household_still_here: 'household-has-left',
  supplier_name_once: 'already-there',
  food_code_once: 'already-there',
  container_kind_code_once: 'already-there',
  buy_name_once: 'already-there',
  buy_line_food_once: 'already-there',
  bag_offer_size_once: 'already-there',
  pledge_once_per_line: 'already-pledged',
  pledge_in_order: 'pledge-not-in-order',
  order_consent_two_logins: 'second-login-needed',
  write_off_two_logins: 'second-login-needed',
  invoice_number_once: 'already-there',
  bag_number_once: 'busy-retry',
  bag_net_possible: 'does-not-add-up',
  photo_once: 'already-there',
  hold_one_open_per_bag: 'bag-already-held',
  hold_release_needs_two: 'second-login-needed',
  split_round_once: 'already-split',
  withdrawal_once: 'already-there',
  container_wish_place_once: 'busy-retry',
  duty_grant_held_once: 'already-there',
  bank_match_line_once: 'line-already-matched',
  bank_match_entry_once: 'entry-already-matched',
  bank_match_same_amount: 'does-not-add-up',
  bank_match_entry_stands: 'already-reversed',
  entry_not_at_the_bank: 'cannot-reverse',
  stage_move_along_an_edge: 'buy-stage-wrong',
};
