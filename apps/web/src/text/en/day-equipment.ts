const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** What a packing day books of the group's equipment. */
export const en = {
  title: 'Equipment of the day',
  nothing: 'Nothing is booked for this day yet.',
  groupHasNone: 'The group has no equipment in its list yet.',
  fromTo: (from: string, until: string) => `${from} to ${until}`,
  giveBack: 'Give it back',
  thing: 'Thing',
  free: (name: string, count: number) => `${name}: ${count} free`,
  outranks: (name: string, count: number) =>
    `${name}: none free, ${s(count, 'loan gives', 'loans give')} way`,
  freeLate: (name: string, count: number, late: number) =>
    `${name}: ${count} free, ${late} of them out and late now`,
  isLate: 'Out and late.',
  lateSince: (due: string) => `It was due on ${due}; ask the keeper when it comes, and look for another.`,
  book: 'Book it for the day',
  taken: (names: string) => `Taken that day: ${names}.`,
  gaveWay: (count: number) =>
    `${s(count, 'household has', 'households have')} to give way, since the day is more than two weeks off. Each is told, and the same hours of another day are kept for it where one is free.`,
};
export type DayEquipmentWords = typeof en;
