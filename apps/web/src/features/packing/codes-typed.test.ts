import { expect, test } from 'vitest';
import { codesTyped } from './codes-typed.ts';

test.for([
  ['', []],
  [' bk7-m2q5 ', ['BK7M2Q5']],
  ['BK7 M2Q5, BK7 M2Q6;BK7 M2Q5,', ['BK7M2Q5', null, 'BK7M2Q5']],
] as const)('"%s" is read as %o', ([text, codes]) => {
  expect(codesTyped(text)).toEqual(codes);
});
