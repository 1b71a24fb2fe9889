import { expect, test } from 'vitest';
import { z } from 'zod';
import '../../apps/api/src/platform/issue-words.ts';

const messageOf = (schema: z.ZodType, input: unknown): string =>
  schema.safeParse(input).error?.issues[0]?.message ?? '';

test.for([
  [z.int(), undefined, 'This is missing.'],
  [z.int(), 0.5, 'Only a whole number goes here.'],
  [z.int(), '1', 'Only a number goes here.'],
  [z.int(), 1e300, 'The number is larger than the book can hold.'],
  [z.int().min(0), -1, 'At least 0.'],
  [z.int().positive(), 0, 'More than 0.'],
  [z.int().max(100), 101, 'At most 100.'],
  [z.string().min(1), '', 'Write something here.'],
  [z.string().max(3), 'wheat', 'At most 3 characters.'],
  [z.array(z.int()).min(2), [1], 'At least 2 of them.'],
  [z.enum(['bank', 'cash']), 'purse', 'Only one of these goes here: bank, cash.'],
  [z.iso.date(), 'yesterday', 'A day is written as year, month and day, like 2026-09-24.'],
  [z.uuid(), 'bag 7', 'This is not an id of anything here.'],
] as const)('%o given %o is refused in a member’s words', ([schema, input, words]) => {
  expect(messageOf(schema, input)).toBe(words);
});

test('words of a schema’s own come before these', () => {
  expect(messageOf(z.int('Bags are counted in whole numbers.'), 0.5)).toBe(
    'Bags are counted in whole numbers.',
  );
});
