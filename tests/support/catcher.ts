import type { AddressInfo } from 'node:net';
import { type Outside, openMail } from '@sheafbook/api';
import { SMTPServer } from 'smtp-server';

/**
 * What the server does with the next letter: takes it, takes it and says so too late, refuses it with a code and words,
 * or says nothing any more.
 */
export type Mood =
  | 'take'
  | 'late'
  | 'hang'
  | { readonly code: number; readonly words: string; readonly at: 'rcpt' | 'data' };

export type Catcher = {
  /** Letters as they came over the wire, each with the address it was for. */
  readonly caught: { readonly to: string; readonly source: string }[];
  mood: Mood;
  readonly mail: NonNullable<Outside['mail']>;
  readonly smtpUrl: string;
  close(): Promise<void>;
};

/** A mail server of a test's own, on this host, which keeps what it gets. It is given little time to answer. */
export async function openCatcher(waitMilliseconds = 5000): Promise<Catcher> {
  const caught: Catcher['caught'][number][] = [];
  const server = new SMTPServer({
    disabledCommands: ['AUTH', 'STARTTLS'],
    disableReverseLookup: true,
    onRcptTo(_, __, done) {
      const { mood } = catcher;
      if (mood === 'hang') return;
      if (typeof mood !== 'string' && mood.at === 'rcpt') return done(refusal(mood));
      done();
    },
    onData(stream, session, done) {
      const chunks: Buffer[] = [];
      stream.on('data', (chunk: Buffer) => chunks.push(chunk));
      stream.on('end', () => {
        const { mood } = catcher;
        if (typeof mood !== 'string') return done(refusal(mood));
        const to = session.envelope.rcptTo.map(({ address }) => address).join(', ');
        caught.push({ to, source: Buffer.concat(chunks).toString('utf8') });
        if (mood === 'late') setTimeout(done, 3 * waitMilliseconds).unref();
        else done();
      });
    },
  });
  server.on('error', () => undefined); // a client that hangs up is what some tests are about
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.server.address() as AddressInfo;
  const smtpUrl = `smtp://127.0.0.1:${port}`;
  const waits = { connect: 5000, greeting: 5000, silence: waitMilliseconds, total: 10_000 };
  const from = { name: 'Alder Row', address: 'book@alder.example' };
  const catcher: Catcher = {
    caught,
    mood: 'take',
    mail: openMail({ smtpUrl, from }, waits),
    smtpUrl,
    close: () => new Promise((resolve) => server.close(() => resolve())),
  };
  return catcher;
}

const refusal = ({ code, words }: Exclude<Mood, string>) =>
  Object.assign(new Error(words), { responseCode: code });
