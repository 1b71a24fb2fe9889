import { historyOf, openLoggerFile, readLoggerFile, usedDays } from '@sheafbook/keeping';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';

const how = { unit: 'C', dayOrder: 'ymd', untilOn: '2026-09-01', timeZone: 'America/New_York' } as const;
const read = (text: string, change: Partial<Parameters<typeof readLoggerFile>[1]> = {}) =>
  readLoggerFile(text, { ...how, ...change });

test('a day is kept as the steady warmth at which food ages as much, with its mean and its ends', () => {
  const { days } = read('time,°C\n2025-07-01 00:00,10.0\n2025-07-01 12:00,32.2\n2025-07-02 00:00,15.5\n');
  // Facts section 8: 10 °F more halve the life. 32.2 °C is 3.996 such steps above 10 °C and ages 15.96 times
  // as fast; the two together 8.48 times, which is log2(8.48) = 3.084 steps or 17.1 degrees above 10. The mean would say 21.1.
  expect(days).toEqual([
    {
      onDay: '2025-07-01',
      ageTenths: 271,
      meanTenths: 211,
      coldestTenths: 100,
      warmestTenths: 322,
      readings: 2,
    },
    {
      onDay: '2025-07-02',
      ageTenths: 155,
      meanTenths: 155,
      coldestTenths: 155,
      warmestTenths: 155,
      readings: 1,
    },
  ]);
});

describe('a reading is found in', () => {
  test.for([
    {
      because: 'a sheet with a number before it',
      text: '#,Date Time,Temp (°F),RH\n1,07/01/2025 02:30 PM,68.0,41\n',
    },
    { because: 'a table of day, hour and value', text: 'Fecha;Hora;Valor;H\n01.07.2025;14:30:00;20,0;41\n' },
    { because: 'no header at all', text: '2025-07-01T14:30:00Z,20\r\n' },
    { because: 'tabs and quotes', text: '"Time"\t"Celsius"\n"2025-07-01 14:30"\t"20.0 °C"' },
  ])('$because', ({ text }) => {
    const isAmerican = text.startsWith('#');
    const { days, badCount } = read(text, isAmerican ? { unit: 'F', dayOrder: 'mdy' } : { dayOrder: 'dmy' });
    expect([days, badCount]).toEqual([
      [
        {
          onDay: '2025-07-01',
          ageTenths: 200,
          meanTenths: 200,
          coldestTenths: 200,
          warmestTenths: 200,
          readings: 1,
        },
      ],
      0,
    ]);
  });
});

test('what can’t be is left out and named by its line, and the rest counts', () => {
  const rows = [
    'time,temperature',
    '2025-07-01 00:00,20',
    '2025-07-01 01:00,-300',
    '2025-07-01 02:00,400',
    '2025-07-01 01:30,20',
    'somewhen,20',
    '2025-07-01 03:00,warm',
    '2025-07-01 01:30,20',
    '2025-07-01 00:30,20',
    '2025-07-01 04:00,68 F',
    '2027-01-01 00:00,20',
    '2025-02-30 00:00,20',
    '2025-07-01 05:00,20',
  ];
  const { badLines, badCount, readings } = read(rows.join('\n'));
  expect(badLines.map(({ line, fault }) => `${line} ${fault}`)).toEqual([
    '3 impossible',
    '4 impossible',
    '6 no-time',
    '7 no-temperature',
    '8 same-time',
    '9 out-of-order',
    '10 other-unit',
    '11 to-come',
    '12 no-time',
  ]);
  expect([badCount, readings]).toEqual([9, 3]);
});

test('bad lines come by the page, however many there are', () => {
  const text = ['2025-07-01 00:00,20', ...Array.from({ length: 120 }, () => 'x,y')].join('\n');
  const seen: number[] = [];
  for (let after = 0; ; ) {
    const { badLines, badCount } = read(text, { badAfterLine: after });
    expect(badCount).toBe(120);
    if (badLines.length === 0) break;
    seen.push(...badLines.map(({ line }) => line));
    after = badLines.at(-1)?.line ?? 0;
  }
  expect(seen).toEqual(Array.from({ length: 120 }, (_, at) => at + 2));
});

test('a file in which nothing can be read says so', () => {
  expect(read('Dear diary,\nit was warm.\n')).toMatchObject({ isReadable: false, days: [], readings: 0 });
  expect(read('')).toMatchObject({ isReadable: false });
});

describe('the hour that clocks tell twice in autumn', () => {
  // New York, 2 November 2025: at 02:00 clocks went back to 01:00 (IANA time zone database).
  const day = '2025-11-02';
  const every = (minutes: number, from: string, to: string): string[] => {
    const clock = (at: string) => Number(at.slice(0, 2)) * 60 + Number(at.slice(3));
    const two = (n: number) => String(n).padStart(2, '0');
    return Array.from({ length: (clock(to) - clock(from)) / minutes }, (_, at) => {
      const minute = clock(from) + at * minutes;
      return `${day} ${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
    });
  };
  const readAll = (times: readonly string[], change = {}) =>
    read(times.map((time) => `${time},12`).join('\n'), change);
  test.for([5, 10, 15, 30, 60])('counts both times for a logger of every %i minutes', (minutes) => {
    const times = [...every(minutes, '00:00', '02:00'), ...every(minutes, '01:00', '23:00')];
    expect(readAll(times)).toMatchObject({ readings: times.length, badCount: 0 });
  });
  test('is told apart by what a line states, however odd its steps', () => {
    const times = ['01:40-04:00', '01:50-04:00', '01:20-05:00', '01:20-05:00', '01:10-05:00', '01:55-05:00'];
    const { readings, badLines } = readAll(times.map((time) => `${day}T${time}`));
    expect(readings).toBe(4);
    expect(badLines.map(({ line, fault }) => `${line} ${fault}`)).toEqual(['4 same-time', '5 out-of-order']);
  });
  test('comes twice and not three times, and a line that stands there double is no second hour', () => {
    const hour = every(10, '01:00', '02:00');
    expect(readAll([...hour, ...hour, ...hour])).toMatchObject({ readings: 12, badCount: 6 });
    expect(readAll([...hour, `${day} 01:50`, ...every(10, '02:00', '03:00')]).badLines).toMatchObject([
      { line: 7, fault: 'same-time' },
    ]);
  });
  test('is none on another day, nor where clocks never change', () => {
    const hour = every(10, '01:00', '02:00');
    const summer = hour.map((time) => time.replace(day, '2025-07-02'));
    expect(readAll([...summer, ...summer])).toMatchObject({ readings: 6, badCount: 6 });
    expect(readAll([...hour, ...hour], { timeZone: 'America/Phoenix' })).toMatchObject({ badCount: 6 });
  });
});

test('a file that comes in pieces of any length is the file as a whole', () => {
  const text =
    'time,°C\r\n2025-07-01 00:00,10.0\r\nbad\r\n2025-07-01 12:00,32.2\r\n\r\n2025-07-02 00:00,15.5';
  fc.assert(
    fc.property(fc.array(fc.nat(text.length)), (cuts) => {
      const file = openLoggerFile(how);
      const at = [0, ...cuts.toSorted((a, b) => a - b), text.length];
      for (const [position, from] of at.entries()) file.take(text.slice(from, at[position + 1] ?? from));
      expect(file.end()).toEqual(read(text));
    }),
  );
});

test('a line without end is named by its beginning and the next is read again', () => {
  const text = `2025-07-01 00:00,20\n${'9'.repeat(1_000_000)}\n2025-07-01 01:00,20\n`;
  const { readings, badLines } = read(text);
  expect(readings).toBe(2);
  expect(badLines).toEqual([{ line: 2, fault: 'too-long', text: '9'.repeat(80) }]);
});

test('days kept so use up the life that their readings do, within what a rounded tenth is worth', () => {
  const hours = fc.array(fc.integer({ min: 0, max: 450 }), { minLength: 24, maxLength: 24 });
  fc.assert(
    fc.property(hours, (tenths) => {
      const text = tenths
        .map((t, hour) => `2025-07-01 ${String(hour).padStart(2, '0')}:00,${t / 10}`)
        .join('\n');
      const { days } = read(text);
      const kept = historyOf(
        days.map(({ onDay, ageTenths }) => ({ readOn: onDay, tenthsCelsius: ageTenths })),
        '2025-07-01',
        '2025-07-02',
      );
      const exact = usedDays(tenths.map((t) => ({ days: 1 / 24, tenthsCelsius: t, known: 'read' })));
      expect(Math.abs(usedDays(kept) / exact - 1)).toBeLessThan(0.0063); // 2^(0.05 / 5.556) − 1
    }),
  );
});
