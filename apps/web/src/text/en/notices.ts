const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** What people are told, and what a coordinator tells them. */
export const en = {
  title: 'Notices',
  stands: (unread: number) =>
    unread === 0 ? 'You have read everything you were told.' : `${s(unread, 'notice', 'notices')} to read.`,
  find: 'Find in the notices',
  show: 'Show',
  states: { all: 'All', unread: 'Not read yet', open: 'Not acknowledged yet' },
  none: 'Nothing here.',
  noneWords: 'A notice comes when a buy you pledged in moves on, or when a coordinator has something to say.',
  safety: 'About safety',
  unread: 'Not read yet',
  by: (name: string, at: string) => `${name}, ${at}`,
  byBook: (at: string) => `The book, ${at}`,
  dueBy: (day: string) => `By ${day}`,
  see: 'Go there',
  read: 'I have read it',
  acknowledge: 'Understood',
  acknowledged: (at: string) => `You acknowledged it ${at}.`,
  more: 'Older ones',
  write: 'Write a notice, and see who was reached',
  toNotices: 'Notices',
  writeTitle: 'Tell people something',
  writeWords:
    'Everyone it is for sees it. Never write what a household owes, what it would pay at most, or who eats there.',
  to: 'For',
  audiences: {
    everyone: 'Everyone',
    duty: 'The holders of a duty',
    household: 'One household',
    buy: 'Those who pledged in a buy',
  },
  duty: 'Duty',
  duties: {
    coordinator: 'Coordinator',
    treasurer: 'Treasurer',
    packing_lead: 'Packing lead',
    equipment_keeper: 'Equipment keeper',
    reviewer: 'Reviewer',
  } as Record<string, string>,
  household: 'Household',
  buy: 'Buy',
  about: 'What it is about',
  says: 'What to do',
  dueOn: 'By which day, if there is one',
  isSafety: 'It is about safety: nobody can switch it off, and everyone is asked to acknowledge it',
  send: 'Tell them',
  sent: 'They are told.',
  aboutProblem: 'Say it in a few words, 120 characters at most.',
  saysProblem: 'Say what is to be done, in 2,000 characters at most.',
  writtenTitle: 'What was told',
  nothingWritten: 'Nothing was written yet.',
  reached: (read: number, acknowledged: number) =>
    `${s(read, 'person has', 'persons have')} read it, ${acknowledged} acknowledged it.`,
  who: 'Which households',
  notYet: 'not yet: telephone them',
  reachedAt: (at: string) => `acknowledged ${at}`,
  takeBack: 'Take it back',
  reachNoted: 'Each household sees that you looked.',
};

export type NoticeWords = typeof en;
