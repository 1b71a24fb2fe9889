import { createHash, createHmac, pbkdf2Sync, randomBytes, scryptSync } from 'node:crypto';
import postgres from 'postgres';
import { administer } from './administer.ts';
import { passwordOf, withLogin } from './database-url.ts';
import { StartRefusal } from './refusal.ts';
import { ROLES } from './roles.ts';

/**
 * Makes sure that the app's role can log in, and returns its URL. Its password is derived from the administrator's,
 * so that nothing has to be stored and several API processes with one DATABASE_URL agree without talking. Whoever
 * wants the app to run without knowing the administrator's password gives APP_DATABASE_URL and migrates by hand.
 * The server only ever sees the salted verifier, so that the password stands in no log.
 */
export async function ensureAppLogin(adminUrl: string): Promise<string> {
  const password = derivePassword(adminUrl);
  const appUrl = withLogin(adminUrl, ROLES.app, password);
  if (await logsIn(appUrl)) return appUrl;
  await administer(adminUrl, async (sql) => {
    await sql.begin(async (tx) => {
      await tx`select set_config('sheafbook.verifier', ${scramVerifier(password)}, true)`;
      await tx`do $$ begin
        execute format('alter role sheafbook_app login password %L', current_setting('sheafbook.verifier'));
      end $$`;
    });
  }).catch((error) => unlessSetByAnother(error, appUrl));
  return appUrl;
}

/** Without a password (trust or certificate logins) there is nothing to derive from: then each start sets a new one. */
function derivePassword(adminUrl: string): string {
  const adminPassword = passwordOf(adminUrl);
  if (adminPassword === '') return randomBytes(24).toString('base64url');
  return scryptSync(adminPassword, 'sheafbook_app', 24).toString('base64url');
}

async function logsIn(url: string): Promise<boolean> {
  return administer(url, (sql) => sql`select 1`).then(
    () => true,
    (error: unknown) => {
      const code = error instanceof postgres.PostgresError ? error.code : '';
      if (code === '28P01' || code === '28000') return false;
      throw error;
    },
  );
}

async function unlessSetByAnother(error: unknown, appUrl: string): Promise<void> {
  if (await logsIn(appUrl)) return;
  if (!(error instanceof postgres.PostgresError) || error.code !== '42501') throw error;
  const message = `The login of DATABASE_URL may not set the password of ${ROLES.app}: give APP_DATABASE_URL`;
  throw new StartRefusal(message, { cause: error });
}

/** RFC 5803 with PostgreSQL's own spelling: SCRAM-SHA-256$iterations:salt$stored key:server key. */
function scramVerifier(password: string): string {
  const salt = randomBytes(16);
  const salted = pbkdf2Sync(password, salt, 4096, 32, 'sha256');
  const keyFor = (purpose: string) => createHmac('sha256', salted).update(purpose).digest();
  const storedKey = createHash('sha256').update(keyFor('Client Key')).digest('base64');
  return `SCRAM-SHA-256$4096:${salt.toString('base64')}$${storedKey}:${keyFor('Server Key').toString('base64')}`;
}
