import { accessSync, constants, statfsSync } from 'node:fs';
import { freemem, tmpdir } from 'node:os';

const MEMORY_FOLDER = '/dev/shm';
const ROOM_BYTES = 3_000_000_000; // some 1.5 for two servers, their logs and databases, and as much for all else

/**
 * Where the databases of the tests lie: in memory where the system has a folder for that with room in it, since each
 * database is some thousand files, and a disk's bookkeeping takes six times as long as the copying. Programs may not be
 * allowed to run from there.
 */
export function chooseScratch(folder = MEMORY_FOLDER, roomBytes = ROOM_BYTES): string {
  try {
    accessSync(folder, constants.W_OK);
    const { bavail, bsize } = statfsSync(folder);
    return Math.min(bavail * bsize, freemem()) >= roomBytes ? folder : tmpdir();
  } catch {
    return tmpdir(); // no such folder, or none for us
  }
}
