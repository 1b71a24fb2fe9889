const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** Words of the door at which food is fetched. */
export const en = {
  handingOver: 'Handing over',
  toBuy: 'The buy',
  notYet: 'Nothing is fetched before the buy is shared out.',
  stillToFetch: (still: number, all: number) =>
    still === 0
      ? `All ${s(all, 'household has', 'households have')} fetched theirs.`
      : `${still} of ${s(all, 'household has', 'households have')} still to fetch.`,
  findHousehold: 'Find a household',
  nobodyFound: 'No household has that name.',
  hasFetched: 'fetched',
  waits: (mass: string) => `${mass} waits`,
  comes: (from: string, to: string) => `comes ${from} to ${to}`,
  piece: (food: string, bagNo: number, code: string) => `${food}, bag ${bagNo} (${code}):`,
  onHold: 'on hold, it stays',
  fetched: (at: string, by: string, mass: string) => `${mass} fetched ${at}; ${by} signed.`,
  signedBy: (household: string) => `Who of ${household} takes it`,
  nameNeeded: 'Whoever takes it signs with a name.',
  signPosts: (mass: string) => `Writes down that ${mass} left with them. What is on hold stays.`,
  sign: (mass: string) => `Sign: ${mass} taken`,
  mayFetchUntil: (day: string) => `By the group’s rule it may be fetched until ${day}.`,
  note: 'Note',
  takePosts: (household: string) =>
    `Moves what ${household} never fetched to common stock for good, and credits what its grams cost as goods and as freight by weight. Ask it once more before.`,
  take: 'Take it to common stock',
};
export type HandingOverWords = typeof en;
