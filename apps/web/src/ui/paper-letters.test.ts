import { expect, test } from 'vitest';
import { lettersNotOnPaper } from './paper-letters.ts';

test.each([
  ['Dell', ''],
  ['Íñigo Núñez-O’Hara 2', ''],
  ['Nguyễn Thị Hương', ''],
  ['Παπαδόπουλος, Иванова', ''],
  ['山田 Dell', '山 田'],
  ['محمد', 'م ح د'],
  ['Sheaf 🌾', '🌾'],
  ['', ''],
])('of %j a paper can’t print %j', (name, letters) => {
  expect(lettersNotOnPaper(name)).toBe(letters);
});
