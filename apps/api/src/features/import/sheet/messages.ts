/** The figures that a sentence about a cell is filled with. */
export type Facts = Readonly<Record<string, string | number>>;

const MESSAGES: Readonly<Record<string, (facts: Facts) => string>> = {
  missing: () => 'Write something here.',
  'too-long': ({ most }) => `At most ${most} characters.`,
  'too-many-cells': () =>
    'This row has more cells than there are headings: a separator stands inside a cell.',
  'unreadable-byte': ({ bytes }) =>
    `A byte here stands for no letter: ${bytes}. Choose how letters are saved in these files, or type the cell again.`,
  'letter-lost': () => 'A letter was lost here when the file was saved. Type the cell again.',
  'not-whole': ({ least, most }) => `A whole number from ${least} to ${most} goes here.`,
  'not-a-choice': ({ choices }) => `One of these goes here: ${choices}.`,
  'not-a-number': () => 'This is no number.',
  'ambiguous-number': () =>
    'This may be a thousand or a decimal. Choose how numbers are written in these files.',
  negative: () => 'This can’t be below nothing.',
  zero: () => 'This is nothing.',
  'too-fine': () => 'This is finer than the currency’s smallest coin.',
  'too-large': () => 'This is larger than the book can hold.',
  'other-currency': () => 'The book is kept in one currency, and this is another.',
  'unknown-unit': () => 'Write the mass with g, kg, oz or lb.',
  'unit-missing': () => 'Write the unit with the figure, such as 15 kg or 33 lb.',
  'not-a-day': () => 'Write a day, a month or a year: 2024-03-01, 2024-03 or 2024.',
  'no-such-day': () => 'There is no such day.',
  'short-year': () => 'Write the year with four figures.',
  'ambiguous-day': () => 'Either figure may be the month. Choose how days are written in these files.',
  'day-to-come': () => 'This day is still to come.',
  'twice-in-file': ({ row }) => `Row ${row} has the same name. Give each its own.`,
  'not-a-phone': () => 'A telephone number has 5 to 20 digits; + ( ) - . / and blanks may part them.',
  'not-an-email': () => 'This is not an e-mail address.',
  'seat-name': () => 'Names like “Seat 7” are what households that left are called. Choose another.',
  'no-such-household': () => 'No household has this name or seat, here or in the sheets sent along.',
  'household-has-left': () => 'This household has left the storehouse.',
  'no-such-food': () => 'No food has this name or code, here or in the sheets sent along.',
  'food-retired': () => 'This food was taken off the lists. Put it back first.',
  'no-such-kind': () => 'No kind of container has this name or code.',
  'no-such-account': () =>
    'No household, bank, cash tin or supplier has this name. For a new supplier write “supplier” as its kind.',
  'one-amount': () => 'Fill exactly one of the columns of amounts.',
  'wrong-side': () =>
    'A bank or a tin holds money; a household or a supplier owes or is owed. Use the other column.',
  'opened-before': ({ amount }) =>
    `A different opening balance stands in the book already: ${amount}. Mend that entry instead.`,
  'over-capacity': ({ most, kind }) => `${kind} holds ${most} g of this at the most.`,
  'code-shape': () => 'A code is small letters and digits with single hyphens, such as red-lentils.',
};

/** Everything that can be wrong with a cell. */
export const CELL_CODES: readonly string[] = Object.keys(MESSAGES);

/** What is wrong with a cell, in a member's words. */
export const messageOf = (code: string, facts: Facts): string => MESSAGES[code]?.(facts) ?? code;
