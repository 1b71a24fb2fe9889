/** The words of one claim and its history. */
export const en = {
  claim: 'Claim',
  title: (supplier: string, money: string) => `${money} was claimed of ${supplier}.`,
  claimed: 'Claimed',
  granted: 'Granted',
  open: 'Still open',
  outcome: 'Answer',
  outcomes: { open: 'open', credited: 'granted', refused: 'refused', 'written-off': 'given up' },
  history: 'What happened to it',
  letter: 'Letter printed',
  entries: 'The entries behind it',
  all: 'All claims',
  giveUp: 'Give the claim up',
  giveUpSentence: (money: string) =>
    `Posts ${money}: credit 1200 Supplier claims; debit the clearing account of the buy, or 5000 Losses once it is closed.`,
  answered: 'Claims that had their answer',
  noneAnswered: 'No claim has had its answer yet.',
  asCsv: 'Answered claims as CSV',
  openIt: 'Its history',
};
export type ClaimWords = typeof en;
