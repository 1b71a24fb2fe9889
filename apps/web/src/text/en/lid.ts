const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** The lids of jars, a day after they were closed. */
export const en = {
  title: 'Lids of jars',
  shelf: 'Shelf',
  whose: 'Whose jars',
  owners: { household: 'Our household’s', common: 'All that stand in the store' },
  standing: ({ due, loose, early }: { due: number; loose: number; early: number }) => {
    if (due > 0) return `${s(due, 'lid', 'lids')} to press`;
    if (loose > 0) return `${s(loose, 'lid', 'lids')} did not hold`;
    return early > 0 ? `${s(early, 'lid tells', 'lids tell')} nothing yet` : 'No lid waits to be pressed';
  },
  how: 'Press the middle of each lid with a finger, without opening it. It held if it is drawn down and does not move or click.',
  means:
    'A lid that is drawn down says that the closing holds. It says nothing of whether food is safe: an absorber or a vacuum preserves dry food only. Moist or fatty food is put up by published home-preserving guidance (USDA, your county extension office).',
  due: 'To press now',
  loosePick: 'Tick those that did not hold:',
  looseCodes: 'Or type their codes, a comma between two',
  isNoCode: 'One of these is no code; look at the label again.',
  note: 'Note',
  allHeld: (count: number) => (count === 1 ? 'It held' : `All ${count} held`),
  someHeld: (held: number, loose: number) => `${held} held, ${loose} did not`,
  noneHeld: (loose: number) => (loose === 1 ? 'It did not hold' : `None of ${loose} held`),
  answerSays: (loose: number): string =>
    loose === 0
      ? 'Writes down that each was drawn down; nothing more is asked of them until the half-yearly look.'
      : 'What did not hold is counted on for 30 days only, until it was closed again and its lid held.',
  written: ({ held, loose, already, leftAlone }: Done) =>
    [
      `Written down: ${held} held, ${loose.length} did not${loose.length === 0 ? '' : ` (${loose.join(', ')})`}.`,
      already === 0 ? '' : `${s(already, 'was', 'were')} said before.`,
      leftAlone === 0 ? '' : `${s(leftAlone, 'is', 'are')} opened, empty or looked at since, and left alone.`,
    ]
      .filter(Boolean)
      .join(' '),
  loose: 'Did not hold',
  todo: 'If the food is dry and smells right, put a fresh absorber in (or draw a new vacuum), wipe the rim, close the jar again and press its lid a day later. Or eat it within 30 days. If it is wet, mouldy or smells wrong, throw it away, and do not taste it.',
  closeAgain: 'Closed again now',
  closeAllAgain: (count: number) => `All ${count} closed again now`,
  closedAgain: (codes: string) => `Closed again: ${codes}. Press the lids in a day.`,
  early: 'Too early to tell',
  earlySays:
    'An absorber takes the better part of a day, so before that neither a lid that is down nor one that is up says anything. One that is clearly loose is closed again now, and its day begins anew.',
  from: (moment: string) => `from ${moment}`,
  closedAt: (moment: string) => `closed ${moment}`,
  of: (household: string) => `${household}’s`,
  common: 'common stock',
  howLong: 'A day is common practice, no source; the maker of the lid or the absorber goes first.',
  ofJar: {
    due: 'A day is over since this jar was closed: press its lid.',
    early: (moment: string) => `Press its lid from ${moment} on: before a day is over it tells nothing.`,
    loose: 'Its lid did not hold.',
  },
  toLids: 'To the lids',
};
type Done = { held: number; loose: readonly string[]; already: number; leftAlone: number };
export type LidText = typeof en;
