import { z } from 'zod';

type Issue = z.core.$ZodRawIssue;

/**
 * What is wrong with a field in a member's words, wherever its schema says nothing of its own. Asked for the library's
 * own sentences, a screen would tell a household that it "expected int, received undefined".
 */
function wordsForIssue(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined ? 'This is missing.' : (OF_KIND[issue.expected] ?? NOT_FITTING);
    case 'too_small':
      return boundWords(issue.origin, Number(issue.minimum), issue.inclusive ? 'At least' : 'More than');
    case 'too_big':
      return boundWords(issue.origin, Number(issue.maximum), issue.inclusive ? 'At most' : 'Less than');
    case 'invalid_value':
      return `Only one of these goes here: ${issue.values.map(String).join(', ')}.`;
    case 'invalid_format':
      return OF_FORMAT[issue.format] ?? NOT_FITTING;
    case 'unrecognized_keys':
      return 'There is no such field.';
    default:
      return NOT_FITTING;
  }
}

const NOT_FITTING = 'This does not fit here.';

const OF_KIND: Readonly<Record<string, string>> = {
  int: 'Only a whole number goes here.',
  number: 'Only a number goes here.',
  string: 'Only a text goes here.',
  boolean: 'Only true or false goes here.',
  array: 'Only a list goes here.',
  object: 'Only a group of named fields goes here.',
};

const OF_FORMAT: Readonly<Record<string, string>> = {
  date: 'A day is written as year, month and day, like 2026-09-24.',
  datetime: 'A moment is written with its time zone, like 2026-09-24T15:00:00Z.',
  email: 'This is not an email address.',
  uuid: 'This is not an id of anything here.',
};

function boundWords(origin: string, bound: number, word: BoundWord): string {
  if (origin === 'string' && bound === 1 && word === 'At least') return 'Write something here.';
  if (Math.abs(bound) === Number.MAX_SAFE_INTEGER) return 'The number is larger than the book can hold.';
  const [ofCharacters, ofThings, ofNumber] = OF_BOUND[word];
  const words = origin === 'string' ? ofCharacters : origin === 'array' ? ofThings : ofNumber;
  return words.replace('{}', String(bound));
}

type BoundWord = 'At least' | 'More than' | 'At most' | 'Less than';

/** Written out, so that each can be said in another language. */
const OF_BOUND: Readonly<Record<BoundWord, readonly [string, string, string]>> = {
  'At least': ['At least {} characters.', 'At least {} of them.', 'At least {}.'],
  'More than': ['More than {} characters.', 'More than {} of them.', 'More than {}.'],
  'At most': ['At most {} characters.', 'At most {} of them.', 'At most {}.'],
  'Less than': ['Less than {} characters.', 'Less than {} of them.', 'Less than {}.'],
};

z.config({ customError: wordsForIssue });
