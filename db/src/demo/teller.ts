import { randomBytes, randomUUID } from 'node:crypto';
import { createApp, openLog, readConfig } from '@sheafbook/api';
import type { Sql } from 'postgres';
import type { Db } from '../connect.ts';

/** Somebody of the story with a session of their own. A refusal ends the story: nothing is told that did not happen. */
export type Caller = {
  get<Body>(path: string): Promise<Body>;
  post<Body>(path: string, body?: unknown): Promise<Body>;
  put<Body>(path: string, body: unknown): Promise<Body>;
  end(path: string): Promise<void>;
  /** The same person, acting for a neighbour under a helper's grant. */
  helping(householdId: string): Caller;
};

/** The application in this process with its clock in the story's hands. */
export type Teller = {
  /** Moves the clock on to late morning or noon of a day in Chicago (17:00 UTC); it never goes back. */
  goTo(day: string): void;
  say(line: string): void;
  /** Calls without a session; a session that the answer begins is the new caller's. */
  enter<Body>(path: string, body: unknown): Promise<{ body: Body; cookie: string }>;
  caller(cookie: string, base: string): Caller;
};

type Call = { method: string; path: string; body?: unknown; headers?: Record<string, string> };

const STEP_MILLISECONDS = 20_000; // between two calls, so that no two things happen at one instant

/** Opens the real application on a database: every call goes through its routes, its policies and its use cases. */
export function openTeller(database: { db: Db; sql: Sql }, say: (line: string) => void): Teller {
  const clock = { milliseconds: 0 };
  const now = () => new Date(clock.milliseconds);
  const outside = { db: database.db, sql: database.sql, now, randomBytes };
  const app = createApp({ outside, config: readConfig({}), log: openLog('error') });

  async function call({ method, path, body, headers }: Call): Promise<Response> {
    clock.milliseconds += STEP_MILLISECONDS;
    const response = await app.request(path, {
      method,
      headers: {
        ...(body === undefined ? {} : { 'Content-Type': 'application/json' }),
        ...(method === 'POST' ? { 'Idempotency-Key': randomUUID() } : {}),
        ...headers,
      },
      ...(body === undefined ? {} : { body: JSON.stringify(body) }),
    });
    if (response.ok) return response;
    throw new Error(
      `the story stopped at ${method} ${path} ${JSON.stringify(body ?? null)}: ` +
        `${response.status} ${await response.text()}`,
    );
  }

  function callerWith(base: string, headers: Record<string, string>): Caller {
    const send = async <Body>(method: string, path: string, body?: unknown): Promise<Body> =>
      (await (await call({ method, path: `${base}${path}`, body, headers })).json()) as Body;
    return {
      get: (path) => send('GET', path),
      post: (path, body) => send('POST', path, body),
      put: (path, body) => send('PUT', path, body),
      end: async (path) => {
        await call({ method: 'DELETE', path: `${base}${path}`, headers });
      },
      helping: (householdId) => callerWith(base, { ...headers, 'Sheafbook-For-Household': householdId }),
    };
  }

  return {
    goTo(day) {
      clock.milliseconds = Math.max(clock.milliseconds, Date.parse(`${day}T17:00:00Z`));
    },
    say: (line) => say(`${now().toISOString().slice(0, 10)}  ${line}`),
    async enter<Body>(path: string, body: unknown) {
      const response = await call({ method: 'POST', path, body });
      const cookie = response.headers.getSetCookie().find((line) => line.includes('sheafbook=')) ?? '';
      return { body: (await response.json()) as Body, cookie: cookie.split(';')[0] ?? '' };
    },
    caller: (cookie, base) => callerWith(base, { Cookie: cookie }),
  };
}
