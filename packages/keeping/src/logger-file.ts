import { assert, isDay } from '@sheafbook/units';
import { ageingRate, tenthsThatAgeLike } from './ageing.ts';
import {
  cellsOf,
  type DayOrder,
  findLoggerColumns,
  LINES_LOOKED_AT,
  type LoggerColumns,
  type LoggerMoment,
  readMoment,
} from './logger-line.ts';
import { followLogger } from './logger-order.ts';

/** How a logger's file is to be read. `untilOn` is the last day that can have been read. Units: ISO day, IANA zone. Errors: none. */
export type LoggerReading = {
  readonly unit: 'C' | 'F';
  readonly dayOrder: DayOrder;
  readonly untilOn: string;
  /** Where the logger stands: the place says whether and when clocks change. */
  readonly timeZone: string;
  /** Bad lines are shown by the page: those after this line. */
  readonly badAfterLine?: number;
};

/** Why a line is left out. Units: none. Errors: none. */
export const LINE_FAULTS = [
  'too-long',
  'no-time',
  'no-temperature',
  'other-unit',
  'impossible',
  'to-come',
  'same-time',
  'out-of-order',
] as const;

/** One of `LINE_FAULTS`. Units: none. Errors: none. */
export type LineFault = (typeof LINE_FAULTS)[number];

/** A line that is left out. Units: lines count from 1. Errors: none by itself. */
export type BadLine = { readonly line: number; readonly fault: LineFault; readonly text: string };

/**
 * A day of a place. `ageTenths` is the steady temperature at which food would have aged as much as it did over that day's
 * readings: warm hours count for more than cool ones save, so that a mean would flatter a garage.
 * Units: ISO day, tenths of a degree Celsius, readings. Errors: none by itself.
 */
export type WarmthOfDay = {
  readonly onDay: string;
  readonly ageTenths: number;
  readonly meanTenths: number;
  readonly coldestTenths: number;
  readonly warmestTenths: number;
  readonly readings: number;
};

/** The coldest and warmest that a place for food can be. Units: tenths of a degree Celsius. Errors: none. Source: common practice, no source. */
export const POSSIBLE_TENTHS = { least: -600, most: 700 } as const;

/** A page of bad lines. Units: lines. Errors: none. */
export const BAD_LINES_A_PAGE = 50;
const LONGEST_TEXT = 80;

/** No logger writes a longer line; of one that is, only the beginning is kept. */
const LONGEST_LINE = 4_000;

/** What a file said. Units: as `readLoggerFile`. Errors: none by itself. */
export type LoggerFile = {
  readonly days: readonly WarmthOfDay[];
  readonly readings: number;
  readonly badCount: number;
  readonly badLines: readonly BadLine[];
  readonly unitOfHeader: 'C' | 'F' | null;
  readonly isReadable: boolean;
};

/**
 * Reads a logger's file piece by piece as it comes, however long it is. Lines that can't be are left out and named; the
 * readings of the others count. Times are those of the logger's own clock and must run forward, but for the hour that
 * clocks tell twice in autumn. Memory grows with the days and not with the lines.
 * Units: as `WarmthOfDay`. Shape: `take` is given the text in pieces of any length; `end` says what it was: days in
 * order; bad lines in order, a page of them after `badAfterLine`, with the number of all.
 * Errors: AssertionError when `untilOn` is no day or the zone unknown.
 */
export function openLoggerFile(how: LoggerReading) {
  assert(isDay(how.untilOn), 'the last day of readings is a day');
  const days = new Map<string, Sums>();
  const badLines: BadLine[] = [];
  const follow = followLogger(how.timeZone);
  const state = { line: 0, badCount: 0, readings: 0, rest: '' };
  /** The lines from which the columns are found; null once they are, or were not. */
  let top: string[] | null = [];
  let columns: LoggerColumns | null = null;

  const takeLine = (row: string): void => {
    state.line += 1;
    if (columns === null || state.line < columns.firstLine || row.trim() === '') return;
    const read = readLine(row, { ...how, columns });
    const fault = 'fault' in read ? read.fault : faultOf(follow(read));
    if (fault !== null) {
      state.badCount += 1;
      if (state.line > (how.badAfterLine ?? 0) && badLines.length < BAD_LINES_A_PAGE)
        badLines.push({ line: state.line, fault, text: row.trim().slice(0, LONGEST_TEXT) });
    } else if ('tenths' in read) {
      state.readings += 1;
      addReading(days, read.at.slice(0, 10), read.tenths);
    }
  };
  const lookAtTop = (): void => {
    if (top === null) return;
    columns = findLoggerColumns(top, how.dayOrder);
    for (const row of top) takeLine(row);
    top = null;
  };
  const takeRow = (row: string): void => {
    if (top === null) takeLine(row);
    else if (top.push(row) === LINES_LOOKED_AT) lookAtTop();
  };

  return {
    take(text: string): void {
      for (let start = 0; start < text.length; ) {
        const found = text.indexOf('\n', start);
        const end = found === -1 ? text.length : found;
        const room = LONGEST_LINE + 1 - state.rest.length; // one more, so that what is too long shows
        state.rest += text.slice(start, Math.min(end, start + Math.max(0, room)));
        start = end + 1;
        if (found === -1) return;
        takeRow(state.rest);
        state.rest = '';
      }
    },
    end(): LoggerFile {
      if (state.rest !== '') takeRow(state.rest);
      lookAtTop();
      return {
        days: [...days].map(([onDay, sums]) => toDay(onDay, sums)),
        ...{ readings: state.readings, badCount: state.badCount, badLines },
        ...{ unitOfHeader: columns?.unit ?? null, isReadable: columns !== null },
      };
    },
  };
}

/** Reads a logger's file that is there as a whole. Units: as `WarmthOfDay`. Errors: as `openLoggerFile`. */
export function readLoggerFile(text: string, how: LoggerReading): LoggerFile {
  const file = openLoggerFile(how);
  file.take(text);
  return file.end();
}

const faultOf = (place: ReturnType<ReturnType<typeof followLogger>>): LineFault | null =>
  place === 'later' ? null : place;

type ReadLine = (LoggerMoment & { readonly tenths: number }) | { readonly fault: LineFault };

function readLine(row: string, how: LoggerReading & { readonly columns: LoggerColumns }): ReadLine {
  if (row.length > LONGEST_LINE) return { fault: 'too-long' };
  const { columns } = how;
  const cells = cellsOf(row, columns.separator);
  const cell = (at: number | null) => (at === null ? '' : (cells[at] ?? ''));
  const moment = readMoment(`${cell(columns.day)} ${cell(columns.clock)}`.trim(), how.dayOrder);
  if (moment === null) return { fault: 'no-time' };
  const degrees = readDegrees(cell(columns.temperature));
  if (degrees === null) return { fault: 'no-temperature' };
  if (degrees.unit !== null && degrees.unit !== how.unit) return { fault: 'other-unit' };
  const tenths = tenthsOf(degrees.value, how.unit);
  if (tenths < POSSIBLE_TENTHS.least || tenths > POSSIBLE_TENTHS.most) return { fault: 'impossible' };
  return moment.at.slice(0, 10) > how.untilOn ? { fault: 'to-come' } : { ...moment, tenths };
}

function readDegrees(cell: string): { value: number; unit: 'C' | 'F' | null } | null {
  const match = /^([-+−]?)(\d{1,6})(?:[.,](\d{1,9}))?\s*°?\s*([CF])?$/i.exec(cell);
  if (!match) return null;
  const [, sign = '', whole = '', part = '0', unit] = match;
  const value = Number(`${whole}.${part}`) * (sign === '-' || sign === '−' ? -1 : 1);
  return { value, unit: unit === undefined ? null : unit.toUpperCase() === 'C' ? 'C' : 'F' };
}

/** Loggers write tenths and hundredths of a degree; a tenth of a degree Celsius is finer than any of them measures. */
const tenthsOf = (value: number, unit: 'C' | 'F') =>
  Math.round(unit === 'C' ? value * 10 : ((value - 32) * 50) / 9);

type Sums = { rates: number; tenths: number; coldest: number; warmest: number; readings: number };

function addReading(days: Map<string, Sums>, onDay: string, tenths: number): void {
  const before = days.get(onDay);
  if (!before) {
    days.set(onDay, { rates: ageingRate(tenths), tenths, coldest: tenths, warmest: tenths, readings: 1 });
    return;
  }
  before.rates += ageingRate(tenths);
  before.tenths += tenths;
  before.coldest = Math.min(before.coldest, tenths);
  before.warmest = Math.max(before.warmest, tenths);
  before.readings += 1;
}

const toDay = (onDay: string, { rates, tenths, coldest, warmest, readings }: Sums): WarmthOfDay => ({
  onDay,
  ageTenths: tenthsThatAgeLike(rates / readings),
  meanTenths: Math.round(tenths / readings),
  coldestTenths: coldest,
  warmestTenths: warmest,
  readings,
});
