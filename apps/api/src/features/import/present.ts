import { countsOf, type Outcome } from './plan/outcome.ts';
import type { ListedImport } from './queries.ts';

export function presentOutcome({ openingOn, files, isPossible, seen }: Outcome) {
  return {
    ...{ openingOn, isPossible, seen },
    files: files.map((file) => ({
      ...{
        name: file.name,
        kind: file.kind,
        encoding: file.encoding,
        sha256: file.sha256,
        headings: [...file.headings],
        ...countsOf(file),
      },
      errors: file.problems.length + file.rows.reduce((sum, { problems }) => sum + problems.length, 0),
      problems: file.problems.map(({ code, message, heading }) => ({
        code,
        message,
        heading: heading ?? null,
      })),
      rows: file.rows.map(({ row, cells, effect, problems }) => ({
        ...{ row, cells: [...cells], effect },
        problems: problems.map(({ column, heading, read, code, message }) => ({
          column,
          heading,
          read,
          code,
          message,
        })),
      })),
    })),
  };
}

type Posted = Omit<Parameters<typeof presentImport>[0], 'importedBy' | 'importedAt' | 'undoing'>;

export const presentPosted = ({ importId, importNo, openingOn, files }: Posted) => ({
  ...{ id: importId, importNo, openingOn },
  files: files.map(presentFile),
});

/** Counts by kind of thing, and what is in the way. */
export const presentUndoing = (seen: {
  importId: string;
  importNo: number;
  entryCount: number;
  things: ReadonlyMap<string, number>;
  leaning: readonly { code: string; name: string; count: number }[];
}) => ({
  ...{ id: seen.importId, importNo: seen.importNo, entries: seen.entryCount },
  things: Object.fromEntries(seen.things),
  leaning: seen.leaning.map(({ code, name, count }) => ({ code, name, count })),
  isPossible: seen.leaning.length === 0,
});

type PresentedFile = { kind: string; fileName: string; sha256: string; newRows: number; skippedRows: number };
const presentFile = ({ kind, fileName, sha256, newRows, skippedRows }: PresentedFile) => ({
  ...{ kind, name: fileName, sha256, newRows, skippedRows },
});

function presentImport(row: {
  importId: string;
  importNo: number;
  openingOn: string;
  importedBy: string;
  importedAt: Date;
  undoing: { undoneAt: Date; reason: string } | null;
  files: readonly PresentedFile[];
}) {
  const { importedBy, importedAt, undoing } = row;
  return {
    ...{ ...presentPosted(row), importedBy, importedAt: importedAt.toISOString() },
    takenBack: undoing && { at: undoing.undoneAt.toISOString(), reason: undoing.reason },
  };
}

export const presentImports = ({ rows, next }: { rows: readonly ListedImport[]; next: string | null }) => ({
  imports: rows.map(({ import: row, importedBy, undoing, files }) =>
    presentImport({ ...row, importedBy, undoing, files }),
  ),
  next,
});

/** One row a file, for a spreadsheet. */
export const importCells = ({ import: row, importedBy, undoing, files }: ListedImport) =>
  files.map((file) => ({
    ...{
      importNo: row.importNo,
      openingOn: row.openingOn,
      importedBy,
      importedAt: row.importedAt.toISOString(),
      takenBackAt: undoing?.undoneAt.toISOString() ?? null,
    },
    ...presentFile(file),
  }));
