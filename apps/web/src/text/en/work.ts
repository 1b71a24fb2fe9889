/** What the book does by itself, and what of it failed. */
export const en = {
  toSettings: 'Settings',
  title: 'Work in the background',
  stands: (dead: number) =>
    dead === 0
      ? 'Nothing that the book does by itself has failed for good.'
      : `${dead} ${dead === 1 ? 'thing' : 'things'} that the book does by itself failed for good.`,
  waiting: (count: number) =>
    `${count} ${count === 1 ? 'thing waits' : 'things wait'} to be done; the book sees to it by itself.`,
  none: 'Nothing here.',
  noneWords: 'When a letter can’t be sent or a reminder fails, it stands here with its reason.',
  tasks: (task: string, name: string | null) =>
    task === 'send-letter'
      ? name === null
        ? 'A letter'
        : `A letter to ${name}`
      : task === 'remind'
        ? 'Reminders'
        : task,
  dead: 'Failed for good',
  later: 'Tried again by itself',
  tried: (tries: number, at: string) => `Tried ${tries} ${tries === 1 ? 'time' : 'times'}, asked for ${at}.`,
  next: (at: string) => `Next at ${at}.`,
  retry: 'Try again',
};

export type WorkWords = typeof en;
