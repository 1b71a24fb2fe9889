import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { addDays } from './day.ts';
import { parsePartialDay } from './day-text.ts';

describe('a day as people write it', () => {
  test.for([
    ['2024', '2024'],
    ['2024-3', '2024-03'],
    ['2024/03/01', '2024-03-01'],
    ['2024-03-01 00:00:00', '2024-03-01'],
    ['2024-03-01T00:00', '2024-03-01'],
    ['3/2024', '2024-03'],
    ['25/12/2024', '2024-12-25'],
    ['12.25.2024', '2024-12-25'],
    ['4/4/2024', '2024-04-04'],
    ['1 Mar 2024', '2024-03-01'],
    ['Mar 1st, 2024', '2024-03-01'],
    ['March 2024', '2024-03'],
    ['1 de marzo de 2024', '2024-03-01'],
    ['1-ago-2024', '2024-08-01'],
    ['setiembre de 2019', '2019-09'],
    ['Dec. 2019', '2019-12'],
  ] as const)('%s is %s', ([text, partialDay]) => {
    expect(parsePartialDay(text)).toEqual({ partialDay });
  });

  test('takes day or month first where both could be either, once somebody says which', () => {
    expect(parsePartialDay('03/04/2024')).toEqual({ problem: 'ambiguous-day' });
    expect(parsePartialDay('03/04/2024', 'day-first')).toEqual({ partialDay: '2024-04-03' });
    expect(parsePartialDay('03/04/2024', 'month-first')).toEqual({ partialDay: '2024-03-04' });
    expect(parsePartialDay('25/12/2024', 'month-first')).toEqual({ problem: 'no-such-day' });
  });

  test.for([
    ['', 'empty'],
    ['last spring', 'not-a-day'],
    ['45352', 'not-a-day'],
    ['1 Mars 2024', 'not-a-day'],
    ['30/2/2024', 'no-such-day'],
    ['13/2024', 'no-such-day'],
    ['31 Apr 2024', 'no-such-day'],
    ['1/3/24', 'short-year'],
    ['Mar 24', 'short-year'],
    ['1 Mar 24', 'short-year'],
    ['9'.repeat(80), 'not-a-day'],
  ] as const)('%s is refused: %s', ([text, problem]) => {
    expect(parsePartialDay(text)).toEqual({ problem });
  });

  test('comes back from every way of writing it', () => {
    const anyDay = fc.integer({ min: 0, max: 60_000 }).map((days) => addDays('1900-01-01', days));
    fc.assert(
      fc.property(anyDay, (partialDay) => {
        const [year, month, day] = partialDay.split('-');
        expect(parsePartialDay(partialDay)).toEqual({ partialDay });
        expect(parsePartialDay(`${day}.${month}.${year}`, 'day-first')).toEqual({ partialDay });
        expect(parsePartialDay(`${Number(month)}/${Number(day)}/${year}`, 'month-first')).toEqual({
          partialDay,
        });
      }),
    );
  });
});
