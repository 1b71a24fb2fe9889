import { readdirSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parseAst } from 'rolldown/parseAst';
import { expect, test } from 'vitest';
import { en as paperEn } from '../../apps/api/src/features/paper/words/en.ts';
import { es as paperEs } from '../../apps/api/src/features/paper/words/es.ts';
import { en as screenEn } from '../../apps/web/src/text/en/statement.ts';
import { es as screenEs } from '../../apps/web/src/text/es/statement.ts';
import { listFiles, type SourceFile } from './source-files.ts';

/** Attributes that a person reads or hears. */
const SPOKEN = new Set(['aria-label', 'title', 'placeholder', 'alt', 'label', 'hint', 'caption']);
const LETTERS = /\p{L}{2,}/u;

type Node = Readonly<Record<string, unknown>> & { readonly type: string };

/** Text in a screen that stands outside the catalogue: between tags, or in an attribute that is read out. */
function listLiteralTexts({ path, text }: SourceFile): string[] {
  const found: string[] = [];
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) for (const item of value) walk(item);
    if (typeof value !== 'object' || value === null || !('type' in value)) return;
    const node = value as Node;
    const words = wordsOf(node);
    if (LETTERS.test(words)) found.push(`${path}: ${words.trim()}`);
    for (const part of Object.values(node)) walk(part);
  };
  walk(parseAst(text, { lang: 'tsx' }));
  return found;
}

function wordsOf(node: Node): string {
  if (node.type === 'JSXText') return String(node.value);
  if (node.type !== 'JSXAttribute') return '';
  const [name, value] = [node.name as { name?: unknown }, node.value as { value?: unknown } | null];
  return SPOKEN.has(String(name.name)) && typeof value?.value === 'string' ? value.value : '';
}

test('every word on a screen comes from the catalogue', () => {
  const screens = listFiles((path) => path.startsWith('apps/web/src/') && path.endsWith('.tsx'));
  expect(screens.length).toBeGreaterThan(20);
  expect(screens.flatMap(listLiteralTexts)).toEqual([]);
  const bad = { path: 'a.tsx', text: 'const A = () => <p title="Say it">Hello <b>{x}</b></p>;' };
  expect(listLiteralTexts(bad)).toEqual(['a.tsx: Say it', 'a.tsx: Hello']);
});

type Words = Readonly<Record<string, unknown>>;
const keysOf = (words: Words): string[] =>
  Object.entries(words).flatMap(([key, value]) =>
    typeof value === 'object' && value !== null && key !== 'problems'
      ? keysOf(value as Words).map((inner) => `${key}.${inner}`)
      : [key],
  );

const wordsOfArea = async (language: 'en' | 'es', area: string): Promise<Words> =>
  (await import(`../../apps/web/src/text/${language}/${area.replace(/\.ts$/, '')}.ts`))[language];

test('English and Spanish have the same areas and keys, and none is empty', async () => {
  const folder = fileURLToPath(new URL('../../apps/web/src/text', import.meta.url));
  const areas = readdirSync(`${folder}/en`);
  expect(areas).toContain('core.ts');
  expect(readdirSync(`${folder}/es`)).toEqual(areas);
  for (const area of areas) {
    const [en, inSpanish] = await Promise.all([wordsOfArea('en', area), wordsOfArea('es', area)]);
    expect({ area, keys: keysOf(inSpanish) }).toEqual({ area, keys: keysOf(en) });
    for (const words of [en, inSpanish])
      expect(Object.entries(words).filter(([, value]) => value === '')).toEqual([]);
  }
});

test('a statement names the same kinds of entries on the screen and on paper', () => {
  for (const [screen, paper] of [
    [screenEn, paperEn],
    [screenEs, paperEs],
  ] as const)
    expect(Object.keys(screen.entries).toSorted()).toEqual(Object.keys(paper.statement.entries).toSorted());
});
