import { readFileSync, statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';

const root = fileURLToPath(new URL('../../', import.meta.url));
const MOST_BYTES = 120_000;

test('the pictures of the README are there, small, and told to whoever does not see them', () => {
  const readme = readFileSync(`${root}README.md`, 'utf8');
  const shown = [...readme.matchAll(/<img src="([^"]+)"[^>]*?alt="([^"]*)"/g)].map(
    ([, path = '', alt = '']) => ({
      alt,
      bytes: statSync(root + path).size,
    }),
  );
  expect(shown.length).toBeGreaterThanOrEqual(3);
  expect(readme.match(/<img /g)).toHaveLength(shown.length);
  for (const { alt } of shown) expect(alt.length).toBeGreaterThan(60);
  expect(shown.reduce((sum, { bytes }) => sum + bytes, 0)).toBeLessThanOrEqual(MOST_BYTES);
});
