/** What was saved against shelf price, and the prices that were noted. */
export const en = {
  title: 'Saved against shelf price',
  buys: 'Buys',
  notYours: 'This page is for the coordinator, the treasurer and the reviewer.',
  nothingBought: 'No buy was shared out this year yet.',
  unknown: 'Nobody knows what was saved: no shelf price was noted for what was bought.',
  saved: (money: string) => `This year the group saved about ${money} against shelf price.`,
  dearer: (money: string) => `This year a shop would have asked about ${money} less.`,
  onPart: (priced: string, all: string) =>
    `Of ${priced} out of ${all} bought; for the rest no price was noted.`,
  period: (from: string, to: string) => `Buys shared out from ${from} to ${to}`,
  howReckoned:
    'What a buy’s households and common stock were charged for its goods, freight and all else, less what came back later, beside what the same mass cost in a shop by the price noted last before it was shared out, or else first after. A shop’s price holds for that shop and day, so this is an estimate.',
  byFood: 'Food by food',
  food: 'Food',
  landed: 'Paid',
  shelf: 'In a shop',
  savedShort: 'Saved',
  noPrice: 'no price noted',
  noted: 'Prices that were noted',
  noneNoted: 'None yet.',
  priceOf: (money: string, mass: string) => `${money} for ${mass}`,
  takeBack: 'Take back',
  takeBackOf: (food: string, day: string) => `Take back the price of ${food}, ${day}`,
  note: 'Note a shelf price',
  noteSays:
    'What the food costs where members would buy it otherwise, as it stood on the shelf. No brand is needed.',
  price: (currency: string) => `Price, ${currency}`,
  forMass: 'For how much',
  seenOn: 'Seen on',
  where: 'Where',
  aShop: 'a shop',
  moneyProblem: 'Type an amount, such as 4.50.',
  massProblem: 'Type a mass, such as 24 oz or 1 kg.',
  noteIt: 'Note it',
  isNoted: 'The price is noted.',
};
export type SavingsText = typeof en;
