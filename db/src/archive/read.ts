import { createHash } from 'node:crypto';
import { refuseUnless } from '../refusal.ts';
import {
  ARCHIVE_FORMAT,
  ARCHIVE_VERSION,
  type ArchiveEnd,
  type ArchiveHead,
  type ArchiveRow,
} from './format.ts';

/** One row with its line as it stands: PostgreSQL reads the values from that, to the last digit. */
export type ReadRow = { readonly lineNo: number; readonly line: string } & ArchiveRow;

export type OpenArchive = {
  readonly head: ArchiveHead;
  /** Once through; throws at the end when the archive is not whole or not as it was written. */
  readonly rows: AsyncIterable<ReadRow>;
};

/** Reads the head, and the rows as they are asked for. Errors: StartRefusal, in the words of whoever imports. */
export async function openArchive(lines: AsyncIterable<string>): Promise<OpenArchive> {
  const reading = lines[Symbol.asyncIterator]();
  const first = await reading.next();
  refuseUnless(!first.done, 'this file is empty');
  const head = readHead(first.value);
  return { head, rows: readRows(first.value, { [Symbol.asyncIterator]: () => reading }) };
}

function readHead(line: string): ArchiveHead {
  const head = parse(line, 1) as Partial<ArchiveHead>;
  refuseUnless(head.format === ARCHIVE_FORMAT, 'this file is no archive of a Sheafbook storehouse');
  refuseUnless(
    head.version === ARCHIVE_VERSION,
    `this archive has version ${head.version}, and this Sheafbook reads version ${ARCHIVE_VERSION}`,
  );
  const isWhole = [
    head.takenAt,
    head.migration,
    head.migrationsSha256,
    head.storehouse?.id,
    head.storehouse?.name,
  ];
  refuseUnless(
    isWhole.every((value) => typeof value === 'string'),
    'the first line of this archive lacks something: it is not as it was written',
  );
  return head as ArchiveHead;
}

async function* readRows(head: string, lines: AsyncIterable<string>): AsyncGenerator<ReadRow> {
  const hash = createHash('sha256').update(`${head}\n`);
  const tables: Record<string, number> = {};
  let lineNo = 1;
  let end: ArchiveEnd['end'] | undefined;
  for await (const line of lines) {
    lineNo += 1;
    refuseUnless(end === undefined, `line ${lineNo} stands behind the end of this archive`);
    const read = parse(line, lineNo) as Partial<ArchiveRow & ArchiveEnd>;
    if (read.end) {
      end = read.end;
      continue;
    }
    hash.update(`${line}\n`);
    const { table, row } = read;
    const isRow = typeof table === 'string' && typeof row === 'object' && row !== null;
    refuseUnless(isRow, `line ${lineNo} of this archive is no row of a table`);
    tables[table] = (tables[table] ?? 0) + 1;
    yield { lineNo, line, table, row };
  }
  refuseUnless(end, 'this archive ends too early: it was not written or copied to its end');
  const isSame = end.sha256 === hash.digest('hex') && hasCounts(tables, end.tables);
  refuseUnless(isSame, 'this archive was changed or damaged after it was written');
}

function hasCounts(found: Readonly<Record<string, number>>, told: ArchiveEnd['end']['tables']): boolean {
  const names = new Set([...Object.keys(found), ...Object.keys(told)]);
  return [...names].every((name) => (found[name] ?? 0) === told[name]);
}

function parse(line: string, lineNo: number): object {
  try {
    const read: unknown = JSON.parse(line);
    refuseUnless(typeof read === 'object' && read !== null, `line ${lineNo} of this file is no JSON object`);
    return read;
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    refuseUnless(lineNo > 1, 'this file is no archive of a Sheafbook storehouse');
    refuseUnless(false, `line ${lineNo} of this archive can't be read: it was cut off or damaged`);
  }
}

/** The lines of a file. Ends of line alone divide them: texts may hold other signs that some readers take for one. */
export async function* splitLines(chunks: AsyncIterable<string>): AsyncGenerator<string> {
  let rest = '';
  for await (const chunk of chunks) {
    const parts = `${rest}${chunk}`.split('\n');
    rest = parts.pop() ?? '';
    yield* parts;
  }
  if (rest !== '') yield rest;
}
