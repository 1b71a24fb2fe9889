import {
  type DayOrder,
  type DecimalSign,
  parseMass,
  parseMoney,
  parsePartialDay,
  settleDecimalSign,
} from '@sheafbook/units';
import { foldText } from './kinds.ts';
import { type Facts, messageOf } from './messages.ts';
import type { Sheet, SheetRow } from './read-sheet.ts';

/** What is wrong with one cell: where it stands, what was read, and what to do. */
export type CellProblem = {
  readonly column: string;
  readonly heading: string;
  readonly read: string;
  readonly code: string;
  readonly message: string;
};

/** How a sheet is to be read where its cells could mean two things. */
export type Reading = {
  readonly currency: string;
  readonly today: string;
  readonly decimalSign?: DecimalSign | undefined;
  readonly dayOrder?: DayOrder | undefined;
};

export type RowReader = ReturnType<typeof openRow>;

/** Reads the cells of a row one by one. What can't be read is noted, and the reading goes on to the next cell. */
export function openRow(sheet: Sheet, { cells, unreadable }: SheetRow, reading: Reading) {
  const problems: CellProblem[] = [];
  const raw = (column: string): string => cells[sheet.placeOf.get(column) ?? -1] ?? '';
  const refuse = (column: string, code: string, facts: Facts = {}): undefined => {
    const heading = sheet.headings[sheet.placeOf.get(column) ?? -1] ?? column;
    problems.push({ column, heading, read: raw(column), code, message: messageOf(code, facts) });
  };
  if (cells.slice(sheet.headings.length).some((cell) => cell !== ''))
    refuse(sheet.placeOf.keys().next().value ?? '', 'too-many-cells');
  for (const [column, place] of sheet.placeOf) {
    const bytes = unreadable.get(place);
    if (bytes)
      refuse(column, bytes.includes('\uFFFD') ? 'letter-lost' : 'unreadable-byte', {
        bytes: bytes.join(', '),
      });
  }
  const text = (column: string, most = 120): string => {
    if (raw(column).length > most) refuse(column, 'too-long', { most });
    return raw(column);
  };
  const needed = (column: string, most = 120): string | undefined =>
    raw(column) === '' ? refuse(column, 'missing') : text(column, most);
  const number = (column: string, bounds: { least: number; most: number }): number | undefined => {
    const value = /^\d{1,9}$/.test(raw(column)) ? Number(raw(column)) : Number.NaN;
    const isFit = value >= bounds.least && value <= bounds.most;
    return isFit ? value : refuse(column, 'not-whole', bounds);
  };
  const choice = (column: string, words: ReadonlyMap<string, string>): string | undefined => {
    const found = words.get(foldText(raw(column)));
    return found ?? refuse(column, 'not-a-choice', { choices: [...new Set(words.values())].join(', ') });
  };
  return {
    ...{ problems, raw, refuse, text, needed, number, choice },
    choices: (
      column: string,
      words: ReadonlyMap<string, string>,
      none: ReadonlySet<string>,
    ): string[] | undefined => {
      if (raw(column) === '' || none.has(foldText(raw(column)))) return [];
      const parts = raw(column)
        .split(/[,;/+]/)
        .map((part) => words.get(foldText(part)));
      if (parts.every((part) => part !== undefined)) return [...new Set(parts)];
      return refuse(column, 'not-a-choice', { choices: [...new Set(words.values())].join(', ') });
    },
    /** Minor units; a minus or brackets, as accountants write it, make it negative. */
    money: (column: string): number | undefined =>
      readMoney(raw(column), reading, (code) => refuse(column, code)),
    mass: (column: string): number | undefined =>
      readMass(raw(column), reading, (code) => refuse(column, code)),
    day: (column: string): string | undefined => {
      const day = parsePartialDay(raw(column), reading.dayOrder);
      if ('problem' in day) return refuse(column, day.problem === 'empty' ? 'missing' : day.problem);
      if (day.partialDay.slice(0, 4) < '1900') return refuse(column, 'no-such-day');
      const first = day.partialDay + '-01-01'.slice(day.partialDay.length - 4);
      return first > reading.today ? refuse(column, 'day-to-come') : day.partialDay;
    },
  };
}

type Refuse = (code: string) => undefined;

function readMoney(raw: string, reading: Reading, refuse: Refuse): number | undefined {
  const match = /^(?:[-−–]\s*(.*)|\((.*)\))$/.exec(raw);
  const settled = settleDecimalSign(match?.[1] ?? match?.[2] ?? raw, reading.decimalSign);
  if ('problem' in settled) return refuse(settled.problem);
  const money = parseMoney(settled.text, reading.currency);
  if ('problem' in money) return refuse(money.problem === 'empty' ? 'missing' : money.problem);
  return match ? -money.minorUnits : money.minorUnits;
}

/** A figure without its unit is asked about: pounds and kilograms look alike. */
function readMass(raw: string, reading: Reading, refuse: Refuse): number | undefined {
  if (/^[\d.,\s/]+$/.test(raw)) return refuse('unit-missing');
  const settled = settleDecimalSign(raw, reading.decimalSign);
  if ('problem' in settled) return refuse(settled.problem);
  const mass = parseMass(settled.text, { defaultUnit: 'g' });
  if ('problem' in mass) return refuse(mass.problem === 'empty' ? 'missing' : mass.problem);
  return mass.grams;
}
