const WEIGH = 'Weigh the bag again, or refuse it.';
const ANSWERED = 'A claim is answered once. What the supplier does later is a late credit or a late bill.';
const LOG = 'Mend it in the pour log of the session instead.';
const BILLS = 'Mend the bill or the claim behind it; then the charges are brought up to them.';

/** Said of an entry that a line of the bank is matched with. */
export const AT_THE_BANK =
  'A line of the bank is matched with this entry. Let the line go on the bank page; it can take the entry back, too.';

/**
 * Entries that another record goes with: a bag's weight, a split's shares, a bill, a claim, the charges. Undoing the
 * entry alone would leave that record telling something else than the book, so each is mended where it was made.
 */
export const MENDED_ELSEWHERE: Readonly<Record<string, string>> = {
  'bag-landed': WEIGH,
  'bag-refused': WEIGH,
  'bag-weighed': WEIGH,
  'bag-weighed-again': WEIGH,
  'bag-lost': WEIGH,
  'bag-discarded': WEIGH,
  'split-made': 'Undo the split instead.',
  'split-undone': 'Split again instead.',
  'supplier-invoiced': 'Void the bill instead.',
  'invoice-voided': 'Enter the bill again instead.',
  'claim-raised': 'Credit or refuse the claim instead.',
  'claim-credited': ANSWERED,
  'claim-refused': ANSWERED,
  'claim-written-off': ANSWERED,
  'shared-out': BILLS,
  recharged: BILLS,
  'late-credit': 'Enter the same amount as a late bill instead.',
  'cash-counted': 'Count the tin again instead.',
  'session-poured': LOG,
  'session-pour-undone': LOG,
  'session-spilled': LOG,
  'session-sampled': LOG,
  're-canned': 'Take it back among the seals instead.',
  're-can-undone': 'Put it into a new container again instead.',
  'session-settled': 'Take the settlement back on the page of the session.',
  'session-settlement-undone': 'Settle the session again instead.',
  'mixed-run': 'Give it back on the plan of the session.',
  'mixed-run-undone': 'Book it again on the plan of the session.',
  'session-difference': 'Count what is there and book the difference instead.',
  'offer-claimed': 'Offer it back instead; what changed hands is mended by whoever has it now.',
  'gift-received': 'Take the receipt back on the page of its manifest.',
  'gift-undone': 'Write the receipt again on the page of its manifest.',
  'late-bill': 'Enter the same amount as a late credit instead.',
};
