import { expect, test } from 'vitest';
import type { Waiting } from '../../api/outbox.ts';
import type { LogAct } from './log-act.ts';
import type { Bringable, LoggedBag } from './queries.ts';
import { bagsHere, broughtHere, isHeld, mayDrop, poursWaiting, takenBack } from './waiting-bags.ts';

const food = { id: 'f', code: 'wheat', nameEn: 'Wheat', nameEs: 'Trigo' };
const own = { bagId: 'b1', householdId: 'h1' };
const other = { bagId: 'b2', householdId: 'h1' };
const bag: Bringable = { ...own, bagNo: 3, household: 'Dell', food, grams: 10_000 };
const byBook: LoggedBag = {
  ...{ ...other, bagCode: 'K', bagNo: 4, household: 'Dell', food, moistureTenthsPercent: null, because: '' },
  ...{
    broughtGrams: 9000,
    inContainersGrams: 0,
    spilledGrams: 0,
    sampledGrams: 0,
    moistureGrams: 0,
    wasTenths: null,
    isTenths: null,
    isWeighed: false,
  },
  ...{ leftInBagsGrams: 9000, expectedLeftGrams: 9000, unaccountedGrams: 0, toleranceGrams: 45 },
};
const wrote = (id: string, act: LogAct, refusal: string | null = null): Waiting<LogAct> => ({
  ...{ id, at: '2026-09-19T15:00:00Z', act, refusal },
});
const bring: LogAct = { kind: 'bring', json: own, bag };
const pour = (of: typeof own, ...grams: number[]): LogAct => ({
  kind: 'pour',
  json: { ...of, line: 1, containerKindId: 'k', treatment: 'none', targetGrams: 2000, grams },
});
const lost: LogAct = { kind: 'loss', json: { ...own, grams: 30, to: 'spilled' } };
const left: LogAct = { kind: 'left', json: { ...own, leftGrams: 5970 }, bag };

test('a bag that was brought without a signal is at the line, less what was poured and lost of it since', () => {
  const waiting = [wrote('a', bring), wrote('b', pour(own, 2000, 2000)), wrote('c', lost), wrote('d', left)];
  const [first, second] = bagsHere([byBook], waiting);
  expect(first).toEqual(byBook);
  expect(second).toMatchObject({ ...own, bagNo: 3, broughtGrams: 10_000, expectedLeftGrams: 5970 });
  expect(second).toMatchObject({ leftInBagsGrams: 5970, isWeighed: false });
});

test('a bag that the book has stands once, and what was refused was not poured from it', () => {
  const waiting = [
    wrote('a', { ...bring, json: other, bag: { ...bag, ...other } }),
    wrote('b', pour(other, 1000)),
    wrote('c', pour(other, 4000), 'Not so much is left.'),
  ];
  expect(bagsHere([byBook], waiting)).toMatchObject([
    { ...other, broughtGrams: 9000, leftInBagsGrams: 8000 },
  ]);
  const weighed = { ...byBook, isWeighed: true, leftInBagsGrams: 8900 };
  expect(bagsHere([weighed], waiting)).toMatchObject([{ leftInBagsGrams: 8900, expectedLeftGrams: 8000 }]);
});

test('what is written of a bag waits behind its refused bringing, which can’t be thrown away under it', () => {
  const refused = wrote('a', bring, 'The bag is on hold.');
  const behind = [wrote('b', pour(own, 2000)), wrote('c', lost), wrote('d', left)];
  const free = [
    wrote('e', pour(other, 2000)),
    wrote('f', { kind: 'pack', json: { sizeMillilitres: 300, packets: 25 } }),
  ];
  const all = [refused, ...behind, ...free];
  expect(all.filter((one) => isHeld(one, all)).map(({ id }) => id)).toEqual(['b', 'c', 'd']);
  expect(bagsHere([], all)).toEqual([]);
  expect([...broughtHere(all)]).toEqual(['b1 h1']);
  expect(all.filter((one) => !mayDrop(one, all)).map(({ id }) => id)).toEqual(['a']);
  expect(mayDrop(refused, [refused, ...free])).toBe(true);
  const again = [wrote('g', bring), ...behind];
  expect(again.some((one) => isHeld(one, again))).toBe(false);
});

test('what was taken back on this phone is in its bag again, whether the book has the pour or it waits here itself', () => {
  const back = (entry: string, grams: number): LogAct => ({
    ...{ kind: 'undo', entry, bag: other, containers: 1, grams, reason: 'taken back at the line' },
  });
  const waiting = [
    wrote('a', pour(other, 1000)),
    wrote('b', pour(other, 1200)),
    wrote('c', back('b', 1200)),
    wrote('d', back('entry of the book', 500)),
  ];
  expect(poursWaiting(waiting, other).map(({ id }) => id)).toEqual(['a']);
  expect([...takenBack(waiting)]).toEqual(['b', 'entry of the book']);
  expect(bagsHere([byBook], waiting)).toMatchObject([{ leftInBagsGrams: 9000 - 1000 + 500 }]);
});

test('what takes a refused pour back waits behind it, and a refused taking back takes nothing back', () => {
  const back: LogAct = { kind: 'undo', entry: 'a', bag: other, containers: 1, grams: 1000, reason: 'r' };
  const all = [wrote('a', pour(other, 1000), 'Not so much is left.'), wrote('b', back)];
  expect(all.filter((one) => isHeld(one, all)).map(({ id }) => id)).toEqual(['b']);
  const refused = [wrote('a', pour(other, 1000)), wrote('b', back, 'It has been eaten from.')];
  expect(poursWaiting(refused, other).map(({ id }) => id)).toEqual(['a']);
  expect(bagsHere([byBook], refused)).toMatchObject([{ leftInBagsGrams: 8000 }]);
});

test('what waits behind a bringing that was refused, since the book has the bag, is out of that bag all the same', () => {
  const again: LogAct = { kind: 'bring', json: other, bag: { ...bag, ...other } };
  const waiting = [wrote('a', again, 'It is at the line already.'), wrote('b', pour(other, 1500))];
  expect(bagsHere([byBook], waiting)).toMatchObject([{ leftInBagsGrams: 7500 }]);
});
