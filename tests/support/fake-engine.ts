import { mkdtempSync, rmSync } from 'node:fs';
import { createServer, type RequestListener } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';

/** Stands in for a container engine of the outside world on a socket of its own; returns its DOCKER_HOST. */
export async function startFakeEngine(answer: RequestListener): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'sheafbook-engine-'));
  const socket = join(folder, 'engine.sock');
  const server = createServer(answer);
  await new Promise<void>((listening) => server.listen(socket, listening));
  onTestFinished(() => {
    server.close();
    server.closeAllConnections();
    rmSync(folder, { recursive: true, force: true });
  });
  return `unix://${socket}`;
}

/** An engine that is there and has no image yet; what it does when asked to pull one is the caller's choice. */
export function engineWithoutImages(pull: RequestListener): RequestListener {
  return (call, reply) => {
    const path = (call.url ?? '').replace(/^\/v[\d.]+/, '').replace(/\?.*$/, '');
    if (path === '/_ping') return reply.end('OK');
    if (path === '/info')
      return sendJson(reply, 200, { OperatingSystem: 'stand-in', IndexServerAddress: '' });
    if (path === '/networks/bridge')
      return sendJson(reply, 200, { IPAM: { Config: [{ Gateway: '127.0.0.1' }] } });
    if (path === '/containers/json') return sendJson(reply, 200, []);
    if (path === '/images/create') return pull(call, reply);
    return sendJson(reply, 404, { message: `no such thing: ${path}` });
  };
}

export function sendJson(reply: Parameters<RequestListener>[1], status: number, body: unknown): void {
  reply.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(body));
}
