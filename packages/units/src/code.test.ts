import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { AssertionError } from './assert.ts';
import { CODE_ALPHABET, checkCharacter, codeFromNumber, isCode, readCode, spellCode } from './code.ts';

const someCharacter = fc.constantFrom(...CODE_ALPHABET);
const someBody = fc.string({ unit: someCharacter, minLength: 1, maxLength: 29 });
const someCode = someBody.map((body) => body + checkCharacter(body));

describe('the check character', () => {
  // Indexes: B 1, K 9, 7 28, M 10, 2 23, Q 13. 1·1 + 2·9 + 3·28 + 4·10 + 5·23 + 6·13 = 336 = 10 × 31 + 26, which is "5".
  test('of BK7M2Q is 5', () => {
    expect(checkCharacter('BK7M2Q')).toBe('5');
  });

  test('counts nothing for a character outside the alphabet, which still holds its place', () => {
    // B at 2 and K at 4: 2·1 + 4·9 = 38 = 31 + 7, which is "H".
    expect(checkCharacter('/B-K')).toBe('H');
  });

  test('needs a body it can protect', () => {
    expect(() => checkCharacter('')).toThrow(AssertionError);
    expect(checkCharacter('A'.repeat(29))).toBe('A');
    expect(() => checkCharacter('A'.repeat(30))).toThrow(AssertionError);
  });
});

describe('a misread code', () => {
  test('is caught whenever a single character is wrong', () => {
    fc.assert(
      fc.property(someCode, fc.nat(), someCharacter, (code, seed, character) => {
        const position = seed % code.length;
        fc.pre(code.charAt(position) !== character);
        expect(isCode(code.slice(0, position) + character + code.slice(position + 1))).toBe(false);
      }),
    );
  });

  test('is caught whenever two neighbours are swapped, the check character among them', () => {
    fc.assert(
      fc.property(someCode, fc.nat(), (code, seed) => {
        const position = seed % (code.length - 1);
        const [left, right] = [code.charAt(position), code.charAt(position + 1)];
        fc.pre(left !== right);
        expect(isCode(code.slice(0, position) + right + left + code.slice(position + 2))).toBe(false);
      }),
    );
  });

  test('of six characters is caught at every place by every other character and every swap', () => {
    const code = 'BK7M2Q5';
    const misread = [...code].flatMap((right, position) => {
      const wrong = [...CODE_ALPHABET].filter((character) => character !== right);
      return wrong.map((character) => code.slice(0, position) + character + code.slice(position + 1));
    });
    const swapped = [...code.slice(1)].map((right, position) => {
      return code.slice(0, position) + right + code.charAt(position) + code.slice(position + 2);
    });
    expect(misread).toHaveLength(7 * 30);
    expect([...misread, ...swapped].filter(isCode)).toEqual([]);
  });
});

describe('a code on paper', () => {
  test('carries its own check character', () => {
    expect(isCode('BK7M2Q5')).toBe(true);
  });

  test('stands in groups of three, a lone last character joining the group before it', () => {
    expect(spellCode('BK7M2Q5')).toBe('BK7 M2Q5');
    const code = codeFromNumber(1, 7);
    expect(spellCode(code)).toBe(`${code.slice(0, 3)} ${code.slice(3, 6)} ${code.slice(6)}`);
  });

  test('is read back however it is typed', () => {
    expect(readCode(' bk7-m2q 5')).toBe('BK7M2Q5');
    expect(readCode('BK7M2Q6')).toBeUndefined();
    fc.assert(
      fc.property(someCode, (code) => {
        expect(readCode(spellCode(code).toLowerCase())).toBe(code);
      }),
    );
  });

  test.for(['', 'A', 'bk7m2q5', 'BK7M2Q', 'BK7 M2Q5', 'BK0M2Q5', 'A'.repeat(31)])(
    '"%s" is no code',
    (text) => {
      expect(isCode(text)).toBe(false);
    },
  );

  test('is not spelled unless it is one', () => {
    expect(() => spellCode('BK7M2Q6')).toThrow(AssertionError);
  });
});

describe('the code of a running number', () => {
  test('is a code of the asked length and always the same', () => {
    expect(codeFromNumber(0, 6)).toHaveLength(7);
    expect(isCode(codeFromNumber(0, 6))).toBe(true);
    expect(codeFromNumber(123_456, 6)).toBe(codeFromNumber(123_456, 6));
  });

  test('is never shared: all 961 numbers of two characters have 961 codes', () => {
    const codes = Array.from({ length: 31 ** 2 }, (_, n) => codeFromNumber(n, 2));
    expect(new Set(codes).size).toBe(961);
    expect(codes.every(isCode)).toBe(true);
  });

  test('is never shared by two numbers of six characters', () => {
    const someNumber = fc.integer({ min: 0, max: 31 ** 6 - 1 });
    fc.assert(
      fc.property(someNumber, someNumber, (a, b) => {
        fc.pre(a !== b);
        expect(codeFromNumber(a, 6)).not.toBe(codeFromNumber(b, 6));
      }),
    );
  });

  test('looks unlike its neighbours: a thousand cans in a row differ in three characters or more', () => {
    const codes = Array.from({ length: 1000 }, (_, n) => codeFromNumber(n, 6));
    const differing = codes.slice(1).map((code, before) => {
      return [...code].filter((character, position) => character !== codes[before]?.charAt(position)).length;
    });
    expect(Math.min(...differing)).toBeGreaterThanOrEqual(3);
  });

  test.for([
    { n: 31 ** 2, length: 2 },
    { n: -1, length: 6 },
    { n: 0.5, length: 6 },
    { n: 0, length: 0 },
    { n: 0, length: 30 },
  ])('$n does not fit $length characters', ({ n, length }) => {
    expect(() => codeFromNumber(n, length)).toThrow(AssertionError);
  });
});
