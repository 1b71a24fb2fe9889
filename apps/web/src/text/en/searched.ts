/** The words of any list's search. */
export const en = {
  find: 'Find in this list',
  none: 'Nothing in this list is found like this.',
  more: (left: number) => `Show more (${left} left)`,
};
