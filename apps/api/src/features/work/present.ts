import type { TroubledRow } from './queries.ts';

/** No payload, no letter's kind and no subject: that a household gets a letter about a debt is its own affair. */
export function presentWork(row: TroubledRow) {
  return {
    id: row.workId,
    task: row.task,
    state: row.state,
    tries: row.tries,
    personName: row.personName,
    words: row.lastReason ?? '',
    madeAt: row.madeAt.toISOString(),
    dueAt: row.dueAt?.toISOString() ?? null,
    endedAt: row.endedAt?.toISOString() ?? null,
  };
}

/** How e-mail stands on this server, in a plain word. */
export const presentMail = (fromAddress: string | undefined) => ({
  isOn: fromAddress !== undefined,
  sentence:
    fromAddress === undefined
      ? 'E-mail is off: whoever runs the server gives it SMTP_URL and MAIL_FROM to turn it on.'
      : `E-mail is on: letters come from ${fromAddress}.`,
});
