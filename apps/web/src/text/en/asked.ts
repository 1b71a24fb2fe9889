const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const and = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** What a household asks further down its home page, each with its answer. */
export const en = {
  title: 'You may also ask',
  pledge: 'What should we pledge to reach our target?',
  noBuy: 'No buy gathers pledges now.',
  reached: (days: number) => `Nothing: what you have lasts ${s(days, 'day', 'days')} or more.`,
  take: (buy: string, foods: readonly string[]) => `${buy}: ${and(foods)}.`,
  toWay: 'Within a budget',
  cost: 'What will our pledge cost?',
  notPledged: (buy: string) => `You have pledged nothing in ${buy}.`,
  costs: (buy: string, money: string) => `${buy}: ${money} as it stands.`,
  between: (low: string, high: string) =>
    `${low} if everybody takes the least, ${high} if everybody takes the most.`,
  recall: 'Was our food in a recall?',
  noRecall: 'Nothing is on hold.',
  notOurs: (holds: number) =>
    `No: ${s(holds, 'hold stands', 'holds stand')}, and none of it is or was yours.`,
  ours: (about: string, mass: string, codes: string) =>
    `${about}: ${mass} of yours, in ${codes}. Don’t eat it, open it or give it away.`,
  wasOurs: (about: string) => `${about}: you had some of it, and by the book none is left.`,
  ourKitchen: 'your kitchen',
  share: 'What did we get, and was it fair?',
  noShare: 'Nothing that you pledged has been shared yet.',
  got: (of: { food: string; award: string; claim: string; rule: string }) =>
    `${of.food}: ${of.award} of ${of.claim}, ${of.rule}.`,
  allGot: (least: string, most: string) =>
    least === most
      ? `Everybody got ${least} % of their claim.`
      : `Everybody got between ${least} % and ${most} % of their claim.`,
  eat: 'May everybody eat it?',
  allMay: 'Everybody at your table may eat all that you have.',
  mayNot: (name: string, foods: readonly string[]) => `${name} may not eat ${and(foods).toLowerCase()}.`,
  nextOpen: (what: string) => `Next to open, ${what}:`,
  fine: 'everybody may eat it.',
  notFor: (names: readonly string[]) => `not for ${and(names)}.`,
  careFor: (name: string, foods: readonly string[]) =>
    `${name} takes care: its line ran ${and(foods).toLowerCase()} before it that day.`,
  offers: 'What is on offer to us, and until when?',
  noOffers: 'Nothing now.',
};
