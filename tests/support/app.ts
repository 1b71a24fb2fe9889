import { createHash } from 'node:crypto';
import { createApp, type Outside, openLog, readConfig } from '@sheafbook/api';
import { openTestDatabase, type TestDatabase } from './database.ts';

/** What came back: the status, the body as read, and the session cookie if one was set. */
// biome-ignore lint/suspicious/noExplicitAny: a test reads bodies freely; their shapes are what it asserts
export type Answer = { status: number; body: any; headers: Headers };

export type Caller = {
  get(path: string, headers?: Record<string, string>): Promise<Answer>;
  post(path: string, body?: unknown, headers?: Record<string, string>): Promise<Answer>;
  put(path: string, body?: unknown, headers?: Record<string, string>): Promise<Answer>;
  patch(path: string, body?: unknown, headers?: Record<string, string>): Promise<Answer>;
  delete(path: string, body?: unknown, headers?: Record<string, string>): Promise<Answer>;
};

export type TestApp = TestDatabase & {
  app: ReturnType<typeof createApp>;
  outside: Outside;
  /** The clock stands still until a test moves it. */
  clock: { now: Date };
  /** Calls as a stranger, or with a session cookie. Every POST gets a fresh Idempotency-Key unless one is given. */
  as(cookie?: string): Caller;
};

/** The real application on a real database of this test file's own, with a clock that a test sets. */
export async function openTestApp(startsAt = '2026-09-01T15:00:00Z'): Promise<TestApp> {
  const database = await openTestDatabase();
  const clock = { now: new Date(startsAt) };
  const randomBytes = countingBytes(database.name);
  const config = readConfig({});
  const { publicUrl } = config;
  const outside = {
    db: database.db,
    sql: database.sql,
    now: () => new Date(clock.now),
    randomBytes,
    publicUrl,
  };
  const app = createApp({ outside, config, log: openLog(process.env.TEST_LOG ?? 'silent') });
  let keys = 0;
  const as = (cookie?: string): Caller => {
    const call =
      (method: string) =>
      async (path: string, body?: unknown, headers = {}) => {
        const response = await app.request(path, {
          method,
          headers: {
            ...(body === undefined ? {} : { 'Content-Type': 'application/json' }),
            ...(cookie ? { Cookie: cookie } : {}),
            ...(method === 'POST' ? { 'Idempotency-Key': `key-${++keys}` } : {}),
            ...headers,
          },
          ...bodyIn(body),
        });
        return { status: response.status, body: await readBody(response), headers: response.headers };
      };
    const get = call('GET');
    return {
      get: (path, headers) => get(path, undefined, headers),
      post: call('POST'),
      put: call('PUT'),
      patch: call('PATCH'),
      delete: call('DELETE'),
    };
  };
  return { ...database, app, outside, clock, as };
}

/** A text is sent as it stands and a stream as it comes; all else is JSON. */
function bodyIn(body: unknown): RequestInit & { duplex?: 'half' } {
  if (body instanceof ReadableStream) return { body, duplex: 'half' };
  return body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) };
}

async function readBody(response: Response): Promise<unknown> {
  const type = response.headers.get('Content-Type') ?? '';
  if (type.includes('pdf')) return new Uint8Array(await response.arrayBuffer());
  const text = await response.text();
  return type.includes('json') ? JSON.parse(text) : text;
}

/** The cookie that an answer set, as a browser would send it back. */
export function cookieOf(answer: Answer): string {
  const cookie = answer.headers.getSetCookie().find((line) => line.includes('sheafbook='));
  if (!cookie) throw new Error(`no session cookie in an answer with status ${answer.status}`);
  return cookie.split(';')[0] ?? '';
}

/** Bytes that differ from call to call and are the same in every run of a test file. */
function countingBytes(seed: string) {
  let count = 0;
  return (wanted: number): Uint8Array => {
    const blocks: Buffer[] = [];
    for (let length = 0; length < wanted; length += 32)
      blocks.push(createHash('sha256').update(`${seed} ${++count}`).digest());
    return Buffer.concat(blocks).subarray(0, wanted);
  };
}
