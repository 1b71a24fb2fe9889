import { GiveUp, TryLater } from '../../platform/work/task.ts';

/** What the mail library says of a failure: its own code, the command, and the server's answer. */
type MailFailure = { code?: string; command?: string; response?: string; responseCode?: number };

const MOST_WORDS = 300;

/**
 * What became of a letter that was not accepted, in the coordinator's words. A server that refuses the letter itself with
 * a 5xx means it for good (RFC 5321, 4.2.1); everything else may be otherwise in an hour. Without the address: that is
 * its owner's.
 */
export function explainFailure(error: unknown): GiveUp | TryLater {
  const { code = '', responseCode = 0, response = '' } = (error ?? {}) as MailFailure;
  const said = wordsOf(response);
  if (code === 'EAUTH')
    return new TryLater('The mail server did not let us in: the name or password in SMTP_URL is wrong.');
  if (responseCode >= 500 && (code === 'EENVELOPE' || code === 'EMESSAGE'))
    return new GiveUp(`The mail server refused the letter for good: “${said}”.`);
  if (responseCode >= 400) return new TryLater(`The mail server refused the letter for now: “${said}”.`);
  if (code === 'EENVELOPE') return new GiveUp('This e-mail address can’t be written to.');
  if (code === 'ETIMEDOUT') return new TryLater('The mail server took too long to answer.');
  return new TryLater('The mail server could not be reached.');
}

const wordsOf = (response: string): string =>
  response
    .replace(/\p{Cc}+/gu, ' ')
    .replace(/[^\s<>@]+@[^\s<>@]+/g, '…')
    .slice(0, MOST_WORDS);
