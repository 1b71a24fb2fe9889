const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Looking at containers: what is to be looked at, the questions of a look, and what it comes to. */
export const en = {
  title: 'To look at',
  shelf: 'Shelf',
  whose: 'Whose stock',
  owners: { household: 'Our household’s', common: 'The store’s common stock' },
  waiting: (count: number) =>
    count === 0 ? 'Nothing has to be looked at' : `${s(count, 'container', 'containers')} to look at`,
  outsideFirst:
    'Look from outside first. What is bulged, leaks or hisses stays shut: do not open it, smell it or taste it.',
  onWatch: 'On watch',
  onWatchSays:
    'Something was found beside these or in the same lot. Look at them before anybody eats from them.',
  because: (finding: string, day: string) => `${finding}, found ${day}.`,
  sameWindow: 'Packed in the same go as that one.',
  due: 'Due',
  dueSince: (why: string, day: string) => `${why}; due since ${day}`,
  whys: {
    open: 'Open for 30 days since it was last looked at',
    'pouch-or-jar': 'Pouch, jar or pail: every 180 days',
    sample: 'One of the sample of its lot, once a year',
  },
  howOften:
    'What is open is looked at every 30 days, pouches, jars and pails every 180, and of shut cans the square root of each lot once a year (common practice, no source).',
  lookAt: (food: string) => `Look at ${food}`,
  packed: (day: string) => `packed ${day}`,
  howAsked: 'How do you look at it?',
  hows: { outside: 'From outside, still shut', opened: 'It is open in front of me' },
  opensIt: 'Writing down a look inside marks it as opened today.',
  foundAsked: 'What do you see?',
  groups: {
    ends: 'Ends and lid',
    damp: 'Damp and smell from outside',
    animals: 'Insects and rodents',
    wall: 'Rust and dents',
    seal: 'Seal and liner',
    smell: 'Smell and taste, only if all above is clean',
    inside: 'In the food',
  },
  kernels: 'Kernels damaged by insects, if you counted some',
  damaged: 'Damaged kernels',
  sample: 'In how many grams',
  kernelsProblem: 'Give both as whole numbers, or neither.',
  nothingWrong: 'Nothing wrong',
  judge: (count: number) => `Go on with ${s(count, 'finding', 'findings')}`,
  back: 'Back',
  comesTo: 'What that comes to',
  outcome: 'What becomes of it (you may be stricter)',
  moveOut: (mass: string) => `Book all ${mass} out of it now`,
  note: 'Note',
  write: 'Write it down',
  written: 'Written down.',
  nowOnWatch: (count: number) =>
    `${s(count, 'other container is', 'other containers are')} on watch now. Whoever has some was told to look, without a name.`,
  toList: 'What else to look at',
  toContainer: 'To the container',
  undo: 'Put the grams back',
  undoReason: 'Booked out by mistake',
  undone: 'The grams are back in it. What was found stays written.',
  earlier: 'Earlier looks',
  planningAid:
    'A planning aid, not a laboratory. When in doubt, throw it out; your county extension office knows more.',
};
