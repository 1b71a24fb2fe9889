import { closeSync, openSync } from 'node:fs';
import type { ServerUser } from './server-user.ts';

/** A file or folder as the server process shall name it, and the descriptor that must be handed over with it. */
export type ServerPath = { argument: string; descriptor: number | undefined; close(): void };

/**
 * Names a path for a process of another user. That user may be unable to enter the folders above it (a project in a
 * closed folder of root), so on Linux root opens the path itself and the child finds it under its own descriptor
 * number, whatever stands above. Elsewhere the path is passed as it is, and the folders above must let the user in.
 */
export function pathForServer(path: string, user: ServerUser, descriptorInChild: number): ServerPath {
  if (user === undefined || process.platform !== 'linux') {
    return { argument: path, descriptor: undefined, close: () => undefined };
  }
  const descriptor = openSync(path, 'r');
  return {
    argument: `/proc/self/fd/${descriptorInChild}`,
    descriptor,
    close: () => closeSync(descriptor),
  };
}
