/** The first line of an archive. `migration` is the newest that the book had; its hash covers those before it, too. */
export type ArchiveHead = {
  readonly format: typeof ARCHIVE_FORMAT;
  readonly version: typeof ARCHIVE_VERSION;
  readonly takenAt: string;
  readonly migration: string;
  readonly migrationsSha256: string;
  readonly storehouse: { readonly id: string; readonly name: string };
};

/** Every other line but the last: one row, its values as PostgreSQL's own JSON spells them. */
export type ArchiveRow = { readonly table: string; readonly row: Readonly<Record<string, unknown>> };

/** The last line, without which an archive is not whole. The hash is of all lines before it, ends of line included. */
export type ArchiveEnd = {
  readonly end: { readonly tables: Readonly<Record<string, number>>; readonly sha256: string };
};

export const ARCHIVE_FORMAT = 'sheafbook-archive';
export const ARCHIVE_VERSION = 1;

/** Tables of a storehouse that stay behind, each with its reason. Every other is in the archive. */
export const LEFT_BEHIND: Readonly<Record<string, string>> = {
  calendar_feed: 'addresses that open a calendar to whoever knows them, by logins that stay behind',
  stop_link: 'links in letters that lead to this server, by which a kind is stopped',
  kept_answer: 'answers to commands that a client may send again, by logins that stay behind',
  work: 'what a server has yet to do, or did lately; its queue stays behind',
  letter: 'letters on their way to the addresses of logins that stay behind',
};

/** The book is one schema; logins and sessions, in another, are no storehouse's. */
export const BOOK_SCHEMA = 'book';
