const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Taking in what somebody gives: the interview, the scale, and what is known afterwards. */
export const en = {
  title: 'Taken in',
  shelf: 'Your shelf',
  whose: 'Whose it becomes',
  owners: { household: 'Our household’s', common: 'The store’s common stock' },
  stands: (count: number) =>
    count === 0 ? 'Nothing was taken in yet' : `${s(count, 'gift was', 'gifts were')} taken in`,
  listWords:
    'What was not bought through the store comes in after a short interview. What nobody knows counts as unknown, and is taken as old and warm. Who gave it is written apart and shown on no list and no label.',
  begin: 'Take in what somebody gives',
  unknownHistory: 'history unknown',
  takenOn: (day: string) => `taken in ${day}`,
  packedOn: (day: string) => `packed ${day}`,
  interview: 'What do we know of it?',
  step: (at: number, all: number) => `Question ${at} of ${all}`,
  unknownIsFine: '“Nobody knows” is a good answer: a guess is worse.',
  back: 'One question back',
  questions: {
    packedBy: {
      ask: 'Who says what it is and when it was packed?',
      answers: {
        paper: 'It stands on paper or on the label',
        memory: 'Somebody remembers',
        unknown: 'Nobody knows',
      },
    },
    packedHow: {
      ask: 'How was it packed?',
      answers: {
        'bought-sealed': 'Bought, and still sealed by its maker',
        'home-packed': 'Packed at home',
        unknown: 'Nobody knows',
      },
    },
    summers: {
      ask: 'Where did it stand in the summers?',
      answers: {
        cellar: 'In a cellar or as cool',
        kitchen: 'In a kitchen or another room',
        garage: 'In a garage, a shed or an attic',
        unknown: 'Nobody knows',
      },
    },
    harm: {
      ask: 'Was it ever wet, or near fuel, paint or poison?',
      answers: {
        never: 'Neither',
        wet: 'It was wet, or in a flood',
        chemicals: 'It stood near fuel, paint or poison',
        unknown: 'Nobody knows',
      },
    },
    pests: {
      ask: 'Were rodents or insects seen on it or near it?',
      answers: { no: 'No', yes: 'Yes', unknown: 'Nobody knows' },
    },
    opened: {
      ask: 'Was any of it opened before?',
      answers: { no: 'No', yes: 'Yes', unknown: 'Nobody knows' },
    },
  },
  verdicts: {
    refused: 'It is not taken in',
    'unknown-history': 'It may come in, with its history unknown',
    known: 'It may come in',
  },
  verdictSays: {
    refused: 'Thank whoever brought it. Do not eat it and do not pass it on.',
    'unknown-history':
      'It is reckoned as if it had stood warm all the time. Look at each container before anybody eats from it, and promise nobody how long it keeps.',
    known: 'How long it keeps is reckoned from what was said, and shown as an estimate.',
  },
  anew: 'Begin with another gift',
  weigh: 'Weigh it and write it down',
  weighWords:
    'Put each container on the scale and take off what the empty one weighs. A full pail or sack is a load for two: lift with your legs.',
  food: 'Food',
  otherFood: 'Another food',
  foodNeeded: 'Choose a food first.',
  packedGuess: 'When it was packed nobody knows: put the earliest day that it can be.',
  mark: 'Lot mark or use-by mark on it, if there is one',
  allergensMet: 'Allergens in the kitchen that it comes from',
  allergensHint: 'Such as peanuts, milk, wheat; or unknown.',
  donor: 'Who gives it',
  donorHint: 'Kept apart: only a coordinator who says what for can read it. Write “unknown” if nobody knows.',
  donorNeeded: 'Say who gave it, or “unknown”.',
  note: 'Note',
  takeIn: 'Take it in',
  tookIn: (mass: string, count: number) =>
    `${mass} are in the book, in ${s(count, 'container', 'containers')}.`,
  writeCodes: 'Write each code on its label:',
  lookNext: 'Look at them now',
};
