import { readFileSync, statSync } from 'node:fs';

/** The operating-system user that the database server runs as; undefined means the user who runs Node. */
export type ServerUser = { uid: number; gid: number } | undefined;

/**
 * PostgreSQL refuses to run as root, so root hands the server to an unprivileged user of this machine: the owner of
 * the cluster if there is one already, so that a book begun by a plain user can also be opened by root.
 */
export function chooseServerUser(cluster: string): ServerUser {
  if (process.getuid?.() !== 0) return undefined;
  const owner = statSync(cluster, { throwIfNoEntry: false });
  if (owner && owner.uid !== 0) return { uid: owner.uid, gid: owner.gid };
  return findUser('postgres') ?? findUser('nobody') ?? { uid: 65_534, gid: 65_534 };
}

function findUser(name: string): ServerUser {
  const line = readUsers().find((row) => row.startsWith(`${name}:`));
  const [, , uid, gid] = line?.split(':') ?? [];
  if (uid === undefined || gid === undefined) return undefined;
  return Number(uid) > 0 ? { uid: Number(uid), gid: Number(gid) } : undefined;
}

function readUsers(): string[] {
  try {
    return readFileSync('/etc/passwd', 'utf8').split('\n');
  } catch {
    return []; // no such file: the numeric fallback applies
  }
}
