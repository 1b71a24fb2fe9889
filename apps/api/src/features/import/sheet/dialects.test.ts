import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readSheet } from './read-sheet.ts';
import { openRow } from './row-reader.ts';

/** How a spreadsheet may save one and the same table. */
type Dialect = {
  readonly separator: ',' | ';' | '\t';
  readonly lineEnd: '\r\n' | '\n';
  readonly quotes: 'all' | 'needed';
  readonly encoding: keyof typeof ENCODERS;
  readonly endsWithLineEnd: boolean;
};

/** What the bytes 0x80 to 0x9F stand for, by the Encoding Standard's index windows-1252; five stand for nothing. */
const WINDOWS_80_TO_9F = '€\0‚ƒ„…†‡ˆ‰Š‹Œ\0Ž\0\0‘’“”•–—˜™š›œ\0žŸ';
const LETTERS_OF_WINDOWS = [
  ...Array.from({ length: 0x5f }, (_, at) => String.fromCharCode(0x20 + at)),
  ...WINDOWS_80_TO_9F.replaceAll('\0', ''),
  ...Array.from({ length: 0x60 }, (_, at) => String.fromCharCode(0xa0 + at)),
  ...'\n\t',
];

const windowsByte = (letter: string): number => {
  const at = letter === '\0' ? -1 : WINDOWS_80_TO_9F.indexOf(letter);
  return at >= 0 ? 0x80 + at : letter.charCodeAt(0);
};
const ENCODERS = {
  'utf-8': (text: string) => Buffer.from(text, 'utf8'),
  'utf-8 with its mark': (text: string) => Buffer.from(`\uFEFF${text}`, 'utf8'),
  'utf-16le with its mark': (text: string) => Buffer.from(`\uFEFF${text}`, 'utf16le'),
  'utf-16be with its mark': (text: string) => Buffer.from(`\uFEFF${text}`, 'utf16le').swap16(),
  'windows-1252': (text: string) => Buffer.from([...text].map(windowsByte)),
} as const;

const dialect: fc.Arbitrary<Dialect> = fc.record({
  separator: fc.constantFrom(',', ';', '\t'),
  lineEnd: fc.constantFrom('\r\n', '\n'),
  quotes: fc.constantFrom('all', 'needed'),
  encoding: fc.constantFrom(...(Object.keys(ENCODERS) as (keyof typeof ENCODERS)[])),
  endsWithLineEnd: fc.boolean(),
});

function write(table: readonly (readonly string[])[], of: Dialect): Buffer {
  const quoted = (cell: string) =>
    of.quotes === 'all' || cell.includes(of.separator) || /["\r\n]/.test(cell)
      ? `"${cell.replaceAll('"', '""')}"`
      : cell;
  const text = table.map((cells) => cells.map(quoted).join(of.separator)).join(of.lineEnd);
  return ENCODERS[of.encoding](text + (of.endsWithLineEnd ? of.lineEnd : ''));
}

const HEADINGS = ['Household', 'Person'];
const letter = fc.oneof(
  fc.constantFrom(...LETTERS_OF_WINDOWS),
  fc.constantFrom(...'",;\t\n \u00a0üñ€“', '\r\n'),
);
const cell = fc.string({ unit: letter, maxLength: 12 });
const anyCell = fc.oneof(cell, fc.string({ unit: 'grapheme', maxLength: 8 }).map(withoutNul));
function withoutNul(text: string): string {
  return text.replaceAll('\0', '').replaceAll('\uFFFD', '');
}

const readCells = (bytes: Uint8Array, encoding?: 'windows-1252') => {
  const { sheet, problems } = readSheet(bytes, { leftOut: [], encoding });
  return { problems, rows: sheet?.rows.map(({ cells }) => cells) };
};
/** Rows with nothing in them are passed over, and blanks around a cell make no difference. */
const asRead = (rows: readonly (readonly string[])[]) =>
  rows.map((cells) => cells.map((one) => one.trim())).filter((cells) => cells.some((one) => one !== ''));

describe('whatever the dialect that a table is saved in', () => {
  const rowsOf = (one: fc.Arbitrary<string>) =>
    fc
      .array(fc.tuple(one, one), { minLength: 1, maxLength: 6 })
      .map((rows) => [['Müller', '12 €'], ...rows] as [string, string][]);

  test('the same cells are read back', () => {
    const saved = dialect.chain((of) =>
      rowsOf(of.encoding === 'windows-1252' ? cell : anyCell).map((rows) => ({ of, rows })),
    );
    fc.assert(
      fc.property(saved, ({ of, rows }) => {
        const chosen = of.encoding === 'windows-1252' ? of.encoding : undefined;
        expect(readCells(write([HEADINGS, ...rows], of), chosen)).toEqual({
          problems: [],
          rows: asRead(rows),
        });
      }),
      { numRuns: 1000 },
    );
  });

  test('a table of one column too', () => {
    fc.assert(
      fc.property(dialect, fc.array(anyCell, { minLength: 1, maxLength: 6 }), (of, cells) => {
        fc.pre(of.encoding !== 'windows-1252');
        const rows = ['Dell', ...cells].map((one) => [one]);
        expect(readCells(write([['Household'], ...rows], of)).rows).toEqual(asRead(rows));
      }),
      { numRuns: 500 },
    );
  });

  test('an amount is read to the same cents by the point and by the comma', () => {
    const amounts = fc.array(fc.integer({ min: 1, max: 99_999_999 }), { minLength: 1, maxLength: 5 });
    fc.assert(
      fc.property(dialect, amounts, fc.constantFrom('point', 'comma'), (of, cents, decimalSign) => {
        const language = decimalSign === 'point' ? 'en' : 'de';
        const typed = cents.map((one) =>
          (one / 100).toLocaleString(language, { minimumFractionDigits: 2, maximumFractionDigits: 2 }),
        );
        const bytes = write([['Account', 'Owes'], ...typed.map((one, at) => [`Hogar ${at}`, one])], of);
        const { sheet } = readSheet(bytes, { leftOut: [] });
        const reading = { currency: 'USD', today: '2026-11-01', decimalSign } as const;
        const read = sheet?.rows.map((row) => sheet && openRow(sheet, row, reading).money('owes'));
        expect(read).toEqual(cents);
      }),
    );
  });
});

describe('how letters are saved', () => {
  const windows: Dialect = {
    ...{ separator: ';', lineEnd: '\r\n', quotes: 'needed', endsWithLineEnd: true },
    encoding: 'windows-1252',
  };
  const names = [
    ['Müller', 'Jörg Müller'],
    ['Núñez', 'Íñigo Núñez'],
    ['Preis', '5 €'],
  ];

  test('is told from the bytes where they can be no UTF-8', () => {
    const read = readSheet(write([HEADINGS, ...names], windows), { leftOut: [] });
    expect([read.encoding, read.sheet?.rows.map(({ cells }) => cells)]).toEqual(['windows-1252', names]);
  });

  test('is UTF-8 where a few bytes of such a file were damaged: the bytes are named, the other letters stand', () => {
    const bytes = Buffer.concat([
      write([HEADINGS, ...names], { ...windows, encoding: 'utf-8' }),
      Buffer.from([0x44, 0xff, 0x65, 0xc3, 0x3b]), // D?e?; of which 0xC3 begins a letter that does not follow
      Buffer.from('Dora', 'utf8'),
    ]);
    const read = readSheet(bytes, { leftOut: [] });
    expect(read.encoding).toBe('utf-8');
    expect(read.sheet?.rows.slice(0, 3).map(({ cells }) => cells)).toEqual(names);
    expect(read.sheet?.rows[3]).toEqual({
      row: 5,
      cells: ['D\uFFFDe\uFFFD', 'Dora'],
      unreadable: new Map([[0, ['0xFF', '0xC3']]]),
    });
  });

  test.for([0x81, 0x8d, 0x8f, 0x90, 0x9d])(
    'of Windows-1252 the byte %i stands for nothing, and is named',
    (byte) => {
      const bytes = Buffer.concat([
        write([HEADINGS, ...names], windows),
        Buffer.from([0x44, byte, 0x3b, 0x45]),
      ]);
      const { sheet } = readSheet(bytes, { leftOut: [] });
      const row = sheet?.rows.at(-1);
      const problems = sheet && row && openRow(sheet, row, { currency: 'USD', today: '2026-11-01' }).problems;
      expect(problems).toMatchObject([
        { column: 'name', heading: 'Household', read: 'D\uFFFD', code: 'unreadable-byte' },
      ]);
      expect(problems?.[0]?.message).toContain(`0x${byte.toString(16).toUpperCase()}`);
    },
  );

  test('every other byte of Windows-1252 stands for the letter of the standard', () => {
    const letters = LETTERS_OF_WINDOWS.filter((one) => !/[\s"]/.test(one)).join('');
    const read = readCells(write([HEADINGS, [letters, 'x']], { ...windows, quotes: 'all' }), 'windows-1252');
    expect(read.rows).toEqual([[letters, 'x']]);
  });

  test('a letter that was lost before is named, also half a letter of UTF-16', () => {
    const lost = write([HEADINGS, ['M\uFFFDller', 'Jo']], { ...windows, encoding: 'utf-8' });
    const half = write([HEADINGS, ['Dell', 'Jo']], {
      ...windows,
      encoding: 'utf-16le with its mark',
      endsWithLineEnd: false,
    }).subarray(0, -1);
    for (const bytes of [lost, half]) {
      const { sheet } = readSheet(bytes, { leftOut: [] });
      const codes = sheet?.rows.flatMap((row) =>
        openRow(sheet, row, { currency: 'USD', today: '2026-11-01' }).problems.map(({ code }) => code),
      );
      expect(codes).toEqual(['letter-lost']);
    }
  });

  test('a workbook is no text', () => {
    const workbook = Buffer.from('PK\u0003\u0004\u0014\0\u0006\0\b\0', 'latin1');
    expect(readSheet(workbook, { leftOut: [] }).problems.map(({ code }) => code)).toEqual(['not-text']);
  });
});

test('a line that names the separator is obeyed and not counted', () => {
  const bytes = Buffer.from('sep=;\r\nHousehold;Person\r\n"Dell, the elder";Dora\r\n');
  expect(readSheet(bytes, { leftOut: [] }).sheet?.rows).toMatchObject([
    { row: 2, cells: ['Dell, the elder', 'Dora'] },
  ]);
});
