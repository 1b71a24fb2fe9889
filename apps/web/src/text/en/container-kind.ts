const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** What food is packed in: true capacity, weight empty, price. */
export const en = {
  title: 'Container kinds',
  toFoods: 'Foods',
  stands: (count: number, unpriced: number) =>
    `${s(count, 'kind', 'kinds')} of container; ${unpriced === 0 ? 'each has its price' : `${unpriced} without a price`}.`,
  holdsWords:
    'What a container holds is measured or reckoned filled level, and its name may say less or more. It never changes, since containers were filled by it.',
  kind: 'Kind',
  holds: 'Holds, in litres',
  tare: 'Weighs empty, in grams',
  price: (currency: string) => `Costs, ${currency}`,
  source: 'Says who',
  unknown: 'not known',
  own: (source: string) => `${source} (the group’s own)`,
  listedPrice: (pieces: string, price: string) =>
    `The supplies list has ${pieces} for ${price}, and that is what counts. It is changed there.`,
  toSupplies: 'To the supplies list',
  change: (name: string) => `Tare and price of ${name}`,
  changeIt: 'Set tare and price',
  which: 'Which kind?',
  add: 'Add a kind of your own',
  nameEn: 'Name in English',
  nameEs: 'Name in Spanish, if it has another',
  code: 'Code, for labels',
  codeHint: 'Small letters, digits and hyphens, such as jar-pint.',
  sourceHint: 'Such as: filled level with water and weighed.',
  addIt: 'Add this kind',
  litresProblem: 'Write what it holds in litres, such as 3.1.',
  gramsProblem: 'Write whole grams, or nothing.',
  moneyProblem: 'Write an amount of money, such as 1.25, or nothing.',
  nameProblem: 'Write a name, such as pint jar.',
  codeProblem: 'Write a code, such as jar-pint.',
  does: 'What it does',
  traits: 'What it does for the food in it',
  wall: 'Its wall',
  wallUnknown: 'nobody has said what its wall is',
  barriers: {
    metal: 'metal: keeps air out',
    foil: 'foil: keeps air out',
    glass: 'glass: keeps air out',
    pet: 'PET plastic: lets a little air in',
    'bare-plastic': 'bare plastic: lets air in slowly',
    open: 'open or woven: lets air in',
  },
  flags: {
    isDark: 'dark inside',
    isRodentProof: 'keeps rodents out',
    isBreakable: 'can break',
    needsOuter: 'wants a box, pail or crate around it',
    isReusable: 'can be used again',
  },
  mostStacked: 'Most that stand on one another',
  stacks: (most: number) => (most === 1 ? 'not stacked' : `${most} high at most`),
  traitsSource: 'Who says what it does',
  traitsSourceHint: 'It is kept once this is said, such as: our own judgement.',
  toTreatments: 'Treatments, and what not to do',
  sourceProblem: 'Say where the capacity comes from.',
};

export type KindWords = typeof en;
