import { createTransport } from 'nodemailer';

/** One letter on its way out. Names may hold anything; the library writes them so that none can add a header. */
export type MailMessage = {
  readonly to: { readonly name: string; readonly address: string };
  readonly subject: string;
  readonly text: string;
  readonly html: string;
  /** Stays the same however often the letter is sent, so that a second copy can be told by whoever receives it. */
  readonly id: string;
  readonly stopUrl: string | null;
};

/** How letters go out. Rejects with the library's error when the server refuses, hangs or can't be reached. */
export type Mail = { readonly send: (message: MailMessage) => Promise<void> };

export type MailSettings = {
  readonly smtpUrl: string;
  readonly from: { readonly name: string; readonly address: string };
};

/** How long a server may keep us waiting. `total` ends one that answers a little at a time, for ever. */
export type MailWaits = Readonly<Record<'connect' | 'greeting' | 'silence' | 'total', number>>;

const WAITS_MILLISECONDS: MailWaits = { connect: 10_000, greeting: 10_000, silence: 30_000, total: 60_000 };

/** A letter is sent over a connection of its own: letters are few, and a broken one holds up nothing. */
export function openMail({ smtpUrl, from }: MailSettings, waits: MailWaits = WAITS_MILLISECONDS): Mail {
  const domain = from.address.slice(from.address.lastIndexOf('@') + 1);
  return {
    async send(message) {
      const transport = createTransport({
        url: smtpUrl,
        connectionTimeout: waits.connect,
        dnsTimeout: waits.connect,
        greetingTimeout: waits.greeting,
        socketTimeout: waits.silence,
        disableFileAccess: true,
        disableUrlAccess: true,
      });
      const sending = transport.sendMail({
        from,
        to: message.to,
        subject: message.subject,
        text: message.text,
        html: message.html,
        messageId: `<${message.id}@${domain}>`,
        headers: { 'Auto-Submitted': 'auto-generated', ...stopHeaders(message.stopUrl) },
      });
      await within(waits.total, sending).finally(() => transport.close());
    },
  };
}

/** RFC 2369, and RFC 8058 for one click, which asks for https. */
function stopHeaders(stopUrl: string | null): Record<string, string> {
  if (stopUrl === null) return {};
  const header = { 'List-Unsubscribe': `<${stopUrl}>` };
  return stopUrl.startsWith('https:')
    ? { ...header, 'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click' }
    : header;
}

async function within(milliseconds: number, sending: Promise<unknown>): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<never>((_, reject) => {
    timer = setTimeout(
      () => reject(Object.assign(new Error('too long'), { code: 'ETIMEDOUT' })),
      milliseconds,
    );
  });
  try {
    await Promise.race([sending, tooLong]);
  } finally {
    clearTimeout(timer);
  }
}
