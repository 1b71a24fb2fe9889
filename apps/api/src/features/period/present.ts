import type { PeriodCloseRow } from '@sheafbook/db/tables';
import { chartLine } from '@sheafbook/ledger';
import { sha256 } from './digest.ts';
import type { AccountKind } from './digest-queries.ts';
import type { MissingAtClose } from './missing.ts';

type Close = Pick<PeriodCloseRow, 'closedThrough' | 'closedAt' | 'entryCount' | 'digestSha256'> & {
  readonly closedBy: string;
};
type Signature = {
  readonly closedThrough: string;
  readonly duty: string;
  readonly signedBy: string;
  readonly signedAt: Date;
  readonly remarks: string;
};

export function presentPeriods(book: {
  closedThrough: string | null;
  yearEndOn: string;
  closes: readonly Close[];
  signatures: readonly Signature[];
}) {
  return {
    closedThrough: book.closedThrough,
    yearEndOn: book.yearEndOn,
    closes: book.closes.map(({ closedThrough, closedAt, closedBy, entryCount, digestSha256 }) => ({
      closedThrough,
      closedAt: closedAt.toISOString(),
      closedBy,
      entryCount,
      digestSha256,
      signatures: book.signatures
        .filter((signature) => signature.closedThrough === closedThrough)
        .map(({ duty, signedBy, signedAt, remarks }) => ({
          duty,
          signedBy,
          signedAt: signedAt.toISOString(),
          remarks,
        })),
    })),
  };
}

export const presentDigest = ({ close, text }: { close: PeriodCloseRow; text: string }) => ({
  closedThrough: close.closedThrough,
  digestSha256: close.digestSha256,
  digestNowSha256: sha256(text),
  holds: close.digestSha256 === sha256(text),
});

/** Money by the chart of accounts; grams by what they lie in, pieces of supplies as such. */
export const accountRow = ({ accountId, unitKind, kind, vesselKind }: AccountKind) => ({
  accountId,
  unit: unitKind,
  number: unitKind === 'currency' ? chartLine(kind).number : '',
  kind: unitKind === 'currency' ? chartLine(kind).name : (vesselKind ?? kind),
});

export const presentPreview = (preview: {
  currency: string;
  throughOn: string;
  missing: readonly MissingAtClose[];
}) => ({
  currency: preview.currency,
  throughOn: preview.throughOn,
  mayClose: preview.missing.every(({ isBlocking }) => !isBlocking),
  missing: preview.missing.map(({ code, isBlocking, count, minorUnits, buys, onDay }) => ({
    ...{ code, isBlocking, count, minorUnits, onDay },
    buys: buys.map(({ buyId, name }) => ({ buyId, name })),
  })),
});
