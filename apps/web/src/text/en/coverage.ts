const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;
const and = (names: readonly string[]): string =>
  names.length < 2 ? (names[0] ?? '') : `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;

/** What needs me, how long the stock lasts, and the way to the target. */
export const en = {
  nextTitle: 'Next',
  thenTitle: 'Then',
  moreWait: (count: number) => `and ${s(count, 'thing more', 'things more')}`,
  byDay: (day: string) => `by ${day}`,
  overdue: 'late',
  steps: {
    'pledge-closing': (buy: string, due: string) =>
      `${buy} closes ${due}. You have pledged nothing in it yet.`,
    'deposit-due': (buy: string, due: string, money: string) =>
      `Your deposit on ${buy}: ${money}, to be paid by ${due}.`,
    'food-waiting': (buy: string, due: string) => `Your food of ${buy} waits. Fetch it by ${due}.`,
    'balance-due': (_buy: string, _due: string, money: string) =>
      `You owe ${money}. The statement says what for, line by line.`,
  },
  fetchAt: (buy: string, from: string, to: string) => `Fetch your food of ${buy} ${from} to ${to}.`,
  where: (place: string) => `Where: ${place}.`,
  goPledge: 'See what is offered',
  goFetch: 'See what waits for you',
  goStatement: 'See your statement',
  goDeposit: 'See what it is for',
  goDo: 'Go there',
  runTheBuys: 'Run the buys',
  theBooks: 'Open the books',
  keepEquipment: 'See what is out',
  reviewBooks: 'Check the books',
  yourDuties: 'Your duties',
  outsiderTitle: (name: string) => `${name}: you read along without a household.`,
  outsiderWords: 'You have no stock and no account here. What you may do stands below.',

  title: 'Coverage',
  seeCoverage: 'Who is fed how long, and the way to your target',
  dietTitle: 'Who runs out when',
  runsOut: (who: readonly string[], group: string, day: string, days: number) =>
    `${and(who)} ${who.length === 1 ? 'runs' : 'run'} out of ${group.toLowerCase()} on ${day} (day ${days})`,
  hasNone: (who: readonly string[], group: string) =>
    `${and(who)} ${who.length === 1 ? 'has' : 'have'} no ${group.toLowerCase()} to eat`,
  othersGo: (day: string, days: number) => `; the others could go to ${day} (day ${days}).`,
  othersEndless: '; for the others no end is in sight.',
  sameForAll: 'Every diet at your table is fed equally long.',
  whoEatsNo: (name: string, what: string) => `${name}: ${what}`,
  byEater: 'Fed until, by food and eater',
  nobodyMayEat: (mass: string, group: string) =>
    `${mass} of ${group.toLowerCase()} that nobody at your table may eat`,
  eatenBy: 'Everyone here may eat it',
  byFood: 'Food by food',
  byFoodWords:
    'How far each food alone would go for those who may eat it, were it all they ate of its group.',
  food: 'Food',
  aloneUntil: 'Alone until (days)',
  nobody: 'nobody may eat it',
  mayNot: (who: readonly string[], food: string) => `${and(who)} may not eat ${food.toLowerCase()}.`,
  otherStock: 'What does not count yet',
  comingOne: (mass: string, food: string) => `${mass} of ${food}, waiting for you at the storehouse`,
  heldOne: (mass: string, food: string) => `${mass} of ${food}, on hold`,
  dayCosts: (group: string, money: string) => `${group} for a day cost ${money}`,
  costTitle: 'What a day costs, by what you paid',
  noneCosts: 'Nothing that you paid for stands on your shelf yet.',

  wayTitle: 'The cheapest way to your target',
  wayIntro: (days: number) => `Your target is ${s(days, 'day', 'days')}.`,
  wayReached: 'What you have lasts that long already.',
  wayNoBuy: 'No buy gathers pledges now. When one opens, this page finds the cheapest way in it.',
  wayBuy: 'In this buy',
  wayBudget: 'Spend at most',
  wayDays: 'Last for days',
  wayFind: 'Find it',
  wayFinding: 'Looking for the cheapest …',
  wayReaches: (days: number, money: string) =>
    `For ${money} you last ${s(days, 'day', 'days')}: the target is reached.`,
  wayFalls: (from: number, to: number, money: string, group: string) =>
    `For ${money} you go from ${from} to ${s(to, 'day', 'days')}. Then ${group.toLowerCase()} run out first.`,
  wayNothing: (group: string) =>
    `Nothing in this buy that your budget reaches would feed you longer: ${group.toLowerCase()} run out first.`,
  wayPledge: 'Pledge it',
  wayLeftOut: (foods: readonly string[]) =>
    `Left out, because not everyone at your table may eat it: ${and(foods)}.`,
  wayBasis: 'At what each food would cost landed as the buy stands, in whole steps of a share.',
  budgetProblem: 'Write an amount of money, such as 120 or 120.50.',

  planBasis: 'Reckon need by',
  bases: {
    guideline: 'weight, by the guideline of a year’s food',
    energy: 'energy, by age, sex and movement',
  } as Record<string, string>,
  addYear: 'Count each child as a year older, since children grow while the stock lasts',
  ownFigures: 'Your own figures for a year',
  ownFiguresWords:
    'For one adult and a year, where you depart from the guideline. Empty means: as the guideline has it.',
  massProblem: 'Write a weight, such as 300 lb or 140 kg, or nothing.',
  leavesOut: 'Single foods left out',
  height: 'Height, in centimetres',
  bodyMass: 'Weighs, in kilograms',
  typedEnergy: 'Needs a day, in kilocalories',
  typedEnergyHint:
    'Where somebody who knows has said so: a child under two, pregnancy, illness. Else leave it empty.',
  wholeProblem: 'Write a whole number, or nothing.',
};

export type CoverageWords = typeof en;
