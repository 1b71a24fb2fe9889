export const en = {
  title: 'Holds',
  none: 'Nothing is on hold.',
  standing: (count: number) => (count === 1 ? 'One hold stands.' : `${count} holds stand.`),
  opening:
    'What is on hold is neither eaten, moved on, packed, offered nor given. Two people, a packing lead and a coordinator, and a written finding let it go.',
  toTrace: 'Trace a code',
  since: (at: string) => `Since ${at}`,
  ended: 'Ended',
  stands: 'Stands',
  past: 'Ended before',
  scopes: {
    bag: 'Bag',
    lot: 'Lot',
    containers: 'Containers',
    session: 'Packing day',
    delivery: 'Delivery',
    mark: 'Supplier’s mark',
    food: 'Food of some days',
  } as Record<string, string>,
  holdTitle: (scope: string, about: string, stands: boolean) =>
    `${scope}${about === '' ? '' : ` ${about}`} ${stands ? 'is on hold.' : 'is not on hold any more.'}`,
  heldBy: (name: string, at: string) => (name === '' ? at : `${name}, ${at}`),
  by: 'By',
  from: 'Since',
  serials: (line: number | null, from: number | null, to: number | null) =>
    `line ${line ?? '–'}${from === null ? '' : `, no. ${from} to ${to}`}`,
  reaches: 'It reaches',
  vessels: (count: number, mass: string) =>
    `${count === 1 ? 'one vessel' : `${count} vessels`}, ${mass} still there`,
  found: (name: string, finding: string) => `${name} found: ${finding}`,
  wayOf: 'Its way, gram by gram',
  ownTitle: 'What your household has of it',
  ownHas: (mass: string, codes: string) => `${mass}, in ${codes}. Don’t eat it, open it or give it away.`,
  yourKitchen: 'your kitchen',
  ownNone: 'By the book you have none of it left.',
  notYours: 'None of it is or was yours.',
  sayTitle: 'Say what became of it',
  hasSome: 'We have some of it, set aside',
  eatenOn: 'We ate some, last on',
  givenOn: 'We gave some away, last on',
  dayHint: 'Leave it empty if that was not so.',
  note: 'To whom, or anything else that helps',
  say: 'Say so',
  said: (at: string) => `You said so on ${at}. You may say otherwise.`,
  destroySays: (mass: string) =>
    `Books ${mass} of yours out as thrown away, and tells nobody to look for it any more.`,
  destroyStoreSays:
    'Books all that is the store’s or nobody’s yet out as thrown away. What is a household’s stays on hold.',
  reason: 'Why it is thrown away',
  destroy: 'Throw away what is ours',
  destroyStore: 'Throw away what is the store’s',
  destroyed: (mass: string) => `${mass} thrown away.`,
  caution:
    'If anybody feels unwell after eating it, ask a doctor first. What the food authority says comes before what stands here.',
  whoTitle: 'Who was told, and what they said',
  reached: (done: number, all: number) => `${done} of ${all} households have acknowledged it.`,
  household: 'Household',
  still: 'Still there',
  acknowledged: 'Acknowledged',
  answer: 'What they said',
  notYet: 'not yet',
  notTold: 'was not told',
  nothingSaid: 'nothing yet',
  answered: (parts: { some: boolean; eaten: string | null; given: string | null; note: string }) =>
    [
      parts.some ? 'has some' : 'has none',
      parts.eaten === null ? '' : `ate some, last on ${parts.eaten}`,
      parts.given === null ? '' : `gave some away, last on ${parts.given}`,
      parts.note,
    ]
      .filter((part) => part !== '')
      .join('; '),
  pantries: 'Pantries to ring up',
  pantry: (name: string, no: number, day: string, mass: string) =>
    `${name}, manifest ${no} of ${day}: ${mass}`,
  contact: (duty: string, contact: string) => `Ask for the ${duty}: ${contact}`,
  onPaper: 'On paper, for whoever is not reached',
  onPaperSays:
    'Each has its own codes, what to do, and a slip to tick, sign and give back. Bring it, or send it, and ask by telephone as well.',
  releaseTitle: 'Let it go',
  finding: 'What was found',
  askRelease: 'Ask for its release',
  releaseSays: 'Somebody else must agree: it takes a packing lead and a coordinator.',
  waits: 'Somebody else must agree to it now.',
  agree: 'Agree, and let it go',
  begin: 'Put it on hold',
  beginSays:
    'Nobody can eat, pack, offer or give any of it from then on, and each household that has or had some is told of its own.',
  reasonOfHold: 'Why it is put on hold',
};
export type HoldText = typeof en;
