import { createHash } from 'node:crypto';

/** An entry of a closed period as the digest reads it; a household's own stock only says that something moved. */
export type DigestEntry = {
  readonly entryId: string;
  readonly entryNo: number;
  readonly onDay: string;
  readonly what: string;
  readonly recordedAt: string;
  readonly note: string;
  readonly reversesEntryNo: number | null;
  readonly movements: readonly DigestMovement[];
};

export type DigestMovement =
  | {
      readonly line: number;
      readonly isHomeStock: false;
      readonly fromAccountId: string;
      readonly toAccountId: string;
      readonly unitId: string;
      readonly amount: string;
    }
  | { readonly line: number; readonly isHomeStock: true };

export type DigestHead = {
  readonly storehouseId: string;
  readonly throughOn: string;
  /** The digest of the close before this one; null for the first. */
  readonly previousSha256: string | null;
};

/**
 * The book of a closed period as text, one JSON array a line with a line feed at each end, in the order of the entry
 * numbers. Anybody who has the text gets the digest by SHA-256 over its UTF-8 bytes, for example by `sha256sum`.
 *   ["sheafbook-digest",1,storehouse,through,digest of the close before or null]
 *   ["entry",number,day,what,recorded at,id,number it reverses or null,SHA-256 of the note]
 *   ["movement",number,line,from account,to account,unit,amount]   or   ["home",number,line]
 */
export function digestText(head: DigestHead, entries: readonly DigestEntry[]): string {
  const lines = [
    ['sheafbook-digest', 1, head.storehouseId, head.throughOn, head.previousSha256],
    ...entries.flatMap((entry) => [
      [
        'entry',
        entry.entryNo,
        entry.onDay,
        entry.what,
        entry.recordedAt,
        entry.entryId,
        entry.reversesEntryNo,
        sha256(entry.note),
      ],
      ...entry.movements.map((movement) => movementLine(entry.entryNo, movement)),
    ]),
  ];
  return lines.map((line) => `${JSON.stringify(line)}\n`).join('');
}

const movementLine = (entryNo: number, movement: DigestMovement) =>
  movement.isHomeStock
    ? ['home', entryNo, movement.line]
    : [
        'movement',
        entryNo,
        movement.line,
        movement.fromAccountId,
        movement.toAccountId,
        movement.unitId,
        movement.amount,
      ];

export const sha256 = (text: string): string => createHash('sha256').update(text, 'utf8').digest('hex');
