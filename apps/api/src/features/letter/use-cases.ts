import type { Tx } from '@sheafbook/db';
import type { Context } from '../../platform/context.ts';
import type { MailMessage } from '../../platform/mail.ts';
import { withTx } from '../../platform/with-tx.ts';
import { enqueue } from '../../platform/work/enqueue.ts';
import { type Job, TryLater, type WorkTask } from '../../platform/work/task.ts';
import { insertLetter, type LetterId, loadReader, lockLetter, updateLetter } from './queries.ts';
import { explainFailure } from './refusal.ts';

export type LetterWish = {
  readonly personId: string;
  /** What it is about, such as `pick-up`: one way to stop each kind. */
  readonly kind: string;
  readonly subject: string;
  readonly text: string;
  /** Simple: nothing in it is fetched from anywhere. What people wrote must be escaped by whoever makes it. */
  readonly html: string;
  /** Where its reader stops letters of this kind; null for what is about safety. */
  readonly stopUrl: string | null;
};

const MOST_SUBJECT = 200;

/**
 * Writes a letter in the transaction of what it tells; it is sent once that is committed. Returns its id. Who has no
 * address, or where e-mail is off, gets none, and nothing fails for it.
 */
export async function writeLetter(tx: Tx, storehouseId: string, wish: LetterWish): Promise<string> {
  const { personId, kind, text, html, stopUrl } = wish;
  const letterId = await enqueue(tx, storehouseId, { task: 'send-letter', personId });
  const subject = inOneLine(wish.subject);
  await insertLetter(tx, {
    ...{ storehouseId, letterId, personId, kind, subject },
    ...{ bodyText: text, bodyHtml: html, stopUrl },
  });
  return letterId;
}

/** A subject is a header: a name in it that holds the end of a line must not begin another. */
const inOneLine = (text: string): string =>
  text
    .replace(/[\p{Cc}\u2028\u2029]+/gu, ' ')
    .trim()
    .slice(0, MOST_SUBJECT);

/** Longer than all that a mail server may keep us waiting together. */
const SENDING_MILLISECONDS = 2 * 60 * 1000;

type Sent = { readonly because: string | null };

/**
 * Sends a letter. Between the server's "accepted" and our commit a process can die, and nobody can know then whether the
 * letter went out: it is marked as being sent before, so that two never send it at once, and is sent again under the same
 * Message-ID after two minutes. Rather twice than never; mail programs show a second copy of one id once.
 */
export const sendLetter: WorkTask<Sent> = {
  privateTask: 'letter',
  async reachOut(job) {
    const of = { storehouseId: job.storehouseId, letterId: job.workId };
    const message = await takeToSend(job, of);
    if ('because' in message) return message;
    const { mail } = job.context;
    if (!mail) return { because: 'E-mail is off on this server.' };
    try {
      await mail.send(message);
    } catch (error) {
      await withTx(job.context, (tx) => updateLetter(tx, of, { state: 'waiting' }), { task: 'letter' });
      throw explainFailure(error);
    }
    return { because: null };
  },
  async settle(tx, { context, storehouseId, workId: letterId }, { because }) {
    const state = because === null ? 'sent' : 'unsent';
    const of = { storehouseId, letterId };
    await updateLetter(tx, of, { state, unsentBecause: because, endedAt: context.now() });
  },
};

function takeToSend({ context }: Job, of: LetterId): Promise<MailMessage | Sent> {
  return withTx(context, (tx) => markSending(tx, context, of), { task: 'letter' });
}

async function markSending(tx: Tx, context: Context, of: LetterId): Promise<MailMessage | Sent> {
  const letter = await lockLetter(tx, of);
  if (!letter) return { because: 'The letter is not there any more.' };
  const { name, address } = await loadReader(tx, of.storehouseId, letter.personId);
  if (address === null) return { because: 'This person has no login, and so no address.' };
  const now = context.now();
  const sinceMilliseconds = now.getTime() - (letter.sendingAt?.getTime() ?? 0);
  if (letter.state === 'sending' && sinceMilliseconds < SENDING_MILLISECONDS)
    throw new TryLater('The letter may be on its way already; it is looked at again.');
  await updateLetter(tx, of, { state: 'sending', sendingAt: now });
  const { subject, bodyText: text, bodyHtml: html, stopUrl } = letter;
  return { to: { name, address }, subject, text, html, stopUrl, id: of.letterId };
}
