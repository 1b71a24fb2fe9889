const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The words of who owes since when. */
export const en = {
  ageing: 'Who owes',
  title: (count: number, total: string, currency: string) =>
    `${s(count, 'household owes', 'households owe')} ${total} ${currency}${count === 1 ? '' : ' between them'}.`,
  nobody: 'Nobody owes anything.',
  oldest: (name: string, day: string) => `The oldest is ${name}’s, since ${day}.`,
  how: 'What a household paid settles its oldest charges first. A charge is due on the day it is posted.',
  seen: 'Each household on this list sees that you read it.',
  search: 'Find a household',
  noneFound: 'No household is found like this.',
  household: 'Household',
  owes: 'Owes',
  since: 'Since',
  days0: '0–30 days',
  days31: '31–60',
  days61: '61–90',
  days90: 'over 90',
  together: 'Together',
  late: (days: number) => s(days, 'day', 'days'),
  credit: 'Who is owed',
  creditWords: (total: string, currency: string) => `${total} ${currency} of credit stands with households.`,
  isOwed: 'Is owed',
  reference: 'Word for a transfer',
  references: 'Words for a transfer',
  referencesWords: 'A transfer that carries its household’s word is recognised among the bank’s lines.',
  left: 'has left',
  asCsv: 'As CSV',
};
export type AgeingWords = typeof en;
