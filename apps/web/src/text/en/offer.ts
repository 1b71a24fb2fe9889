export const en = {
  title: 'Offers',
  shelf: 'My shelf',
  toMe: (count: number) =>
    count === 0
      ? 'Nothing is offered to you now.'
      : count === 1
        ? 'One thing is offered to you.'
        : `${count} things are offered to you.`,
  opening:
    'Whoever lacks a food is asked first, for a time of their own. After that it is for everybody until it closes. Nobody sees the order.',
  storeTitle: 'Common stock on offer',
  storeNotYours: 'Common stock is offered by the coordinator.',
  giving: 'Giving',
  storeStands: (count: number) =>
    count === 0
      ? 'No common stock is on offer now.'
      : count === 1
        ? 'One offer of common stock is open.'
        : `${count} offers of common stock are open.`,
  storeOpening:
    'Members are asked first, in turns. What nobody takes may go to a pantry, if the offer says so.',
  storeNever: 'Nothing of common stock was ever offered.',
  storeOpen: 'Open',
  storeEnded: 'Ended',
  isOffered: 'Still offered',
  wasTaken: 'Taken by members',
  wasTakenBack: 'Taken back',
  wasLeft: 'Left when it closed',
  none: 'none',
  offeredOn: (at: string) => `offered ${at}`,
  storeOffer: 'Offer common stock to members',
  storeFood: 'Food',
  toPantries: 'Match what is left with pantries',
  storeAll: 'Common stock: offers and what became of them',
  mine: 'What you offer',
  ofStore: 'What the store offers',
  taken: 'What you took',
  howToOffer: 'To offer something, open a container on your shelf.',
  yourTurn: (until: string) => `Your turn until ${until}`,
  forAll: (until: string) => `For everybody until ${until}`,
  withOthers: (at: string) => `Others are asked now; for everybody from ${at}, if it is still there`,
  over: 'Over',
  open: (count: number, until: string) =>
    count === 1 ? `One still offered until ${until}` : `${count} still offered until ${until}`,
  allTaken: 'All taken',
  takenBack: 'Taken back',
  toPantry: 'Nobody took it; a pantry may have it now.',
  nobody: 'Nobody took it.',
  whole: (count: number, mass: string) =>
    count === 1 ? `One container, ${mass}` : `${count} containers, ${mass}`,
  fromHousehold: (name: string) => `From ${name}`,
  fromStore: 'From the common stock',
  fromMember: 'From a member',
  gift: 'A gift',
  packed: (day: string) => `packed ${day}`,
  origin: (note: string) => `Where it came from: ${note}`,
  cautionTitle: 'Not for everybody at your table',
  mayNotEat: (names: string) => `May not eat this: ${names}.`,
  contains: (allergens: string) => `It contains: ${allergens}.`,
  takeTitle: 'What do you take?',
  takeSays: (count: number, money: string) =>
    count === 1
      ? `You take one container and owe ${money} more; whoever gives it owes as much less.`
      : `You take ${count} containers and owe ${money} more; whoever gives them owes as much less.`,
  takeGift: (count: number) =>
    count === 1 ? 'You take one container as a gift.' : `You take ${count} containers as a gift.`,
  take: 'Take it',
  pass: 'Let it pass',
  passed: 'You let it pass. If it is still there once it is for everybody, you may take it all the same.',
  takenBy: (name: string) => `${name} took it`,
  takenByOther: 'Taken',
  youTook: 'You took it. Agree with whoever gave it when you fetch it.',
  takeBack: 'Take the offer back',
  takeBackSays: 'What nobody has taken is yours to use again.',
  noPantry: 'Don’t give it to a pantry',
  offerTitle: (food: string) => `Offer ${food} to other members`,
  which: 'Which containers?',
  stays:
    'What is offered stays shut and whole until somebody takes it, you take the offer back, or it closes.',
  price: 'Price',
  prices: { gift: 'A gift', cost: 'What it cost us', named: 'An amount of my own' },
  each: (currency: string) => `For each container, ${currency}`,
  moneyProblem: 'Type an amount, such as 4.50.',
  closes: 'It closes in',
  days: { '3': 'three days', '7': 'a week', '14': 'two weeks', '28': 'four weeks' },
  turns: 'Each turn lasts',
  hours: { '24': 'a day', '48': 'two days', '96': 'four days' },
  thenPantry: 'If nobody takes it, a pantry may have it',
  note: 'A word about it',
  pick: 'Tick a container first.',
  offer: 'Offer it',
  nothingWhole: 'There is nothing shut and full here to offer.',
};
export type OfferText = typeof en;
