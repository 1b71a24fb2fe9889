import type { Outside } from '../../platform/context.ts';
import { hashPassword, isPassword, NOBODYS_HASH } from '../../platform/password.ts';
import { Problem } from '../../platform/problem.ts';
import { openSessions, type Session } from '../../platform/session.ts';
import { withLoginTx } from '../../platform/with-tx.ts';
import { countAttempt, findLoginByEmail, forgetAttempts, updatePassword } from './queries.ts';
import type { PasswordChange, SignIn } from './schema.ts';

const MOST_ATTEMPTS = 10;
const WINDOW_MINUTES = 15;

/**
 * Signs a login in. Attempts are counted by address and by where they come from, before the password is looked at. A hall
 * full of people signs in from one place, so whoever gets in wipes both counts.
 */
export async function signIn(outside: Outside, wish: SignIn, from: string) {
  const keys = [`email:${wish.email}`, `from:${from}`];
  await refuseTooManyAttempts(outside, keys);
  const login = await withLoginTx(outside, null, (tx) => findLoginByEmail(tx, wish.email));
  const isRight = await isPassword(login?.password_hash ?? NOBODYS_HASH, wish.password);
  if (!login || !isRight) throw new Problem('sign-in-failed');
  await withLoginTx(outside, null, async (tx) => {
    for (const key of keys) await forgetAttempts(tx, key);
  });
  const session = await openSessions(outside).begin(login.login_id);
  return { ...session, loginId: login.login_id, name: login.name, email: login.email };
}

/** Changes the password and signs every other session out, since somebody else may have known the old one. */
export async function changePassword(outside: Outside, session: Session, wish: PasswordChange) {
  await refuseTooManyAttempts(outside, [`email:${session.email}`]);
  const login = await withLoginTx(outside, session.loginId, (tx) => findLoginByEmail(tx, session.email));
  if (!login || !(await isPassword(login.password_hash, wish.currentPassword)))
    throw new Problem('sign-in-failed', {
      fields: [{ field: 'currentPassword', message: 'This is not the password in force.' }],
    });
  const passwordHash = await hashPassword(wish.newPassword);
  await withLoginTx(outside, session.loginId, (tx) => updatePassword(tx, session.loginId, passwordHash));
  await openSessions(outside).endAll(session.loginId);
  return openSessions(outside).begin(session.loginId);
}

export async function refuseTooManyAttempts(
  outside: Outside,
  keys: readonly string[],
  mostAttempts = MOST_ATTEMPTS,
): Promise<void> {
  const at = outside.now();
  const since = new Date(at.getTime() - WINDOW_MINUTES * 60_000);
  const most = await withLoginTx(outside, null, async (tx) => {
    const counts = [];
    for (const key of keys.toSorted()) counts.push(await countAttempt(tx, key, { at, since }));
    return Math.max(...counts);
  });
  if (most > mostAttempts) throw new Problem('too-many-attempts', { retryAfterSeconds: WINDOW_MINUTES * 60 });
}
