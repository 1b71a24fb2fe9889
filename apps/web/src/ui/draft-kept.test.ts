import { expect, test } from 'vitest';
import { changesTo, draftText, readDraft } from './draft-kept.ts';

const start = { name: 'Cellar', isLit: false, rows: [] as { food: string; bags: string }[], kind: null };
const rows = { rows: { food: '', bags: '' }, kind: '' };
const read = (typed: object, version: number | string = 3) =>
  readDraft(draftText(version, typed), { start, version: 3, rows });

test('only what was typed over is kept, so that the rest follows the book', () => {
  expect(changesTo(start, { name: 'Attic', isLit: false })).toEqual({ name: 'Attic' });
  expect(changesTo(start, { name: 'Cellar', rows: [] })).toEqual({});
  expect(read({ name: 'Attic' })).toEqual({ name: 'Attic' });
});

test('a draft that was begun from an older issue of the thing is dropped', () => {
  expect(read({ name: 'Attic' }, 2)).toEqual({});
  expect(read({ name: 'Attic' }, '3')).toEqual({});
});

test.for([
  { typed: { name: 7 }, because: 'a number where a text stands' },
  { typed: { isLit: 'yes' }, because: 'a text where a tick stands' },
  { typed: { name: 'Attic', rows: 'wheat' }, because: 'one field of it is another kind, so all of it goes' },
  { typed: { rows: [{ food: 'wheat' }] }, because: 'a row that lacks what rows have now' },
  { typed: { rows: [{ food: 'wheat', bags: 2 }] }, because: 'a row with a number where a text stands' },
  { typed: { kind: 4 }, because: 'what begins empty is told by its row' },
  { typed: { name: null }, because: 'nothing where a text stands' },
])('a draft that no longer fits is dropped: $because', ({ typed }) => {
  expect(read(typed)).toEqual({});
});

test('what fits goes on, and a field that the form no longer has is left out', () => {
  const typed = { rows: [{ food: 'wheat', bags: '2' }], kind: 'cellar' };
  expect(read({ ...typed, gone: 'x' })).toEqual(typed);
});

test.for([null, '', '{"version":3,"typ', '[]', '"Attic"', '{"version":3}', '{"version":3,"typed":[1]}'])(
  'nothing to be read is no draft: %s',
  (text) => {
    expect(readDraft(text, { start, version: 3 })).toEqual({});
  },
);
