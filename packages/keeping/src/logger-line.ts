import { isDay } from '@sheafbook/units';

/** In which order a date that is written with numbers has its parts. Units: none. Errors: none. */
export type DayOrder = 'ymd' | 'mdy' | 'dmy';

/** Where a logger's file has what. `firstLine` counts from 1 and is the first that holds a reading. Units: columns from 0. Errors: none. */
export type LoggerColumns = {
  readonly separator: ',' | ';' | '\t';
  readonly day: number;
  readonly clock: number | null;
  readonly temperature: number;
  readonly firstLine: number;
  readonly unit: 'C' | 'F' | null;
};

/** The first line with a reading stands among these. Units: lines. Errors: none. */
export const LINES_LOOKED_AT = 60;

/**
 * Finds the columns in the first lines of a file, by the first that has a date: a time beside it, and the temperature
 * where the header names one, else the first number after the time. Null when no line near the top has a date and a number.
 * Units: as `LoggerColumns`. Errors: none.
 */
export function findLoggerColumns(rows: readonly string[], dayOrder: DayOrder): LoggerColumns | null {
  for (const [position, row] of rows.entries()) {
    const separator = separatorOf(row);
    const cells = cellsOf(row, separator);
    const day = cells.findIndex((cell) => readMoment(cell, dayOrder) !== null);
    if (day === -1) continue;
    const clock = /^\d{1,2}:\d{2}/.test(cells[day + 1] ?? '') ? day + 1 : null;
    const header = cellsOf(rows[position - 1] ?? '', separator);
    const named = header.findIndex((cell) => /temp|celsius|fahrenheit|°\s*[CF]/i.test(cell));
    const isNumber = (cell: string) => /^[-+−]?\d+([.,]\d+)?\s*°?\s*[CF]?$/i.test(cell);
    const next = cells.findIndex((cell, at) => at > (clock ?? day) && isNumber(cell));
    const temperature = named === -1 ? next : named;
    if (temperature === -1) continue;
    return { separator, day, clock, temperature, firstLine: position + 1, unit: unitOf(header[named] ?? '') };
  }
  return null;
}

/** The cells of a line, without blanks and quotes around them. Units: none. Errors: none. */
export const cellsOf = (row: string, separator: string): string[] =>
  row.split(separator).map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  );

function separatorOf(row: string): LoggerColumns['separator'] {
  if (row.includes('\t')) return '\t';
  return row.includes(';') ? ';' : ',';
}

function unitOf(header: string): 'C' | 'F' | null {
  if (/°\s*F|\(F\)|fahrenheit/i.test(header)) return 'F';
  return /°\s*C|\(C\)|celsius/i.test(header) ? 'C' : null;
}

const DATE =
  /^(\d{1,4})[-/.](\d{1,2})[-/.](\d{1,4})(?:[T ]+(\d{1,2}):(\d{2})(?::(\d{2})(?:[.,]\d+)?)?\s*([ap])?\.?m?\.?\s*(Z|[+-]\d{2}:?\d{2})?)?$/i;

/**
 * A date with its time as "2025-07-01 14:30:00", as the logger's own clock showed it, and how far that was ahead of UTC
 * where the line says so. Units: local time; minutes. Errors: none.
 */
export type LoggerMoment = { readonly at: string; readonly offsetMinutes: number | null };

/**
 * Reads a date with its time; a date alone is its midnight. A year first is read as such whatever the order.
 * Units: as `LoggerMoment`; null for what is none. Errors: none.
 */
export function readMoment(text: string, dayOrder: DayOrder): LoggerMoment | null {
  const match = DATE.exec(text);
  if (!match) return null;
  const [, a = '', b = '', c = '', hour = '0', minute = '0', second = '0', half, zone] = match;
  const order = a.length === 4 ? 'ymd' : dayOrder;
  const [year, month, day] = order === 'ymd' ? [a, b, c] : order === 'mdy' ? [c, a, b] : [c, b, a];
  const onDay = `${year.length === 2 ? `20${year}` : year}-${two(month)}-${two(day)}`;
  const hours = hoursOf(Number(hour), half);
  if (!isDay(onDay) || hours === null || Number(minute) > 59 || Number(second) > 59) return null;
  const at = `${onDay} ${two(String(hours))}:${two(minute)}:${two(second)}`;
  return { at, offsetMinutes: zone === undefined ? null : minutesAhead(zone) };
}

function minutesAhead(zone: string): number {
  if (zone.toUpperCase() === 'Z') return 0;
  const digits = zone.replace(':', '');
  const minutes = Number(digits.slice(1, 3)) * 60 + Number(digits.slice(3));
  return digits.startsWith('-') ? -minutes : minutes;
}

function hoursOf(hour: number, half: string | undefined): number | null {
  if (half === undefined) return hour <= 23 ? hour : null;
  if (hour < 1 || hour > 12) return null;
  return (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
}

const two = (text: string) => text.padStart(2, '0');
