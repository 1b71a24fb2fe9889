import { totalmem } from 'node:os';

export type Settings = Readonly<Record<string, string | number>>;

const MEBIBYTE = 1024 * 1024;

/** A storehouse's machine is a laptop or a small board that does other things too: take an eighth, 512 MB at most. */
export function memorySettings(totalBytes = totalmem()): Settings {
  const eighthMebibytes = Math.floor(totalBytes / 8 / MEBIBYTE);
  const bufferMebibytes = Math.max(32, Math.min(512, eighthMebibytes));
  return {
    shared_buffers: `${bufferMebibytes}MB`,
    effective_cache_size: `${bufferMebibytes * 4}MB`,
    maintenance_work_mem: `${Math.max(16, Math.min(64, eighthMebibytes))}MB`,
    max_wal_size: '512MB',
    max_connections: 50,
  };
}

/** What holds for every embedded server: this machine only, passwords hashed, no shared socket folder, UTC. */
export const FIXED_SETTINGS: Settings = {
  listen_addresses: '127.0.0.1',
  unix_socket_directories: '',
  password_encryption: 'scram-sha-256',
  timezone: 'UTC',
  log_timezone: 'UTC',
  jit: 'off', // the book's queries are short; compiling them costs more than it saves
};

export function asArguments(settings: Settings): string[] {
  return Object.entries(settings).flatMap(([name, value]) => ['-c', `${name}=${value}`]);
}
