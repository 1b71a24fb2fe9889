const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const unitWord = (unit: string): string => (unit === 'kg' ? 'kilogram' : 'pound');

/** The words of a pledge and of what it did. */
export const en = {
  freightFree: 'freight free',
  jumpAt: (bags: number, price: string, unit: string) => `${s(bags, 'bag', 'bags')}, ${price} ¢/${unit}`,
  jumpPassed: (bags: number) => `${s(bags, 'bag', 'bags')}: passed`,
  nowAt: (price: string, unit: string) => `fixed today ${price} ¢/${unit}`,
  outlined: 'Outlined sacks: neighbours would take them, up to their most. Dotted ones are nobody’s yet.',

  limits: 'A highest price, or another food instead',
  ceiling: (unit: string) => `The most that a ${unitWord(unit)} may cost, landed`,
  ceilingHint:
    'Left empty: whatever it costs. Nobody sees this but your household and the sum that fills the bags.',
  ceilingProblem: 'Write an amount for one, such as 0.70.',
  substitute: 'If it costs more than that, rather',
  nothingInstead: 'nothing instead',
  substituteNeeds: 'It counts only with a highest price.',

  leftOutTitle: 'Who leaves it out',
  leftOut: (eater: string, food: string, why: string) => `${eater} does not eat ${food}: ${why}.`,
  leftOutWords: (without: number, all: number) =>
    `${all - without} of ${s(all, 'eater', 'eaters')} would be fed by it. You can still pledge; nobody else is told.`,

  effect: 'What your pledge did',
  effectSaved: (money: string) => `Without it, the others would have paid ${money} more for the same food.`,
  effectDearer: (money: string) => `Without it, the others would have paid ${money} less for the same food.`,
  effectNone: 'The others pay the same with it and without it.',
  effectLine: (food: string, from: string, to: string, unit: string) =>
    `${food}: ${from} → ${to} ¢ a ${unitWord(unit)}, landed.`,
  effectOnly: (food: string) => `${food} is bought only because you are in.`,
  effectFreight: (money: string) => `Freight alone came ${money} cheaper for the others.`,
  effectHow: 'Reckoned from the pledges as the buy was fixed, by filling the bags again without yours.',
};

export type PledgeWords = typeof en;
