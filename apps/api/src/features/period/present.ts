import type { PeriodCloseRow } from '@sheafbook/db/tables';
import { sha256 } from './digest.ts';

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
  closes: readonly Close[];
  signatures: readonly Signature[];
}) {
  return {
    closedThrough: book.closedThrough,
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
