import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { refuseUnless } from './refusal.ts';

export type MigrationFile = { number: number; name: string; text: string; sha256: string };

/** Where the book's own migrations lie. */
export const MIGRATIONS_FOLDER = fileURLToPath(new URL('../migrations', import.meta.url));

/** Reads `NNNN_name.sql` files in their order. Refuses other names, gaps and numbers given twice. */
export function readMigrationFiles(folder: string): MigrationFile[] {
  const names = readdirSync(folder).filter((name) => name.endsWith('.sql'));
  const files = names.map((name) => readMigrationFile(folder, name)).toSorted(byNumberThenName);
  files.forEach(({ number, name }, position) => {
    const before = files[position - 1];
    refuseUnless(before?.number !== number, `migrations ${before?.name} and ${name} bear the same number`);
    refuseUnless(number === position + 1, `migration ${position + 1} is missing before ${name}`);
  });
  return files;
}

const byNumberThenName = (a: MigrationFile, b: MigrationFile) =>
  a.number - b.number || (a.name < b.name ? -1 : 1);

function readMigrationFile(folder: string, name: string): MigrationFile {
  const [, digits] = /^(\d{4})_[a-z0-9_]+\.sql$/.exec(name) ?? [];
  refuseUnless(digits !== undefined, `migration ${name} must be named like 0007_pledge.sql`);
  // Git may check files out with other line ends; that is no edit.
  const text = readFileSync(join(folder, name), 'utf8').replaceAll('\r\n', '\n');
  const endsTransaction = /^\s*(commit|rollback)\b/im.test(text);
  refuseUnless(!endsTransaction, `migration ${name} must not end the transaction that it runs in`);
  return { number: Number(digits), name, text, sha256: createHash('sha256').update(text).digest('hex') };
}
