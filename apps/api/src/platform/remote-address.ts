import { getConnInfo } from '@hono/node-server/conninfo';
import type { Context } from 'hono';

/** Where a request comes from, for counting attempts only; never logged. Behind a proxy this is the proxy. */
export function remoteAddress(c: Context): string {
  const hasSocket = typeof c.env === 'object' && c.env !== null && 'incoming' in c.env;
  return hasSocket ? (getConnInfo(c).remote.address ?? 'unknown') : 'in-process';
}
