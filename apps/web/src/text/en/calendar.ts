/** The calendar: what has a day, and the addresses that calendar programs read it by. */
export const en = {
  title: 'Calendar',
  stands: (count: number) =>
    count === 0
      ? 'Nothing has a day ahead.'
      : count === 1
        ? 'One day or hour lies ahead.'
        : `${count} days and hours lie ahead.`,
  ahead: 'What lies ahead',
  nothing: 'As soon as a buy is planned, its days stand here.',
  own: 'yours',
  states: { tentative: 'may move', cancelled: 'cancelled' } as Record<string, string>,
  until: (from: string, to: string) => `${from} to ${to}`,
  save: 'save',
  saveWords: 'Choose one to save it to a calendar.',
  subscribe: 'See it in your own calendar',
  subscribeWords:
    'A calendar program on a phone or computer can read an address of yours, and show what changes by itself.',
  shows: 'It shows',
  mine: 'my household’s days and everybody’s',
  storehouse: 'everybody’s days alone, for a wall or a friend',
  onlyItem: (name: string) => `the days of ${name} alone`,
  make: 'Make an address',
  made: 'This address is shown this once. Whoever has it can read the calendar, so keep it to yourself.',
  address: 'Address',
  open: 'Open in this device’s calendar',
  copy: 'Copy the address',
  copied: 'Copied.',
  feeds: 'Your addresses',
  noFeeds: 'You have made none.',
  scopes: {
    mine: 'My household’s days and everybody’s',
    storehouse: 'Everybody’s days',
    item: 'The days of one thing',
  } as Record<string, string>,
  oneThing: (name: string) => `The days of ${name}`,
  madeOn: (on: string) => `made ${on}`,
  renewedOn: (on: string) => `new address since ${on}`,
  renew: 'New address',
  end: 'End it',
  renewWords: 'A new address stops the old one at once. Do this if it got about.',
  inBuy: 'Its days in a calendar',
  toCalendar: 'All days, and an address for your calendar',
};

export type CalendarWords = typeof en;
