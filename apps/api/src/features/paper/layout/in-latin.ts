import anyAscii from 'any-ascii';
import { fontNames, fontWith, wideFontName } from './fonts.ts';

/** What stands for nothing by itself: joiners, selectors of a variant, accents that their letter lost. */
const SILENT = /^[\p{Cc}\p{Cf}\p{M}\p{Z}]$/u;
const FILES = [...fontNames('sans'), wideFontName('sans')];

/**
 * How a character that no file of ours has is written in Latin letters, so that whoever it names is still found: a
 * question mark would stand for everybody. What has no such letters is written by its number.
 */
export function inLatin(character: string): string {
  const latin = anyAscii(character);
  if (latin !== '' || SILENT.test(character)) return latin;
  return `U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase()}`;
}

/** Whether a text has a character that is printed in Latin letters instead of its own. */
export const isTransliterated = (text: string): boolean =>
  [...new Set(text.normalize('NFC'))].some(
    (character) => !SILENT.test(character) && fontWith(FILES, character) === undefined,
  );
