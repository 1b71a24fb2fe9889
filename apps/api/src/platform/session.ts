import { createHash } from 'node:crypto';
import { type Adapter, Lucia, TimeSpan } from 'lucia';
import type { Sql } from 'postgres';
import type { Actor, Duty } from './actor.ts';
import type { Outside } from './context.ts';

/** A signed-in login. The token is known to the browser alone; `sessionId` is its SHA-256. */
export type Session = {
  readonly sessionId: string;
  readonly loginId: string;
  readonly name: string;
  readonly email: string;
  readonly expiresAt: Date;
  /** True when this very request prolonged the session, so that the cookie must be set again. */
  readonly isFresh: boolean;
};

declare module 'lucia' {
  interface Register {
    Lucia: Lucia<Record<never, never>, { name: string; email: string }>;
    DatabaseUserAttributes: { name: string; email: string };
  }
}

/** Thirty days from the last use: lucia prolongs a session that is used in the second half of its life. */
const SESSION_DAYS = 30;

/** A session with what its login is in the storehouse that was asked for; nobody, if it is no member there. */
export type SessionWithin = { readonly session: Session; readonly actor: Actor | undefined };

/**
 * The only place that knows lucia, which its author has retired: a swap needs this file alone. Sessions live in the
 * door schema, behind its functions.
 */
export function openSessions(outside: Outside) {
  const lucia = openLucia(outside.sql);
  return {
    async begin(loginId: string): Promise<{ token: string; expiresAt: Date }> {
      const token = Buffer.from(outside.randomBytes(32)).toString('base64url');
      const session = await lucia.createSession(loginId, {}, { sessionId: hashToken(token) });
      return { token, expiresAt: session.expiresAt };
    },
    find: (token: string) => validate(lucia, hashToken(token)),
    /** The same in one round trip with the look whether the login is a member of a storehouse. */
    async findWithin(token: string, storehouseId: string): Promise<SessionWithin | undefined> {
      const sessionId = hashToken(token);
      const [row] = await outside.sql<
        MemberRow[]
      >`select * from door.find_member(${sessionId}, ${storehouseId})`;
      const session = await validate(openLucia(outside.sql, row ? [row] : []), sessionId);
      return session && { session, actor: row && toActor(row, storehouseId) };
    },
    end: (sessionId: string) => lucia.invalidateSession(sessionId),
    endAll: (loginId: string) => lucia.invalidateUserSessions(loginId),
    endExpired: () => lucia.deleteExpiredSessions(),
  };
}

const openLucia = (sql: Sql, found?: readonly SessionRow[]) =>
  new Lucia(doorAdapter(sql, found), {
    sessionExpiresIn: new TimeSpan(SESSION_DAYS, 'd'),
    getUserAttributes: ({ name, email }) => ({ name, email }),
  });

/** Drops a session that has expired and prolongs one in the second half of its life. */
async function validate(
  lucia: ReturnType<typeof openLucia>,
  sessionId: string,
): Promise<Session | undefined> {
  const { session, user } = await lucia.validateSession(sessionId);
  if (!session || !user) return undefined;
  const { id, expiresAt, fresh: isFresh } = session;
  return { sessionId: id, loginId: user.id, name: user.name, email: user.email, expiresAt, isFresh };
}

/** Only this hash of a token is stored, so a stolen table opens no door. Invitations and the like use it too. */
export function hashToken(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}

type SessionRow = { session_id: string; expires_at: string; login_id: string; email: string; name: string };

type MemberRow = SessionRow & {
  person_id: string | null;
  household_id: string | null;
  currency: string;
  time_zone: string;
  duties: string[];
};

function toActor(row: MemberRow, storehouseId: string): Actor | undefined {
  if (row.person_id === null) return undefined;
  return {
    loginId: row.login_id,
    personId: row.person_id,
    storehouseId,
    currency: row.currency,
    timeZone: row.time_zone,
    householdId: row.household_id,
    isHelping: false,
    duties: new Set(row.duties as Duty[]),
  };
}

/** `found` is the session's row where it was read already. */
function doorAdapter(sql: Sql, found?: readonly SessionRow[]): Adapter {
  const toSession = (row: Pick<SessionRow, 'session_id' | 'expires_at'>, loginId: string) => ({
    id: row.session_id,
    userId: loginId,
    expiresAt: new Date(row.expires_at),
    attributes: {},
  });
  return {
    async getSessionAndUser(id) {
      const [row] = found ?? (await sql<SessionRow[]>`select * from door.find_session(${id})`);
      if (!row) return [null, null];
      const { login_id: loginId, name, email } = row;
      return [toSession(row, loginId), { id: loginId, attributes: { name, email } }];
    },
    async getUserSessions(loginId) {
      const rows = await sql<SessionRow[]>`select * from door.list_sessions(${loginId})`;
      return rows.map((row) => toSession(row, loginId));
    },
    async setSession(session) {
      await sql`select door.add_session(${session.id}, ${session.userId}, ${session.expiresAt.toISOString()})`;
    },
    async updateSessionExpiration(id, expiresAt) {
      await sql`select door.prolong_session(${id}, ${expiresAt.toISOString()})`;
    },
    async deleteSession(id) {
      await sql`select door.end_session(${id})`;
    },
    async deleteUserSessions(loginId) {
      await sql`select door.end_sessions_of(${loginId})`;
    },
    async deleteExpiredSessions() {
      await sql`select door.end_expired_sessions(${new Date().toISOString()})`;
    },
  };
}
