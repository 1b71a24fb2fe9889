import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const top = fileURLToPath(new URL('../../..', import.meta.url));

/**
 * Builds the web app as it stands, so that the demo opens on screens. Whatever the builder says goes to standard
 * error. An installation without the builder serves the door plate, or what was built before.
 */
export async function buildWeb(): Promise<void> {
  const vite = `${top}/node_modules/vite/bin/vite.js`;
  if (!existsSync(vite)) return;
  const building = spawn(process.execPath, [vite, 'build', 'apps/web', '--logLevel', 'warn'], {
    cwd: top,
    env: { ...process.env, NODE_ENV: 'production' },
    stdio: ['ignore', 2, 2],
  });
  const [status] = await once(building, 'exit');
  if (status !== 0) console.error('The web app could not be built; the API answers all the same.');
}
