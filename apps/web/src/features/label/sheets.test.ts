import { expect, test } from 'vitest';
import { sheetsFor } from './sheets.ts';

test('labels from the third sticker on take another sheet as soon as they run over', () => {
  expect(sheetsFor(0, 'a4-21', 3)).toBe(0);
  expect(sheetsFor(19, 'a4-21', 3)).toBe(1);
  expect(sheetsFor(20, 'a4-21', 3)).toBe(2);
  expect(sheetsFor(500, 'letter-30', 1)).toBe(17);
});
