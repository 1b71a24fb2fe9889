import type { Tx } from '@sheafbook/db';
import type { StopLinkRow } from '@sheafbook/db/tables';
import type { Outside } from '../../platform/context.ts';
import { hashToken } from '../../platform/session.ts';
import { enterStorehouse, withLoginTx } from '../../platform/with-tx.ts';
import { findStopLink, stopInWishes } from './queries.ts';
import { loadWishes, usualWishes } from './use-cases.ts';

/** Whoever holds the link, signed in or not. */
export type LinkHolder = { readonly storehouseId: string; readonly token: string };
export type StopPage = { readonly kind: string; readonly language: string; readonly isStopped: boolean };

/** What a link would stop; nothing where there is no such link. Looking changes nothing, since mail programs look at links by themselves. */
export function lookAtStopLink(outside: Outside, holder: LinkHolder): Promise<StopPage | undefined> {
  return withLink(outside, holder, async (tx, link) => {
    const { language, isEmailOn, stoppedKinds } = await loadWishes(tx, link);
    const isStopped = link.kind === 'all' ? !isEmailOn : stoppedKinds.includes(link.kind);
    return { kind: link.kind, language, isStopped };
  });
}

/** Stops the kind that the link names, for the person it was sent to. Doing it again changes nothing. */
export function stopByLink(outside: Outside, holder: LinkHolder): Promise<StopPage | undefined> {
  return withLink(outside, holder, async (tx, link) => {
    const { storehouseId, personId, kind } = link;
    const reader = { storehouseId, personId };
    const usual = await usualWishes(tx, storehouseId);
    const { language } = await stopInWishes(tx, reader, { usual, kind });
    return { kind, language, isStopped: true };
  });
}

function withLink(
  outside: Outside,
  { storehouseId, token }: LinkHolder,
  work: (tx: Tx, link: StopLinkRow) => Promise<StopPage>,
): Promise<StopPage | undefined> {
  return withLoginTx(outside, null, async (tx) => {
    await enterStorehouse(tx, storehouseId, null);
    const link = await findStopLink(tx, { storehouseId, tokenHash: hashToken(token) });
    return link && work(tx, link);
  });
}
